/**
 * What else keeps a ride up that no change of the profile does? In words: how much of which number, of machine, person or ride.
 */
import type { LeverName } from '../explain/levers.js';
import type { LimitWays, WayFound } from '../explain/ways-out.js';
import { cellName, plainNumber } from './why-sentences.js';
import { listed } from './margin-view.js';

interface LeverWords {
  /** What comes before the size and after it. */
  before: string;
  after?: string;
  unit: string;
  factor?: number;
  /** True where the machine is another one then. */
  isMachine?: true;
}

const WORDS: Readonly<Record<LeverName, LeverWords>> = {
  'cells in series': { before: 'with', after: ' cells in series', unit: '', isMachine: true },
  'state of charge': { before: 'with the pack at', unit: ' %' },
  'drive ceiling': { before: 'with a drive ceiling of', unit: ' A', isMachine: true },
  'brake ceiling': { before: 'with a brake ceiling of', unit: ' A', isMachine: true },
  'current out of the pack': { before: 'with a pack that gives', unit: ' A', isMachine: true },
  'current into the pack': { before: 'with a pack that takes', unit: ' A', isMachine: true },
  'ticks of delay': { before: 'with a delay of', after: ' ticks', unit: '', isMachine: true },
  'gyro noise': { before: 'with gyro noise of', unit: ' deg/s', isMachine: true },
  'accelerometer noise': { before: 'with accelerometer noise of', unit: ' m/s2', isMachine: true },
  "the rider's delay": { before: 'with a rider who is late by', unit: ' s' },
  'balance frequency': { before: 'with a balance frequency of', unit: ' rad/s' },
  tremor: { before: 'with a tremor of', unit: ' Nm' },
  'stiffness of the legs': {
    before: 'with knees bent, legs as stiff as',
    unit: ' kN/m',
    factor: 0.001,
  },
  grip: { before: 'with a grip of', unit: '' },
  speed: { before: 'at', unit: ' km/h' },
  haste: { before: 'speeding up and braking with', unit: ' m/s2' },
};

/** What else was simulated against a limit, sentence by sentence; none where it fells no run. */
export function waysSentences({ cells, isUnderReference, ways }: LimitWays): string[] {
  if (cells.length === 0 || ways.length === 0) return [];
  const helping = ways.filter(({ helpsFrom }) => helpsFrom !== null);
  const [many, others] = cells.length === 1 ? ['stays', ''] : ['stay', ` and ${cells.length - 1} more`];
  const who = `${cellName(cells[0]!)}${others}`;
  const under = isUnderReference ? ' under the reference set' : '';
  if (helping.length === 0) {
    const tried = listed(ways.map(({ lever }) => lever));
    return [`Nor does anything else that was simulated keep ${who} up${under}: ${tried}.`];
  }
  const machine = helping.some(({ lever }) => WORDS[lever].isMachine)
    ? ['Other cells, ceilings or wiring are work for qualified people.']
    : [];
  return [`Simulated: ${who} ${many} up${under} ${helping.map(wayText).join('; or ')}.`, ...machine];
}

/** Sizes as they were tried: beyond them nothing is known. */
function wayText({ lever, now, helpsFrom, helpsTo, alsoFells }: WayFound): string {
  const { before, after = '', unit, factor = 1 } = WORDS[lever];
  const number = (size: number) => plainNumber(factor * size);
  const one = Math.min(helpsFrom ?? now, helpsTo ?? now);
  const other = Math.max(helpsFrom ?? now, helpsTo ?? now);
  const size = one === other ? number(one) : `${number(one)} to ${number(other)}`;
  const felled =
    alsoFells.length === 0
      ? ''
      : `, but then ${listed(alsoFells.slice(0, NAMED_CELLS).map(cellName))} ${alsoFells.length === 1 ? 'falls' : 'fall'}`;
  return `${before} ${size}${unit}${after} (now ${number(now)}${unit}${felled})`;
}

/** Cells that are named of those that fall instead. */
const NAMED_CELLS = 2;
