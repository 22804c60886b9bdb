/**
 * How is what stands on a card proven again? The command line over the same board, riders, scenarios, charges and seeds, with what
 * it was proven by.
 */
import { chargesText } from '../quantity/charges-text.js';
import type { KeptFile } from '../quantity/kept-file.js';
import { listed } from './margin-view.js';

/** More letters of scenarios, or of riders, than this are no line to type from a card (ours). */
const MOST_LETTERS = { scenarios: 200, riders: 60 } as const;

/** True for seeds that a count says: 1, 2, 3 and so on. */
export const isCountedFromOne = (seeds: readonly number[]) =>
  seeds.every((seed, index) => seed === index + 1);

const ridersOf = ({ rig }: Pick<KeptFile, 'rig'>) => rig.riders.map(({ name }) => name).join(',');

/** The command line that proves the profile of this name again over the cells of a kept one; many riders or scenarios are left out of it. */
export function againCommand(profile: string, { rig, cells }: Pick<KeptFile, 'rig' | 'cells'>): string {
  const { scenarios, chargesPercent, seeds, weights = {} } = cells;
  const [names, riders] = [scenarios.join(','), ridersOf({ rig })];
  const weighted = Object.entries(weights).map(([name, weight]) => `${name}=${weight}`);
  return [
    `underfoot shortlist add ${profile} --as again --board ${rig.boardName}`,
    ...(riders.length <= MOST_LETTERS.riders ? [`--rider ${riders}`] : []),
    ...(names.length <= MOST_LETTERS.scenarios ? [`--scenarios ${names}`] : []),
    `--charge ${chargesText(chargesPercent)}`,
    ...(isCountedFromOne(seeds) ? [`--seeds ${seeds.length}`] : []),
    ...(weighted.length > 0 ? [`--weights ${weighted.join(',')}`] : []),
  ].join(' ');
}

/** The command with what it takes: the version, the day, the numbers, and what the command cannot say. */
export function againText(name: string, kept: KeptFile): string {
  const { origin, cells, rig } = kept;
  const hasManyScenarios = cells.scenarios.join(',').length > MOST_LETTERS.scenarios;
  const hasManyRiders = ridersOf(kept).length > MOST_LETTERS.riders;
  const unsaid = [
    ...(hasManyRiders ? [`the ${rig.riders.length} riders`] : []),
    ...(hasManyScenarios ? [`the ${cells.scenarios.length} scenarios`] : []),
    ...(isCountedFromOne(cells.seeds) ? [] : [`the seeds ${cells.seeds.join(', ')}`]),
  ];
  const over = unsaid.length === 0 ? '' : `, over ${listed(unsaid)} of shortlist/${name}.yaml`;
  return (
    `proven ${origin.on.slice(0, 10)} by underfoot ${origin.underfoot}, scales ${origin.scales}; ` +
    `with profile ${origin.from} of these numbers${over}: ${againCommand(origin.from, kept)}`
  );
}
