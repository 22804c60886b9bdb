/**
 * What keys do in a list to choose from: board, riders, pack states, scenarios; for a sweep a profile and numbers of it; for the
 * shortlist a controller sheet.
 */
import { chosen } from './choices.js';
import { fieldsOf } from './gains-acts.js';
import { fieldOf, formView, PLAIN, type FormView } from './sweep-form.js';
import { withSheet } from './shortlist-acts.js';
import { withSweptFrom, withSweptNumbers } from './sweep-form-acts.js';
import type { Act } from './binding.js';
import type { BenchState, Chooser, Setup } from './state.js';
import { appended, shortened } from './typed-text.js';
import { chargesTyped } from './typed-charges.js';

/** Shown for the charge that each scenario states itself. */
export const OWN_CHARGE = 'as each scenario says';

const CHARGES_PERCENT = [100, 80, 60, 40, 20, 10] as const;

/** A charge [%] as an item of the list. */
export function chargeItem(charge: number | null): string {
  return charge === null ? OWN_CHARGE : `${charge} %`;
}

function chargeOf(item: string): number | null {
  return item === OWN_CHARGE ? null : Number.parseFloat(item);
}

/** Why nothing can be marked in the list that stands open; null where it can. */
export function markingOff({ overlay }: BenchState): string | null {
  if (overlay?.kind !== 'chooser' || choosesMany(overlay.chooser)) return null;
  return `one ${ONE_OF[overlay.chooser.kind] ?? 'item'} at a time; take the one under the cursor`;
}

/** What one is chosen of, where it is one alone. */
const ONE_OF: Partial<Record<Chooser['kind'], string>> = { board: 'board', from: 'profile', sheet: 'sheet' };

/** True where several items may be chosen. */
export function choosesMany({ kind }: Pick<Chooser, 'kind'>): boolean {
  return ONE_OF[kind] === undefined;
}

const names = (files: readonly { name: string }[]) => files.map(({ name }) => name);

function itemsOf(state: BenchState, kind: Chooser['kind']): string[] {
  const { shelf, choices } = state;
  if (kind === 'from') return [PLAIN, ...names(shelf.profile)];
  if (kind === 'numbers') return numbersOf(formView(state)).map(({ key }) => key);
  if (kind === 'sheet') return names(shelf.sheet);
  if (kind === 'board') return names(shelf.board);
  if (kind === 'rider') return names(shelf.rider);
  if (kind === 'scenarios') return names(shelf.scenario);
  const usual: (number | null)[] = [null, ...CHARGES_PERCENT];
  return [...new Set([...usual, ...choices.setup.charges])].map(chargeItem);
}

const numbersOf = (form: FormView | null) => (form === null ? [] : fieldsOf(form.base.value));

/** The items that the setup has; all of the list where it has whatever there is. */
function chosenIn(state: BenchState, kind: Chooser['kind'], items: readonly string[]): readonly string[] {
  const { setup } = state.choices;
  const form = formView(state);
  if (kind === 'from') return form === null ? [] : [form.isPlain ? PLAIN : form.base.name];
  if (kind === 'numbers') return form?.ranges.map((range) => fieldOf(range).key) ?? [];
  if (kind === 'sheet') return [state.shortlist.sheet ?? ''];
  if (kind === 'board') return [setup.board];
  if (kind === 'pack') return setup.charges.map(chargeItem);
  return (kind === 'rider' ? setup.riders : setup.scenarios) ?? items;
}

/** Opens a list with the cursor on the first item that is chosen now. */
export function openChooser(kind: Chooser['kind']): Act {
  return (state) => {
    const items = itemsOf(state, kind);
    const now = chosenIn(state, kind, items);
    const cursor = Math.max(
      0,
      items.findIndex((item) => now.includes(item)),
    );
    return {
      ...state,
      overlay: { kind: 'chooser', chooser: { kind, items, typed: '', cursor, chosen: now, isMarked: false } },
    };
  };
}

/** The charges that were typed in full, as items. */
function typedItems({ kind, typed }: Chooser): string[] {
  return kind === 'pack' ? chargesTyped(typed).map(chargeItem) : [];
}

/** The items that hold what was typed; charges that were typed in full come first, in the list or not. */
export function itemsInSight(chooser: Chooser): string[] {
  const typed = chooser.typed.toLowerCase();
  const found = chooser.items.filter((item) => item.toLowerCase().includes(typed));
  return [...new Set([...typedItems(chooser), ...found])];
}

/** The items that are marked: what was chosen, and every one of several charges that were typed. */
export function markedItems(chooser: Chooser): readonly string[] {
  const typed = typedItems(chooser);
  if (typed.length < 2) return chooser.chosen;
  return chooser.isMarked ? [...chooser.chosen, ...typed] : typed;
}

/** The state with an open list that shows the files as they are now, its cursor on the same item if that is there. */
export function withFreshItems(state: BenchState): BenchState {
  if (state.overlay?.kind !== 'chooser') return state;
  const { chooser } = state.overlay;
  const here = itemsInSight(chooser)[chooser.cursor] ?? '';
  const items = itemsOf(state, chooser.kind);
  const isAll = choosesMany(chooser) && chooser.items.every((item) => chooser.chosen.includes(item));
  const next = { ...chooser, items, chosen: isAll ? items : chooser.chosen };
  const cursor = Math.max(0, itemsInSight(next).indexOf(here));
  return { ...state, overlay: { kind: 'chooser', chooser: { ...next, cursor } } };
}

function withChooser(change: (chooser: Chooser) => Partial<Chooser>): Act {
  return (state) => {
    if (state.overlay?.kind !== 'chooser') return state;
    const { chooser } = state.overlay;
    return { ...state, overlay: { kind: 'chooser', chooser: { ...chooser, ...change(chooser) } } };
  };
}

/** Moves the cursor; it stops at the ends. */
export function moveItem(by: number): Act {
  return withChooser((chooser) => ({
    cursor: Math.max(0, Math.min(itemsInSight(chooser).length - 1, chooser.cursor + by)),
  }));
}

/** Chooses the item under the cursor too, or lets it go. */
const toggleItem: Act = withChooser((chooser) => {
  const item = itemsInSight(chooser)[chooser.cursor];
  if (item === undefined) return {};
  const without = chooser.chosen.filter((other) => other !== item);
  return { chosen: without.length < chooser.chosen.length ? without : [...without, item], isMarked: true };
});

/** Marks the item under the cursor; behind a charge that is typed a blank begins another. */
export const markOrDivide: Act = (state) => {
  const chooser = state.overlay?.kind === 'chooser' ? state.overlay.chooser : null;
  const isTyping = chooser !== null && chooser.kind === 'pack' && chooser.typed !== '';
  return isTyping ? typeInList(' ')(state) : toggleItem(state);
};

/** Chooses every item in sight, or lets them go where all are chosen. */
export const toggleAll: Act = withChooser((chooser) => {
  const inSight = itemsInSight(chooser);
  const isAll = inSight.every((item) => chooser.chosen.includes(item));
  const others = chooser.chosen.filter((item) => !inSight.includes(item));
  return { chosen: isAll ? others : [...others, ...inSight], isMarked: true };
});

/** Narrows the list by what is typed. */
export function typeInList(text: string): Act {
  return withChooser(({ typed }) => ({ typed: appended(typed, text), cursor: 0 }));
}

/** Takes back the letter typed last. */
export const untypeInList: Act = withChooser(({ typed }) => ({ typed: shortened(typed), cursor: 0 }));

/**
 * The items that are taken: those marked, where something was marked here or several were typed, else the one under the
 * cursor.
 */
function itemsTaken(chooser: Chooser): string[] {
  const { kind, items } = chooser;
  const marks = markedItems(chooser);
  // Charges may be marked that were typed and are not in the list.
  const known = kind === 'pack' ? [...new Set([...items, ...marks])] : items;
  const marked = known.filter((item) => marks.includes(item));
  return (chooser.isMarked || typedItems(chooser).length > 1) && marked.length > 0
    ? marked
    : itemsInSight(chooser).slice(chooser.cursor, chooser.cursor + 1);
}

/** Takes the list's choice over. */
export const acceptChoice: Act = (state) => {
  if (state.overlay?.kind !== 'chooser') return state;
  const { chooser } = state.overlay;
  const items = itemsTaken(chooser);
  const closed = { ...state, overlay: null };
  if (items.length === 0) return closed;
  if (chooser.kind === 'sheet') return withSheet(closed, items[0]!);
  if (chooser.kind === 'from') return withSweptFrom(closed, items[0]!);
  if (chooser.kind === 'numbers') return withSweptNumbers(closed, items);
  const { setup } = state.choices;
  const changed = setupWith(setup, chooser, items);
  return JSON.stringify(changed) === JSON.stringify(setup)
    ? closed
    : chosen(closed, { ...state.choices, setup: changed });
};

/** The setup with other items; every scenario, and every one of several riders, stands for those to come too. */
function setupWith(setup: Setup, { kind, items: all }: Chooser, items: readonly string[]): Setup {
  const isAll = items.length === all.length;
  if (kind === 'board') return { ...setup, board: items[0]! };
  if (kind === 'rider') return { ...setup, riders: isAll && all.length > 1 ? null : items };
  if (kind === 'scenarios') return { ...setup, scenarios: isAll ? null : items };
  return { ...setup, charges: items.map(chargeOf) };
}
