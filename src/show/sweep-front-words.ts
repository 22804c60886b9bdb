/**
 * What does the front of a sweep tell, in words? Who is matched by nobody in two of the costs, what each of them gives for what, and
 * by whom the others are matched.
 */
import { COST_GROUPS } from '../measure/scales.js';
import { onFront } from '../sweep/front.js';
import { listed } from './margin-view.js';
import { scatterSentence, type ScatterPoint, type ScatterSpec, type TradedGroup } from './sweep-scatter.js';
import type { Sections } from './sweep-words.js';

/** All that the front tells. */
export function frontWords(spec: ScatterSpec): Sections {
  const { x, y, points } = spec;
  const isFront = onFront(points.map(({ groups }) => [groups[x], groups[y]]));
  const front = points.filter((_, index) => isFront[index]).toSorted((a, b) => a.groups[x] - b.groups[x]);
  const others = points.filter((_, index) => !isFront[index]);
  const costs = costsText(points);
  return [
    [scatterSentence(spec), 'A cost of 1 is at the scales; less is better.'],
    [
      `Matched by nobody in both, from the least ${x} to the least ${y}:`,
      ...front.map((point, index) => `${costs(point)}${tradeText(spec, point, front[index - 1])}.`),
    ],
    ...(others.length === 0
      ? []
      : [
          [
            'The others:',
            ...others.map(
              (point) => `${costs(point)}${matchedText(spec, point, front)}${thirdText(spec, point)}.`,
            ),
          ],
        ]),
  ];
}

/** Decimals with which the costs of a group differ. */
function decimalsOf(points: readonly ScatterPoint[], group: TradedGroup): number {
  const values = points.map(({ groups }) => groups[group]);
  const extent = Math.max(...values) - Math.min(...values);
  return extent > 0 ? Math.min(6, Math.max(2, 1 - Math.floor(Math.log10(extent)))) : 2;
}

function costsText(points: readonly ScatterPoint[]) {
  const decimals = COST_GROUPS.map((group) => decimalsOf(points, group));
  return ({ sign, name, groups }: ScatterPoint) => {
    const costs = COST_GROUPS.map((group, index) => `${group} ${groups[group].toFixed(decimals[index])}`);
    return `${sign} ${name}: ${costs.join(', ')}`;
  };
}

const difference = (value: number) => String(Number(Math.abs(value).toPrecision(2)));

/** What is given and what is got against the one before it on the front. */
function tradeText(
  { x, y }: ScatterSpec,
  { groups }: ScatterPoint,
  before: ScatterPoint | undefined,
): string {
  if (before === undefined) return '';
  const [more, less] = [groups[x] - before.groups[x], before.groups[y] - groups[y]];
  if (more === 0 && less === 0) return `; as much as ${before.name} in both`;
  return `; against ${before.name} ${difference(less)} less ${y} for ${difference(more)} more ${x}`;
}

/** Who is no worse in both. */
function matchedText(
  { x, y }: ScatterSpec,
  { groups }: ScatterPoint,
  front: readonly ScatterPoint[],
): string {
  const better = front.filter((other) => other.groups[x] <= groups[x] && other.groups[y] <= groups[y]);
  const names = better.map(({ name }) => name);
  const told = names.length <= 3 ? listed(names) : `${names[0]!} and ${names.length - 1} more`;
  return `; matched in both by ${told}`;
}

/** What keeps one on the front of all three that is not on that of two. */
function thirdText({ x, y }: ScatterSpec, { isOnFront }: ScatterPoint): string {
  const third = COST_GROUPS.find((group) => group !== x && group !== y);
  return isOnFront && third !== undefined ? `, yet by nobody once ${third} counts too` : '';
}
