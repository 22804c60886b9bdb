/**
 * What does the map of a sweep tell, in words? What it maps over which two numbers, where it is best, and between which numbers the
 * falls begin.
 */
import { placeOf, valueAt, type Range } from '../sweep/range.js';
import { mapSentence, type MapCandidate, type MapSpec } from './sweep-map.js';
import { rangeName } from './sweep-table.js';
import { numbersText, type Sections } from './sweep-words.js';
import { plainNumber, plainQuantity } from './why-sentences.js';

/** Part of those who have a value that is told of as the best. */
const BEST_SHARE = 0.2;

/** Bands of one number in which the cliff along the other is looked for. */
const BANDS = 3;

/** All that the map tells. */
export function mapWords(spec: MapSpec): Sections {
  const { ranges, candidates, metric } = spec;
  const finalists = candidates
    .filter(({ sign }) => sign !== null)
    .toSorted((a, b) => (a.sign! < b.sign! ? -1 : 1))
    .map(({ sign, name, values, value }) => {
      const figure = value === null ? 'not known' : metric.text(value);
      return `${sign} ${name} with ${numbersText(ranges, values)}: ${figure}.`;
    });
  return [
    [mapSentence(spec), axesSentence(spec), ...bestSentence(spec)],
    cliffSentences(spec),
    ...(finalists.length === 0 ? [] : [['The finalists by their signs:', ...finalists]]),
  ];
}

function axesSentence({ ranges, x, y }: MapSpec): string {
  const text = (range: Range) => `${rangeName(range)} ${between(range.min, range.max, range.unit)}`;
  return `To the right ${text(ranges[x]!)}, upwards ${text(ranges[y]!)}.`;
}

const between = (low: number, high: number, unit: string) =>
  low === high ? plainQuantity(low, unit) : `${plainNumber(low)} to ${plainQuantity(high, unit)}`;

/** Between which numbers the best of those lie who have a value. */
function bestSentence({ ranges, x, y, candidates, metric }: MapSpec): string[] {
  const known = candidates
    .filter(({ falls, value }) => value !== null && (metric.ofFallen || !falls))
    .toSorted((a, b) => a.value! - b.value!);
  const best = known.slice(0, Math.ceil(BEST_SHARE * known.length));
  if (best.length < 2) return [];
  const extent = (axis: number) => {
    const values = best.map((candidate) => candidate.values[axis]!);
    const { unit } = ranges[axis]!;
    return `${rangeName(ranges[axis]!)} ${between(Math.min(...values), Math.max(...values), unit)}`;
  };
  const worst = metric.text(best.at(-1)!.value!);
  return [`The best fifth, ${best.length} candidates up to ${worst}, lies at ${extent(x)} and ${extent(y)}.`];
}

/** A band of one number, and where in it those stay up along the other; null where all fall. */
interface Band {
  low: number;
  high: number;
  candidates: readonly MapCandidate[];
  stretch: Stretch | null;
}

/** From where to where they stay up, the nearest on either side that fall, and how many do otherwise. */
interface Stretch {
  from: number;
  to: number;
  fallBelow: number | null;
  fallAbove: number | null;
  others: number;
}

/** Where the falls begin, along the number along which that is told with fewer exceptions. */
function cliffSentences(spec: MapSpec): string[] {
  const { candidates, x, y } = spec;
  const fallen = candidates.filter(({ falls }) => falls).length;
  if (fallen === 0) return ['Nobody falls: there is no cliff between these numbers.'];
  if (fallen === candidates.length) return ['All of them fall: the cliff lies outside of these numbers.'];
  const [along, across] = exceptionsOf(spec, x, y) <= exceptionsOf(spec, y, x) ? [x, y] : [y, x];
  const bands = bandsOf(spec, along, across).map((band) => bandText(spec, band, { along, across }));
  return [`Where the falls begin, by ${rangeName(spec.ranges[across]!)}:`, ...bands];
}

const exceptionsOf = (spec: MapSpec, along: number, across: number) =>
  bandsOf(spec, along, across).reduce(
    (sum, { stretch, candidates }) => sum + (stretch?.others ?? uprightIn(candidates)),
    0,
  );

const uprightIn = (candidates: readonly MapCandidate[]) => candidates.filter(({ falls }) => !falls).length;

function bandsOf({ ranges, candidates }: MapSpec, along: number, across: number): Band[] {
  const range = ranges[across]!;
  const bandOf = ({ values }: MapCandidate) =>
    Math.min(BANDS - 1, Math.max(0, Math.floor(BANDS * placeOf(range, values[across]!))));
  return Array.from({ length: BANDS }, (_, band): Band => {
    const own = candidates.filter((candidate) => bandOf(candidate) === band);
    const [low, high] = [valueAt(range, band / BANDS), valueAt(range, (band + 1) / BANDS)];
    return { low, high, candidates: own, stretch: stretchOf(own, along) };
  }).filter((band) => band.candidates.length > 0);
}

/** The stretch that parts those who stay up from those who fall with the fewest exceptions. */
function stretchOf(candidates: readonly MapCandidate[], along: number): Stretch | null {
  const surplus = new Map<number, number>();
  for (const { values, falls } of candidates)
    surplus.set(values[along]!, (surplus.get(values[along]!) ?? 0) + (falls ? -1 : 1));
  const steps = [...surplus].toSorted(([a], [b]) => a - b);
  const best = { from: 0, to: -1, sum: 0 };
  let [from, sum] = [0, 0];
  for (const [index, [, more]] of steps.entries()) {
    if (sum < 0) [from, sum] = [index, 0];
    sum += more;
    if (sum > 0 && sum >= best.sum) Object.assign(best, { from, to: index, sum });
  }
  if (best.to === -1) return null;
  return {
    from: steps[best.from]![0],
    to: steps[best.to]![0],
    fallBelow: steps[best.from - 1]?.[0] ?? null,
    fallAbove: steps[best.to + 1]?.[0] ?? null,
    others: uprightIn(candidates) - best.sum,
  };
}

function bandText(
  { ranges }: MapSpec,
  { low, high, candidates, stretch }: Band,
  { along, across }: { along: number; across: number },
): string {
  const count = `${candidates.length} ${candidates.length === 1 ? 'candidate' : 'candidates'}`;
  const start = `${rangeName(ranges[across]!)} ${between(low, high, ranges[across]!.unit)}, ${count}: `;
  const upright = uprightIn(candidates);
  if (stretch === null) return upright === 0 ? `${start}all fall.` : `${start}all but ${upright} fall.`;
  if (upright === candidates.length) return `${start}nobody falls.`;
  const { from, to, fallBelow, fallAbove, others } = stretch;
  const text = (value: number) => plainQuantity(value, ranges[along]!.unit);
  const fall = [
    ...(fallBelow === null ? [] : [`at ${text(fallBelow)} and below`]),
    ...(fallAbove === null ? [] : [`at ${text(fallAbove)} and above`]),
  ];
  const up = `stay up at ${rangeName(ranges[along]!)} ${between(from, to, ranges[along]!.unit)}`;
  const falling = fall.length === 0 ? '' : `, and fall ${fall.join(' and ')}`;
  return `${start}they ${up}${falling}${others === 0 ? '' : `; ${others} of them ${others === 1 ? 'does' : 'do'} otherwise`}.`;
}
