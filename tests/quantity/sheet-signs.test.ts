/** Is a controller that counts its own way the same controller, whichever way that is? */
import { describe, expect, it } from 'vitest';
import type { SheetFile } from '../../src/quantity/sheet-file.js';
import { countedSign, takenSign, typedSign } from '../../src/quantity/sheet-signs.js';
import { sheetWith } from './valid-sheet.js';

const PITCHES = ['nose down', 'nose up'] as const;
const CURRENTS = ['forward', 'backward'] as const;
const ERRORS = ['pitch minus set-point', 'set-point minus pitch'] as const;
const RATES = [undefined, 'nose down', 'nose up'] as const;

const ways = PITCHES.flatMap((pitch) =>
  CURRENTS.flatMap((current) =>
    ERRORS.flatMap((error) => RATES.map((rate) => ({ pitch, current, error, ...(rate && { rate }) }))),
  ),
);

/** Current [A, forward] of a controller with these typed numbers that counts as the sheet says, worked out as it would. */
function currentOf(counts: SheetFile['counts'], typed: Record<'p' | 'd' | 'trim' | 'load', number>): number {
  const noseDownDeg = 3;
  const rateDegPerS = -7;
  const loadA = 11;
  const pitch = counts.pitch === 'nose down' ? noseDownDeg : -noseDownDeg;
  const load = counts.current === 'forward' ? loadA : -loadA;
  const setPoint = typed.trim + typed.load * load;
  const error = counts.error === 'pitch minus set-point' ? pitch - setPoint : setPoint - pitch;
  const growing = (counts.pitch === 'nose down') === (counts.error === 'pitch minus set-point');
  const rate =
    (counts.rate ?? (growing ? 'nose down' : 'nose up')) === 'nose down' ? rateDegPerS : -rateDegPerS;
  const current = typed.p * error + typed.d * rate;
  return counts.current === 'forward' ? current : -current;
}

describe('whichever way it counts', () => {
  it.each(ways)('$pitch, $current, $error, rate $rate: the motor is asked for the same', (counts) => {
    // Ours: nose down and forward positive, trim and load lift nose up: the set-point is minus both.
    const own = 20 * (3 + 2 + 0.1 * 11) + 1.2 * -7;
    const typed = {
      p: countedSign('gain', counts) * 20,
      d: countedSign('rate gain', counts) * 1.2,
      trim: countedSign('nose up', counts) * 2,
      load: countedSign('nose up per current', counts) * 0.1,
    };
    expect(currentOf(counts, typed)).toBeCloseTo(own, 12);
  });
});

it('a row with a sign of its own is typed with it, and taken by the way that the sheet counts', () => {
  const row = { label: 'Hold', quantity: 'proportionalAPerDeg', unit: 'A/deg', sign: 'minus' };
  const sheet = sheetWith([row]);
  expect(typedSign(sheet, sheet.rows[0]!)).toBe(-1);
  expect(takenSign(sheet, sheet.rows[0]!)).toBe(1);
});

it('the sign of a size is a way of writing it', () => {
  const row = { label: 'Stop', quantity: 'brakeCeilingA', unit: 'A', sign: 'minus' };
  const sheet = sheetWith([row], { counts: { pitch: 'nose up', current: 'backward' } });
  expect(typedSign(sheet, sheet.rows[0]!)).toBe(-1);
  expect(takenSign(sheet, sheet.rows[0]!)).toBe(-1);
});
