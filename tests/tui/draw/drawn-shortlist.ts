/** The Shortlist screen with kept profiles, controller sheets, some that wait to be proven, and made-up answers. */
import { fullCeilings, partOf, type FirstRidePlan } from '../../../src/explain/first-ride.js';
import type { KeptFile } from '../../../src/quantity/kept-file.js';
import { ontoSheet } from '../../../src/quantity/onto-sheet.js';
import type { Problem } from '../../../src/quantity/problem.js';
import type { SheetFile } from '../../../src/quantity/sheet-file.js';
import type { SheetView } from '../../../src/show/sheet-view.js';
import type { Named } from '../../../src/tasks/plan.js';
import { previewed } from '../../../src/tui/bench/hear-shortlist.js';
import { shelved } from '../../../src/tui/bench/hear.js';
import { previewWish } from '../../../src/tui/bench/shortlist-items.js';
import type { Keeping } from '../../../src/tui/bench/shortlist-state.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { sheetWith } from '../../quantity/valid-sheet.js';
import { BAREST, keptExample } from '../../show/kept-example.js';

const RIDDEN = keptExample({
  note: 'Nervous over kerbs',
  rides: [{ on: '2026-06-01', note: '', felt: { twitchy: 4, loose: 2 } }],
});

/** Three kept profiles: never ridden, ridden, and one of which little is known. */
export const KEPT: readonly Named<KeptFile>[] = [
  { name: 'evening-one', value: keptExample() },
  { name: 'evening-two', value: RIDDEN },
  { name: 'spare', value: BAREST },
];

/** Two controller sheets. */
export const SHEETS: readonly Named<SheetFile>[] = ['brick', 'slab'].map((name) => ({
  name,
  value: sheetWith([
    { label: 'Hold', quantity: 'proportionalAPerDeg', unit: 'A/deg', step: 0.5 },
    { label: 'Calm', quantity: 'rateAPerDegPerS', unit: 'A/(deg/s)', decimals: 1 },
  ]),
}));

/** The state with kept profiles and sheets among its files. */
export function withKept(
  state: BenchState,
  kept: readonly Named<KeptFile>[] = KEPT,
  problems: readonly Problem[] = [],
): BenchState {
  return shelved(state, { ...state.files, kept, sheet: SHEETS, problems });
}

/** The state with profiles that wait to be proven; the first is at its slips. */
export function withQueue(state: BenchState, ...names: string[]): BenchState {
  const queue = names.map((name, index): Keeping => ({
    name,
    plan: { ...state.work!.plan, profiles: state.work!.plan.profiles.slice(0, 1) },
    progress: index === 0 ? { stage: 'trying slips', done: 12, all: 30 } : null,
  }));
  return { ...state, shortlist: { ...state.shortlist, queue } };
}

function sheetAnswer({ name, value }: Named<KeptFile>, sheet: Named<SheetFile>): SheetView {
  return {
    name,
    sheetName: sheet.name,
    sheet: sheet.value,
    onto: ontoSheet(sheet.value, value.profile),
    numbers: value.numbers,
    typedHash: 'q9dx-7k2m',
    runs: 60,
    scoreRatio: 1.01,
    proven: { failures: 0, score: 0.3371 },
    typed: { failures: 0, score: 0.3404 },
    newFalls: [],
    worst: 'soft-grass with kim, pack at 30 %: settles only after 2.61 s',
    alone: [],
    provenLoopRateHz: 800,
    hasLowerLimit: false,
    notAsKept: null,
    refused: false,
    deserves: true,
  };
}

function planAnswer({ name, value }: Named<KeptFile>): FirstRidePlan {
  const full = fullCeilings(value.profile, value.rig.board);
  return { name, kept: value, full, free: partOf(full, 0.1), stages: [], changes: [] };
}

/** The state with the answer that its view needs, where it needs one. */
export function withPreview(state: BenchState, parts: Partial<SheetView> = {}): BenchState {
  const wish = previewWish(state);
  if (wish === null) return state;
  return previewed(state, wish, {
    answer:
      wish.kind === 'plan'
        ? { kind: 'plan', plan: planAnswer(wish.kept) }
        : { kind: 'sheet', view: { ...sheetAnswer(wish.kept, wish.sheet), ...parts } },
  });
}
