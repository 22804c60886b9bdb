/**
 * Which sizes are to be run next, and what has come of those that were? One quest looks for the fall and, with a push, for the
 * first that makes a foot light, on the same runs: no size is run twice.
 */
import { nextCount, openSearch, withResult, type Ending, type Search } from './edge.js';
import type { Edge, FoundEnding } from './edge-found.js';
import type { EdgeKind } from './edge-scenarios.js';

/** What came of one size under every seed: the ending of the first seed that fell, and whether a foot was light under any. */
export interface Met {
  ending: FoundEnding | null;
  isFootLight: boolean;
}

/** The searches of one rider for one kind, and what has come of each count of steps. */
export interface Quest {
  kind: EdgeKind;
  fall: Search;
  /** Null where it is not a push that grows. */
  footLight: Search | null;
  met: ReadonlyMap<number, Met>;
}

/** A quest that knows nothing yet. */
export function openQuest(kind: EdgeKind): Quest {
  const search = openSearch(kind.ladder);
  return { kind, fall: search, footLight: kind.unit === 'N s' ? search : null, met: new Map() };
}

/** The counts to be run next, side by side; none when the quest has come to its end. */
export function countsToRun({ fall, footLight }: Quest): number[] {
  const counts = [fall, footLight].map((search) => search && nextCount(search));
  return [...new Set(counts)].filter((count) => count !== null);
}

/** The quest with one more count known. */
export function withMet(quest: Quest, count: number, result: Met): Quest {
  const met = new Map(quest.met).set(count, result);
  const { fall, footLight } = quest;
  return {
    ...quest,
    met,
    fall: walked(fall, met, ({ ending }) => ending),
    footLight: footLight && walked(footLight, met, footLightOrFall),
  };
}

const LIGHT: Ending = { kind: 'foot light', atS: 0 };

function footLightOrFall({ ending, isFootLight }: Met): Ending | null {
  return ending ?? (isFootLight ? LIGHT : null);
}

/** A search taken as far as what is known leads. */
function walked(search: Search, met: Quest['met'], endingOf: (met: Met) => Ending | null): Search {
  const count = nextCount(search);
  const known = count === null ? undefined : met.get(count);
  if (count === null || known === undefined) return search;
  return walked(withResult(search, count, endingOf(known)), met, endingOf);
}

/** What a quest has found. */
export function edgeOf({ kind, fall, footLight, met }: Quest): Edge {
  const { name, unit, speedKmPerH, chargePercent, pushNS, step, ladder } = kind;
  const sized = (count: number | null) => (count === null ? null : count * step);
  const firstLight = footLight?.failed ?? null;
  const isSurvived = firstLight !== null && met.get(firstLight)!.ending === null;
  return {
    name,
    unit,
    speedKmPerH,
    chargePercent,
    pushNS,
    survived: sized(fall.survived),
    failed: sized(fall.failed),
    ending: fall.failed === null ? null : met.get(fall.failed)!.ending,
    largestTried: ladder.at(-1)! * step,
    footLightFrom: isSurvived ? sized(firstLight) : null,
  };
}
