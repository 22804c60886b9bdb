/** Does every sentence come from the data: another number, another sentence? */
import { describe, expect, it } from 'vitest';
import { CAUSES } from '../../src/explain/causes.js';
import {
  blamelessSentences,
  findingSentences,
  runCommand,
  shellWord,
  standingSentences,
  togetherSentences,
} from '../../src/show/why-sentences.js';
import type { WhyView } from '../../src/show/why-view.js';
import { causeWords } from '../../src/show/why-words.js';
import { cellOf, fallOf, resultOf } from '../explain/made-results.js';
import { motion } from './sample-margins.js';
import { sampleEvidence, sampleFeel, sampleFinding, sampleWhy } from './sample-why.js';

const said = (...given: Parameters<typeof sampleEvidence>) =>
  findingSentences(sampleWhy(), sampleEvidence(...given)).join(' ');

describe('a finding', () => {
  it('is told with its number, what goes with it, and where it is seen', () => {
    const [cause, relief, moment] = findingSentences(sampleWhy(), sampleEvidence());
    expect(cause).toBe(
      'Too little rate gain (rate gain 0.02 A/(deg/s), the reference set has 1.18): ' +
        'nothing damps the deck, so it swings on after every knock.',
    );
    expect(relief).toBe(
      'With the number of the reference set, 63 % of what the profile costs more than the reference set goes away, ' +
        'and 1 fall with it.',
    );
    expect(moment).toBe(
      'Seen best in hill with kim: nose strike at 3.20 s; largest tilt: nose down 15.0° at 3.20 s and 18.0 km/h. ' +
        'With the number of the reference set: rebounds by 12.0 %.',
    );
  });

  it.each([
    [
      'the number',
      {
        number: {
          name: 'rate gain',
          value: 0.05,
          unit: 'A/(deg/s)',
          beside: { name: 'the reference set has', value: 1.18, unit: '' },
        },
      },
      '0.05 A/(deg/s)',
    ],
    [
      'the reference',
      {
        number: {
          name: 'rate gain',
          value: 0.02,
          unit: 'x',
          beside: { name: 'the reference set has', value: 0.9, unit: '' },
        },
      },
      'set has 0.9)',
    ],
    ['the share', { finding: sampleFinding({ share: 0.17 }) }, '17 % of what the profile costs more'],
    ['the falls', { finding: sampleFinding({ failuresCured: 3 }) }, 'and 3 falls with it'],
    ['no falls', { finding: sampleFinding({ failuresCured: 0 }) }, 'goes away. '],
    ['more falls', { finding: sampleFinding({ failuresCured: -1 }) }, 'but there is 1 fall more'],
    [
      'the moment',
      { moment: { peak: { timeS: 2.5, speedMPerS: 10, pitchRad: -0.1 }, firstCut: null } },
      'nose up 5.7° at 2.50 s and 36.0 km/h',
    ],
    [
      'the cell',
      { cell: resultOf(cellOf('kerb', { reboundPercent: 44 }, 'lee')).cells[0]! },
      'kerb with lee: rebounds by 44.0 %',
    ],
    [
      'what it is without',
      { without: resultOf(cellOf('hill', { reboundPercent: 7 })).cells[0]! },
      'rebounds by 7.0 %.',
    ],
  ])('changes with %s', (_, changes, text) => {
    expect(said(changes)).toContain(text);
    expect(said(changes)).not.toBe(said());
  });

  it('that is not sure names both suspects', () => {
    const finding = sampleFinding({ sureness: 'not sure', rival: 'filter lag' });
    expect(said({ finding })).toMatch(/^Not sure: too little rate gain or the lag of the gyro filter\. /);
    expect(said({ finding })).toContain('Taking away the lag of the gyro filter does nearly as much.');
  });

  it('of a ceiling says where it first cuts, and that it is one thing with the low pack', () => {
    const finding = sampleFinding({ cause: 'voltage ceiling', family: 'power', share: 0.7 });
    const firstCut = { timeS: 2, speedMPerS: 9, pitchRad: 0.05, ceiling: 'voltage' } as const;
    const { moment } = sampleEvidence();
    const evidence = sampleEvidence({
      finding,
      causes: ['voltage ceiling', 'low pack'],
      number: { name: 'cells in series', value: 15, unit: '', beside: null },
      moment: { ...moment, firstCut },
      isUnderReference: true,
    });
    const text = findingSentences(sampleWhy(), evidence).join(' ');
    expect(text).toContain('The voltage ceiling, here one thing with the low pack (cells in series 15): ');
    expect(text).toContain(
      'It costs under the reference set too: with twice the cells in series, 70 % of the cost goes',
    );
    expect(text).toContain(
      'the voltage ceiling first cuts with the board nose down 2.9° at 2.00 s and 32.4 km/h',
    );
    expect(text).toContain('It lies in motor and pack, not in the gains.');
  });

  it.each([
    ['rider', "the rider's delay", 'a set of gains can only make room for it'],
    ['road', 'grip', 'It lies in the road.'],
    ['loop', 'loop delay', 'not in the profile'],
  ] as const)('of the %s says whose it is', (family, cause, text) => {
    expect(said({ finding: sampleFinding({ family, cause }) })).toContain(text);
  });

  it('has the linear evidence that fits, which changes with the report', () => {
    const view = (growth: number) =>
      sampleWhy({ feel: sampleFeel({ modes: [motion(growth, 6, { deck: 0.6, travel: 0.4 })] }) });
    const text = (growth: number) => findingSentences(view(growth), sampleEvidence()).at(-1);
    expect(text(-6.8)).toBe(
      'At 10 km/h under kim the least damped motion is one of deck and travel at 6.0 Hz with a damping ratio of 0.18.',
    );
    expect(text(-3.8)).toContain('damping ratio of 0.10');
    const stiff = said({ finding: sampleFinding({ cause: 'too little proportional gain' }) });
    expect(stiff).toContain('swings once a second with 11.5 Nm per degree');
    const late = said({ finding: sampleFinding({ cause: 'filter lag' }) });
    expect(late).toContain('could spare 8.8 ms of delay (50° of phase)');
    const noisy = said({ finding: sampleFinding({ cause: 'too much rate gain' }) });
    expect(noisy).toContain('gyro noise alone moves the request by 0.25 A rms');
    expect(findingSentences(sampleWhy({ feel: null }), sampleEvidence())).toHaveLength(3);
  });
});

it('every suspect has words of its own', () => {
  expect(CAUSES.filter(({ name }) => causeWords(name).does === 'it costs').map(({ name }) => name)).toEqual(
    [],
  );
  expect(causeWords('something new').title).toBe('Something new');
});

describe('the command', () => {
  const cell = resultOf(cellOf('kerb')).cells[0]!;

  it.each([
    [{}, {}, 'underfoot run satin kerb --rider kim --solver fixed'],
    [{ seed: 3 }, {}, 'underfoot run satin kerb --rider kim --seed 3 --solver fixed'],
    [{ chargePercent: 20 }, {}, 'underfoot run satin kerb --rider kim --charge 20 --solver fixed'],
    [
      {},
      { asked: { profile: "my set's.yaml", board: 'yak', cells: [] } },
      String.raw`underfoot run 'my set'\''s.yaml' kerb --rider kim --board yak --solver fixed`,
    ],
  ])('shows the cell again: %j %j', (changes, view, command) => {
    expect(runCommand(sampleWhy(view), { ...cell, ...changes })).toBe(command);
  });

  it('quotes only what a shell would take apart', () => {
    expect([shellWord('profiles/gains/a-b.yaml'), shellWord('a b')]).toEqual([
      'profiles/gains/a-b.yaml',
      "'a b'",
    ]);
  });
});

describe('the other sentences', () => {
  it('say how the profile fares beside the reference', () => {
    expect(standingSentences(sampleWhy())[0]).toMatch(
      /^satin falls in 1 of 2 runs; score 7\.5\d\. A plain reference set, made for this rig, comes to 0 falls, score /,
    );
    const up = sampleWhy({ result: resultOf(cellOf('kerb')), isComplete: false });
    expect(standingSentences(up)[0]).toMatch(
      /^satin stays up in the one run, the worst; the others are still to come; /,
    );
  });

  it('say where the profile is weakest when nothing is to blame', () => {
    const result = resultOf(cellOf('kerb', { reboundPercent: 40 }), cellOf('hill'));
    const blameless = (changes: Partial<WhyView>) =>
      blamelessSentences(sampleWhy({ result, findings: [], ...changes })).join(' ');
    const calm = { excess: 0, isProfileToBlame: false, isRigTroubled: false };
    expect(blameless({ blame: calm, suspects: 0 })).toMatch(
      /^Nobody is to blame: it costs no more .* no run is in trouble\. It is weakest in kerb with kim: rebounds by 40\.0 %\.$/,
    );
    // What was asked is told, and what was not explained.
    expect(blameless({ blame: { ...calm, isRigTroubled: true }, suspects: 7 })).toMatch(
      /^Nobody is to blame: 7 suspects were taken away one by one, and none changes much\./,
    );
    expect(blameless({ blame: { ...calm, excess: 0.4, isProfileToBlame: true }, suspects: 3 })).toMatch(
      /^Not explained: the profile costs 0\.40 more a run than the reference set, but of 3 suspects/,
    );
    const fallen = resultOf(fallOf('hill'), cellOf('kerb'));
    expect(blameless({ blame: { ...calm, isRigTroubled: true }, suspects: 9, result: fallen })).toMatch(
      /^Not explained: of 9 suspects taken away one by one none keeps what falls up\./,
    );
  });

  it('say that any one of several causes will do, where each takes nearly all away', () => {
    const way = (cause: string, share: number) =>
      sampleEvidence({ finding: sampleFinding({ cause, share }) });
    const both = sampleWhy({ findings: [way('too little rate gain', 0.95), way('filter lag', 0.85)] });
    expect(togetherSentences(both)).toEqual([
      'Any one of these by itself takes nearly all of it away: too little rate gain and the lag of the gyro filter.',
    ]);
    expect(togetherSentences(sampleWhy({ findings: [way('filter lag', 0.95), way('trim', 0.5)] }))).toEqual(
      [],
    );
  });
});
