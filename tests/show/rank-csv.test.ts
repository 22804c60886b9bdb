/**
 * Can a spreadsheet read the ranking, with the true rank whatever the order of rows?
 */
import { describe, expect, it } from 'vitest';
import { profileResult, rowFigures, type CellResult } from '../../src/measure/profile-result.js';
import { RANK_ORDER } from '../../src/measure/row-order.js';
import { weightsWith } from '../../src/measure/scales.js';
import { rankCsv } from '../../src/show/rank-csv.js';
import { CALM } from '../measure/some-metrics.js';

function cell(scenario: string, parts: Partial<CellResult> = {}): CellResult {
  return {
    scenario,
    rider: 'kim',
    chargePercent: 80,
    seed: 3,
    outcome: { kind: 'upright', atS: 8 },
    eventReached: true,
    metrics: {
      ...CALM,
      kind: 'disturbance',
      windowS: 6,
      measuredS: 6,
      settlingTimeS: 1.1,
      reboundPercent: 20,
    },
    ...parts,
  };
}

const FALLEN = { outcome: { kind: 'nose strike', atS: 2.5 } } as const;
const WOOL = [cell('kerb'), cell('hill')];
const SILK = [cell('kerb', FALLEN), cell('hill', FALLEN)];

const profiles = [
  profileResult({ name: 'wool', summary: 'a' }, WOOL, weightsWith()),
  profileResult({ name: 'silk', summary: 'b' }, SILK, weightsWith()),
];
const scenarios = ['kerb', 'hill'];

/** Records of a text without quoted fields. */
const recordsOf = (text: string) => text.split('\r\n').map((line) => line.split(','));

describe('the ranking as comma-separated values', () => {
  const text = rankCsv({ scenarios, profiles, order: RANK_ORDER });

  it('has a header with units, a line a profile, and ends every line', () => {
    const [header, wool, silk, end] = recordsOf(text);
    const figures = 'falls,cells,score,overshootPercent,settlingTimeS,notSettledCount,saturationShare';
    const place = 'worstScenario,worstRider,worstChargePercent,worstSeed';
    const ending = 'worstOutcome,worstEndedAtS,worstEventReached,worstCost';
    expect(header!.join(',')).toBe(`rank,profile,${figures},${place},${ending},standing.kerb,standing.hill`);
    expect(end).toEqual(['']);
    expect(wool).toHaveLength(header!.length);
    expect(silk).toHaveLength(header!.length);
  });

  it('holds the figures to the last bit, and empty fields where there are none', () => {
    const [header, wool, silk] = recordsOf(text);
    const at = (record: string[] | undefined, name: string) => record?.[header!.indexOf(name)];
    expect(Number(at(wool, 'score'))).toBe(profiles[0]!.score);
    expect(Number(at(wool, 'settlingTimeS'))).toBe(rowFigures(profiles[0]!.cells).settlingTimeS);
    expect(at(wool, 'overshootPercent')).toBe('20');
    expect(at(wool, 'standing.hill')).toBe('composed');
    expect(silk!.slice(0, 4)).toEqual(['2', 'silk', '2', '2']);
    expect(at(silk, 'overshootPercent')).toBe('');
    expect(at(silk, 'worstOutcome')).toBe('nose strike');
    expect(at(silk, 'worstEndedAtS')).toBe('2.5');
    expect(at(silk, 'standing.kerb')).toBe('failed');
  });

  it('keeps the rank of each row in another order', () => {
    const order = { by: 'profile', reversed: false } as const;
    const rows = recordsOf(rankCsv({ scenarios, profiles, order })).slice(1, 3);
    expect(rows.map((row) => row.slice(0, 2))).toEqual([
      ['2', 'silk'],
      ['1', 'wool'],
    ]);
  });

  it('quotes a field that has to be', () => {
    // RFC 4180, section 2, rules 6 and 7.
    const odd = profileResult({ name: 'a "b", c', summary: '' }, [cell('kerb')], weightsWith());
    const line = rankCsv({ scenarios: ['kerb'], profiles: [odd], order: RANK_ORDER }).split('\r\n')[1];
    expect(line).toMatch(/^1,"a ""b"", c",0,1,/);
  });
});
