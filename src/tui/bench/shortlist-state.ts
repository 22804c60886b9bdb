/**
 * What does the bench know of the shortlist besides its files? The profiles that wait to be proven, what of the shortlist is looked
 * at, and the answer to what has to be computed for it.
 */
import type { FirstRidePlan } from '../../explain/first-ride.js';
import type { KeptFile } from '../../quantity/kept-file.js';
import type { Problem } from '../../quantity/problem.js';
import type { ScenarioFile } from '../../quantity/scenario-file.js';
import type { SheetFile } from '../../quantity/sheet-file.js';
import type { SheetView } from '../../show/sheet-view.js';
import type { ExportForm, ExportFormat } from '../../tasks/export.js';
import type { KeepProgress } from '../../tasks/keep.js';
import type { Named, RankPlan } from '../../tasks/plan.js';

/** A profile that is being proven, or waits for it: its plan, which stands for it, and the name that it will be kept under. */
export interface Keeping {
  name: string;
  plan: RankPlan;
  /** Null until something is known. */
  progress: KeepProgress | null;
}

/** The views of a kept profile. */
export const SHORTLIST_VIEWS = ['summary', 'card', 'sheet', 'plan', 'qr'] as const;

/** A view of a kept profile. */
export type ShortlistViewName = (typeof SHORTLIST_VIEWS)[number];

/** What a file is to hold: a form of the kept profile, or what the view shows of the sheet or the plan. */
export type CarriedForm =
  { kind: 'form'; form: ExportForm; format: ExportFormat | null } | { kind: 'sheet' | 'plan' };

/** What has to be computed for a view; a sheet is taken through the scenarios as the files have them now. */
export type PreviewWish =
  | {
      kind: 'sheet';
      kept: Named<KeptFile>;
      sheet: Named<SheetFile>;
      scenarios: readonly Named<ScenarioFile>[];
    }
  | { kind: 'plan'; kept: Named<KeptFile> };

/** What was computed. */
export type PreviewAnswer = { kind: 'sheet'; view: SheetView } | { kind: 'plan'; plan: FirstRidePlan };

/** A wish with what is known of it: runs done, of how many if that is known; the answer, or why there is none. */
export interface Preview {
  wish: PreviewWish;
  done: number;
  all: number | null;
  answer: PreviewAnswer | null;
  problems: readonly Problem[];
}

/** The Shortlist screen. The cursor is on a kept profile, or one that waits, by name; null for the first. */
export interface ShortlistState {
  cursor: string | null;
  view: ShortlistViewName;
  /** The name of the controller sheet that was chosen. */
  sheet: string | null;
  /** So many signs of the view stand above its first row. */
  read: number;
  /** The plan of what is to be kept once it has a name. */
  asked: RankPlan | null;
  /** The first is being proven. */
  queue: readonly Keeping[];
  preview: Preview | null;
  /** The name of what is taken out at the next wish to. */
  removing: string | null;
}

/** The Shortlist screen before it is opened. */
export const FIRST_SHORTLIST: ShortlistState = {
  cursor: null,
  view: 'summary',
  sheet: null,
  read: 0,
  asked: null,
  queue: [],
  preview: null,
  removing: null,
};
