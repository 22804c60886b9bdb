/**
 * A ranking that follows its plan while a person changes it: only what is new is computed, what was seen before comes back
 * at once, and what is no longer wanted is dropped. Once every row is there, each profile is checked against the reference.
 */
import { profileResult, type ProfileResult, type RankedCell } from '../measure/profile-result.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { contentKey, RecentMap } from './content-key.js';
import type { Crew } from './crew.js';
import type { Named, RankPlan } from './plan.js';
import { rank } from './rank.js';
import { checkAgainstReference, type ReferenceCheck } from './reference-check.js';

/** What is known of one profile; null where it is not computed yet. */
export interface StandingRow {
  name: string;
  result: ProfileResult | null;
  check: ReferenceCheck | null;
  /** Its cells so far, while the result is not complete and there are any. */
  some?: readonly RankedCell[];
}

/** How far the ranking of a plan has come: rows in the plan's order, and cells out of those that were missing. */
export interface Standing {
  plan: RankPlan;
  rows: StandingRow[];
  doneCells: number;
  allCells: number;
}

/** A ranking that can be given another plan at any time. */
export interface StandingRank {
  want: (plan: RankPlan) => void;
  /** What is known already of a profile on the rest of a plan. */
  known: (plan: RankPlan, profile: Named<ProfileFile>) => ProfileResult | null;
  close: () => void;
}

/** Profiles on rigs that are remembered. */
const REMEMBERED = 1000;

interface Known {
  result: ProfileResult;
  check: ReferenceCheck | null;
}

/** Opens a standing ranking; `onChange` hears of every row and of progress, `onFault` of what went wrong. */
export function openStandingRank(
  crew: Crew,
  { onChange, onFault }: { onChange: (standing: Standing) => void; onFault: (error: unknown) => void },
): StandingRank {
  const memory = new RecentMap<Known>(REMEMBERED);
  const rigKeys = new WeakMap<RankPlan, string>();
  const rigKey = (plan: RankPlan) => {
    const { profiles: _others, ...rest } = plan;
    const key = rigKeys.get(plan) ?? contentKey(rest);
    rigKeys.set(plan, key);
    return key;
  };
  const keyOf = (plan: RankPlan, profile: Named<ProfileFile>) => rigKey(plan) + contentKey(profile);
  const rowsOf = (plan: RankPlan, parts?: ReadonlyMap<string, RankedCell[]>): StandingRow[] =>
    plan.profiles.map((profile) => {
      const { name } = profile;
      const known = memory.get(keyOf(plan, profile));
      const some = known === undefined ? parts?.get(name) : undefined;
      const row = { name, result: known?.result ?? null, check: known?.check ?? null };
      return some === undefined ? row : { ...row, some };
    });
  const follow = async (plan: RankPlan, signal: AbortSignal) => {
    const profileOf = (name: string) => plan.profiles.find((profile) => profile.name === name)!;
    const progress = { doneCells: 0, allCells: 0 };
    const parts = new Map<string, RankedCell[]>();
    const tell = () => onChange({ plan, rows: rowsOf(plan, parts), ...progress });
    const options = { threads: crew, signal };
    tell();
    const profiles = plan.profiles.filter((profile) => memory.get(keyOf(plan, profile)) === undefined);
    if (profiles.length > 0) {
      await rank(
        { ...plan, profiles },
        {
          ...options,
          onProfile: (result) => memory.set(keyOf(plan, profileOf(result.name)), { result, check: null }),
          onSome: (name, cells) => {
            const { cells: priced } = profileResult({ name, summary: '' }, cells, plan.weights);
            parts.set(name, [...(parts.get(name) ?? []), ...priced]);
          },
          onCells: (doneCells, allCells) => {
            Object.assign(progress, { doneCells, allCells });
            queueMicrotask(tell);
          },
        },
      );
    }
    const unchecked = rowsOf(plan).flatMap(({ result, check }) => (check === null && result ? [result] : []));
    if (unchecked.length === 0 || plan.solver === 'reference') return;
    await checkAgainstReference(plan, unchecked, {
      ...options,
      onProfile: (name, check) => {
        const key = keyOf(plan, profileOf(name));
        const known = memory.get(key);
        if (known !== undefined) memory.set(key, { ...known, check });
        tell();
      },
    });
  };
  let current = new AbortController();
  return {
    want: (plan) => {
      current.abort();
      const { signal } = (current = new AbortController());
      follow(plan, signal).catch((error: unknown) => {
        if (!signal.aborted) onFault(error);
      });
    },
    known: (plan, profile) => memory.get(keyOf(plan, profile))?.result ?? null,
    close: () => current.abort(),
  };
}
