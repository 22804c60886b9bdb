/**
 * How is a ranking written as comma-separated values? A header with units in the names, then a line a profile in the
 * order asked for; lines end and fields are quoted as RFC 4180 has it. A figure that there is none of is empty.
 */
import { rowFigures, standingOf, type ProfileResult, type RankedCell } from '../measure/profile-result.js';
import { orderRows, type RowOrder } from '../measure/row-order.js';

/** A ranking to be written, with its profiles in the order of their rank; `scenarios` in the order of their columns. */
export interface RankCsvView {
  scenarios: readonly string[];
  profiles: readonly ProfileResult[];
  order: RowOrder;
}

type Field = string | number | boolean | null;

/** Columns and what stands in them; scenarios follow, each as `standing.NAME`. */
function fieldsOf(profile: ProfileResult, rank: number): Record<string, Field> {
  const figures = rowFigures(profile.cells);
  return {
    rank,
    profile: profile.name,
    falls: profile.failures,
    cells: profile.cells.length,
    score: profile.score,
    overshootPercent: figures.overshootPercent,
    settlingTimeS: figures.settlingTimeS,
    notSettledCount: figures.notSettledCount,
    saturationShare: figures.saturationShare,
    ...worstFields(profile.worst),
  };
}

function worstFields({ outcome, ...cell }: RankedCell): Record<string, Field> {
  return {
    worstScenario: cell.scenario,
    worstRider: cell.rider,
    worstChargePercent: cell.chargePercent,
    worstSeed: cell.seed,
    worstOutcome: outcome.kind,
    worstEndedAtS: outcome.atS,
    worstEventReached: cell.eventReached,
    worstCost: cell.cost,
  };
}

function written(field: Field): string {
  if (field === null || (typeof field === 'number' && !Number.isFinite(field))) return '';
  const text = String(field);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The text of the file. Numbers are the shortest decimals that read back as the same double. */
export function rankCsv({ scenarios, profiles, order }: RankCsvView): string {
  const records = orderRows(profiles, order).map((profile) => ({
    ...fieldsOf(profile, profiles.indexOf(profile) + 1),
    ...Object.fromEntries(
      scenarios.map((scenario): [string, Field] => [
        `standing.${scenario}`,
        standingOf(profile.cells.filter((cell) => cell.scenario === scenario)),
      ]),
    ),
  }));
  const [first] = records;
  const lines =
    first === undefined ? [] : [Object.keys(first), ...records.map((record) => Object.values(record))];
  return lines.map((fields) => `${fields.map(written).join(',')}\r\n`).join('');
}
