/** A made-up run for tests of what is shown: a kerb, a damped swing, noise, a ceiling that is met. */
import type { RunView } from '../../src/show/run-view.js';
import { CEILINGS, createTape } from '../../src/simulate/tape.js';
import type { Tape } from '../../src/simulate/tape.js';

/** Small repeatable noise of size one. */
export function noiseAt(index: number): number {
  const value = Math.sin(index * 12.9898) * 43758.5453;
  return 2 * (value - Math.floor(value)) - 1;
}

/** A tape of `seconds` at 800 Hz: pitch swings from a kerb at 1 s on and comes to rest. */
export function sampleTape(seconds: number): Tape {
  const tape = createTape(seconds * 800 + 100, 1 / 800);
  tape.length = seconds * 800 + 1;
  const { columns } = tape;
  for (let row = 0; row < tape.length; row += 1) {
    const timeS = row / 800;
    const since = timeS - 1;
    const swing = since < 0 ? 0 : Math.exp(-1.6 * since) * Math.sin(6.5 * since);
    columns.timeS[row] = timeS;
    columns.pitchRad[row] = 0.085 * swing + 0.0008 * noiseAt(row) - 0.004;
    columns.setPointRad[row] = -0.004;
    columns.upperCeilingA[row] = 80 - 42 * Math.max(0, swing);
    columns.lowerCeilingA[row] = -80;
    const asked = 8 + 75 * swing + 4 * noiseAt(row + 7);
    const upper = columns.upperCeilingA[row] ?? 0;
    columns.askedCurrentA[row] = asked;
    columns.currentA[row] = Math.min(asked, upper);
    columns.bindingCeiling[row] = asked > upper ? CEILINGS.indexOf('voltage') : 0;
    columns.speedMPerS[row] = 4.2 + (since < 0 ? 0 : 0.5 * Math.exp(-0.5 * since) * Math.sin(1.3 * since));
  }
  return tape;
}

/** A view of the sample tape, measured from the kerb to the end. */
export function sampleView(tape = sampleTape(6)): RunView {
  return {
    title: 'Long Meadow over the kerb drop',
    tape,
    firstRow: 800,
    endRow: tape.length,
    marks: [{ name: 'kerb', timeS: 1 }],
    outcome: { kind: 'upright', atS: 6 },
    facts: {
      isMeasured: true,
      eventName: 'kerb',
      peakPitchRad: 0.0575,
      peakAfterS: 0.2,
      bandRad: 0.00873,
      settlingTimeS: 1.9,
      peakCurrentA: 52.3,
      saturationShare: 0.0213,
      bindingCeiling: 'voltage',
      leastHeadroomShare: 0,
    },
  };
}
