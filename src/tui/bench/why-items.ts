/**
 * What is there to choose on the Why screen, what is under its cursor, and which runs does it show?
 */
import type { Evidence } from '../../explain/evidence.js';
import { editsBetween } from '../../explain/remedies.js';
import type { Remedy } from '../../explain/remedy-effect.js';
import type { ProfileFile } from '../../quantity/profile-file.js';
import type { Named } from '../../tasks/plan.js';
import type { BenchState, WhyState, Work } from './state.js';

/** A finding, or a change that was tried; `index` counts each kind from 0. */
export type WhyItem =
  { kind: 'finding'; index: number; evidence: Evidence } | { kind: 'remedy'; index: number; remedy: Remedy };

/** The question why a profile of a plan rides as it does, with nothing known yet. */
export function whyOf({ plan }: Work, name: string): WhyState {
  const profiles = plan.profiles.filter((profile) => profile.name === name);
  return {
    plan: { ...plan, profiles },
    progress: null,
    answer: null,
    edgeRuns: 0,
    edge: null,
    cursor: 0,
    read: null,
  };
}

/** The findings, then the changes, best first. */
export function itemsOf({ answer }: Pick<WhyState, 'answer'>): WhyItem[] {
  const findings = answer?.evidence ?? [];
  const remedies = answer?.tried?.remedies ?? [];
  return [
    ...findings.map((evidence, index) => ({ kind: 'finding' as const, index, evidence })),
    ...remedies.map((remedy, index) => ({ kind: 'remedy' as const, index, remedy })),
  ];
}

/** What is under the cursor; undefined while there is nothing. */
export function currentItem({ why }: Pick<BenchState, 'why'>): WhyItem | undefined {
  return why === null ? undefined : itemsOf(why)[why.cursor];
}

/** The evidence whose cell is shown: of the finding under the cursor, or of the one that a change is meant for, else the first. */
export function shownEvidence({ why }: Pick<BenchState, 'why'>): Evidence | undefined {
  const item = currentItem({ why });
  if (item?.kind === 'finding') return item.evidence;
  const findings = why?.answer?.evidence ?? [];
  const meant = findings.find(({ causes }) => causes.some((cause) => item?.remedy.causes.includes(cause)));
  return meant ?? findings[0];
}

/** The explained profile as it is in the bench now; undefined where it is gone. */
function profileNow({ why, work }: Pick<BenchState, 'why' | 'work'>): Named<ProfileFile> | undefined {
  return work?.plan.profiles.find(({ name }) => name === why?.plan.profiles[0]?.name);
}

/** The profile as it was explained, and as it is now where that has other numbers. */
export function whyRuns(state: Pick<BenchState, 'why' | 'work'>): Named<ProfileFile>[] {
  const before = state.why?.plan.profiles[0];
  const now = profileNow(state);
  if (before === undefined || now === undefined) return [];
  return editsBetween(before.value, now.value).length === 0 ? [before] : [before, now];
}

/** True where the profile has the numbers of a change now. */
export function isInUse(state: Pick<BenchState, 'why' | 'work'>, { profile }: Remedy): boolean {
  const now = profileNow(state);
  return now !== undefined && editsBetween(profile, now.value).length === 0;
}
