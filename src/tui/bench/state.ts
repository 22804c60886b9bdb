/**
 * What does the bench know at a moment? One value that nobody changes in place; every key, file and finished run makes
 * the next one from it. What is drawn and what is computed follows from it alone.
 */
import type { EdgeReport } from '../../explain/edge-found.js';
import type { RowOrder } from '../../measure/row-order.js';
import type { Weights } from '../../measure/scales.js';
import type { Paint } from '../../show/colour.js';
import type { SymbolSet } from '../../show/glyphs.js';
import type { TimeSpan } from '../../show/plot-frame.js';
import type { SpeedUnit } from '../../show/quantities.js';
import type { ProfileFile } from '../../quantity/profile-file.js';
import type { Solver } from '../../simulate/run.js';
import type { Look } from '../../tasks/looks.js';
import type { Named, PlannedTrial, RankPlan } from '../../tasks/plan.js';
import type { Shelf } from '../../tasks/shelf.js';
import type { StandingRow } from '../../tasks/standing-rank.js';
import type { Purpose, Why } from '../../tasks/why.js';
import type { Felt } from './felt-typed.js';
import type { CarriedForm, ShortlistState } from './shortlist-state.js';
import type { SweepState } from './sweep-state.js';

/** What stays as it was when the bench was opened. */
export interface BenchOptions {
  symbols: SymbolSet;
  paint: Paint;
  speedUnit: SpeedUnit;
  /** False: nothing moves by itself. */
  animation: boolean;
  /** False where files of the folder may not be added, as in the starter set. */
  ownFolder: boolean;
  /** Whose files are used, as it is shown to people: the path of a folder, or the starter set. */
  folder: string;
  solver: Solver;
  weights: Weights;
  seeds: readonly number[];
}

/**
 * What profiles are ranked on, by name. In place of riders or scenarios null stands for all there are, those to come too; a
 * charge of null is the scenario's own.
 */
export interface Setup {
  board: string;
  riders: readonly string[] | null;
  charges: readonly (number | null)[];
  scenarios: readonly string[] | null;
}

/** A number of a profile that differs from its file; null leaves it out. */
export interface Edit {
  profile: string;
  /** The key of the field, path and all. */
  field: string;
  value: number | null;
}

/** What a person has chosen so far, and what undo brings back. */
export interface Choices {
  setup: Setup;
  edits: readonly Edit[];
  /** A profile that was made here and that no file holds: it stands among those of the files. */
  draft?: Named<ProfileFile>;
}

/** The plan that follows from files and choices, and its trials. */
export interface Work {
  plan: RankPlan;
  trials: readonly PlannedTrial[];
}

/** The screens. */
export type ScreenName = 'rank' | 'trace' | 'compare' | 'why' | 'sweep' | 'shortlist';

/** The Rank screen: cursor by name, so that a row may move under it; `column` is a scenario of the strip, null the worst. */
export interface RankState {
  cursor: string | null;
  column: number | null;
  order: RowOrder;
  filter: string;
  picked: readonly string[];
}

/** A moment and a stretch of time, shared by Trace and Compare; a time of null is the peak, once it is known. */
export interface Playhead {
  timeS: number | null;
  playing: boolean;
  /** Seconds of the run in a second of ours. */
  rate: number;
  /** Null shows the whole run. */
  span: TimeSpan | null;
}

/** Which runs are looked at: one profile for Trace, up to four for Compare, in a trial of the plan. */
export interface View {
  profiles: readonly string[];
  trial: number;
  /** True shows sentences in place of pictures. */
  inWords: boolean;
}

/**
 * The Why screen: a plan with the one profile that is explained, as its numbers were when that was asked; the runs that are
 * done; the answer so far, and, once it is whole, how far it is to the edge. The cursor goes over the findings, then over the
 * changes that were tried.
 */
export interface WhyState {
  plan: RankPlan;
  progress: { done: number; all: number; purpose: Purpose } | null;
  answer: Why | null;
  /** Runs that have looked for the edge. */
  edgeRuns: number;
  edge: EdgeReport | null;
  cursor: number;
  /** Null shows the lists. Else the whole answer is shown as text, and so many of its signs stand above the first row. */
  read: number | null;
}

/** A list to choose from, opened over the panel. */
export interface Chooser {
  kind: 'board' | 'rider' | 'pack' | 'scenarios' | 'from' | 'numbers' | 'sheet';
  items: readonly string[];
  typed: string;
  cursor: number;
  chosen: readonly string[];
  /** True once something was marked or unmarked here. */
  isMarked: boolean;
}

/** A line of text that is being typed, and what it is for. */
export interface Entry {
  purpose: 'filter' | 'number' | 'export' | 'save' | 'range' | 'keep' | 'note' | 'felt' | 'carry';
  text: string;
  /** True while the text is one that was offered: what is typed then takes its place. */
  isOffered: boolean;
}

/** What stands open over the screen, if anything. */
export type Overlay =
  | { kind: 'chooser'; chooser: Chooser }
  | { kind: 'gains'; profile: string; field: number }
  | { kind: 'help'; search: string; top: number; beneath: Pick<BenchState, 'overlay' | 'entry'> }
  | { kind: 'problems'; top: number };

/** Something to be done outside of the state. */
export type Errand =
  | { kind: 'leave'; interrupted: boolean }
  | { kind: 'suspend' }
  | { kind: 'export'; path: string }
  | { kind: 'save'; from: string; name: string }
  | ShortlistErrand;

/** Something to be done with the file of a kept profile, or from it; `text` is how ratings were typed. */
export type ShortlistErrand =
  | { kind: 'note'; name: string; note: string }
  | { kind: 'felt'; name: string; felt: Felt; text: string }
  | { kind: 'carry'; name: string; path: string; form: CarriedForm }
  | { kind: 'remove'; name: string };

/** Everything the bench knows. */
export interface BenchState {
  options: BenchOptions;
  size: { columns: number; rows: number };
  /** The files as they were read last, and with what was made here among them. */
  files: Shelf;
  shelf: Shelf;
  choices: Choices;
  past: readonly Choices[];
  future: readonly Choices[];
  work: Work | null;
  rows: readonly StandingRow[];
  /** Results of edited profiles as they stand in their files, by name. */
  unedited: ReadonlyMap<string, NonNullable<StandingRow['result']>>;
  progress: { doneCells: number; allCells: number };
  screen: ScreenName;
  /** Screens to go back to, the last one first to come. */
  behind: readonly ScreenName[];
  rank: RankState;
  view: View;
  playhead: Playhead;
  /** Null where Why is neither in front nor behind. */
  why: WhyState | null;
  sweep: SweepState;
  shortlist: ShortlistState;
  /** The runs that the screen wants, in its order; null while one is not there. */
  looks: readonly (Look | null)[];
  overlay: Overlay | null;
  entry: Entry | null;
  notice: { text: string; isFault: boolean } | null;
  /** True after a first wish to leave unsaved edits. */
  leaving: boolean;
  errands: readonly Errand[];
}
