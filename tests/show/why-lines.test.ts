/** Does the whole answer keep to its width and its symbols, and leave out what has not come? */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { CAUTION } from '../../src/show/cautions.js';
import { firstFindingLines, whyLines, type WhyOptions } from '../../src/show/why-lines.js';
import { cellOf, resultOf } from '../explain/made-results.js';
import { sampleEvidence, sampleRemedy, sampleWhy } from './sample-why.js';

const PLAIN: WhyOptions = { width: 100, symbols: 'braille', paint: createPaint('none') };
const joined = (lines: readonly string[]) => lines.join(' ').replaceAll(/ +/g, ' ');

describe('the answer', () => {
  it('has the standing, the feel, the finding with its command, what was tried, and the caution', () => {
    const text = joined(whyLines(sampleWhy(), PLAIN));
    expect(text).toMatch(/^Why satin rides as it does: board otter, rider kim satin falls in 1 of 2 runs;/);
    const parts = [
      'Feels ',
      '1. Too little rate gain',
      'See it again: underfoot run satin hill',
      '1) Rate gain',
      CAUTION,
    ];
    const places = parts.map((part) => text.indexOf(part));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
    expect(text).toContain('underfoot explain satin --apply 1 --save-as NAME');
  });

  it.each([40, 60, 80, 100, 200])('is never wider than %i columns', (width) => {
    const view = sampleWhy({ findings: [sampleEvidence(), sampleEvidence({ isUnderReference: true })] });
    const lines = whyLines(view, { ...PLAIN, width });
    expect(Math.max(...lines.map(textWidth))).toBeLessThanOrEqual(width);
  });

  it('keeps to ASCII when asked', () => {
    const peak = sampleEvidence({
      without: resultOf(cellOf('lane', { weightedFeetAccelerationMPerS2: 9 })).cells[0]!,
    });
    const lines = whyLines(sampleWhy({ riders: ['Zoë'], findings: [peak] }), { ...PLAIN, symbols: 'ascii' });
    expect(joined(lines)).toMatch(/^[ -~]*$/);
    expect(joined(lines)).toContain('m/s2');
  });

  it('shows five changes at the most', () => {
    const remedies = Array.from({ length: 8 }, (_, index) => sampleRemedy({ scoreAfter: index / 10 }));
    const tried = {
      remedies,
      counts: { ofOne: 8, ofTwo: 0 },
      verdict: { kind: 'one change helps' as const, limits: [] },
      ways: [],
    };
    const lines = whyLines(sampleWhy({ tried }), PLAIN);
    expect(lines.filter((line) => /^\d\) /.test(line)).map((line) => line[0])).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
    ]);
  });

  it('offers the first change that helps, shown or not, and none where none helps', () => {
    const worse = { ...sampleRemedy(), helps: false };
    const tried = (remedies: (typeof worse)[], kind: 'one change helps' | 'no change helps') =>
      joined(
        whyLines(
          sampleWhy({
            tried: { remedies, counts: { ofOne: 8, ofTwo: 0 }, verdict: { kind, limits: [] }, ways: [] },
          }),
          PLAIN,
        ),
      );
    const late = tried([worse, worse, worse, worse, worse, worse, sampleRemedy()], 'one change helps');
    expect(late).toContain(
      'To keep change 7 as a profile of yours: underfoot explain satin --apply 7 --save-as NAME',
    );
    const asked = { profile: 'satin', board: 'yak', cells: ['--rider', 'light,kim', '--seeds', '2'] };
    expect(joined(whyLines(sampleWhy({ asked }), PLAIN))).toContain(
      'underfoot explain satin --board yak --rider light,kim --seeds 2 --apply 1 --save-as NAME',
    );
    expect(late).toContain(' 7) Rate gain');
    expect(late).not.toContain(' 6) Rate gain');
    expect(tried([worse], 'no change helps')).not.toContain('--apply');
  });

  it('leaves out feel and remedies as long as they have not come', () => {
    const text = joined(whyLines(sampleWhy({ feel: null, tried: null, isComplete: false }), PLAIN));
    expect(text).not.toMatch(/Feels|--apply|NaN|undefined/);
    expect(text).toContain('the others are still to come');
  });

  it('lets no name move the cursor', () => {
    const lines = whyLines(sampleWhy({ profile: '\u001b[2Jsatin' }), PLAIN);
    expect(lines.join('')).not.toContain('\u001b');
  });
});

describe('the first finding', () => {
  it('is the cause and what goes with it', () => {
    const text = joined(firstFindingLines(sampleWhy({ isComplete: false }), PLAIN));
    expect(text).toMatch(
      /^Too little rate gain \(rate gain 0\.02 .* goes away in the 2 worst runs, and 1 fall with it\.$/,
    );
  });

  it('may be that nothing is to blame', () => {
    const blame = { excess: 0, isProfileToBlame: false, isRigTroubled: false };
    const view = sampleWhy({ findings: [], isComplete: false, blame, suspects: 0 });
    const text = joined(firstFindingLines(view, PLAIN));
    expect(text).toMatch(/^Nobody is to blame in the 2 worst runs/);
  });
});
