/**
 * What keys do in a list to choose from: board, riders, pack states, scenarios.
 */
import { chosen } from './choices.js';
import type { Act } from './binding.js';
import type { BenchState, Chooser, Setup } from './state.js';
import { appended, shortened } from './typed-text.js';

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
  const isOne = overlay?.kind === 'chooser' && !choosesMany(overlay.chooser);
  return isOne ? 'one board at a time; take the one under the cursor' : null;
}

/** True where several items may be chosen. */
export function choosesMany({ kind }: Pick<Chooser, 'kind'>): boolean {
  return kind !== 'board';
}

const names = (files: readonly { name: string }[]) => files.map(({ name }) => name);

function itemsOf({ shelf, choices }: BenchState, kind: Chooser['kind']): string[] {
  if (kind === 'board') return names(shelf.board);
  if (kind === 'rider') return names(shelf.rider);
  if (kind === 'scenarios') return names(shelf.scenario);
  const usual: (number | null)[] = [null, ...CHARGES_PERCENT];
  return [...new Set([...usual, ...choices.setup.charges])].map(chargeItem);
}

function chosenIn(setup: Setup, kind: Chooser['kind']): readonly string[] {
  if (kind === 'board') return [setup.board];
  if (kind === 'rider') return setup.riders;
  return kind === 'scenarios' ? setup.scenarios : setup.charges.map(chargeItem);
}

/** Opens a list with the cursor on the first item that is chosen now. */
export function openChooser(kind: Chooser['kind']): Act {
  return (state) => {
    const items = itemsOf(state, kind);
    const now = chosenIn(state.choices.setup, kind);
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

/** A charge typed in full, from 1 to 100, as an item; null for other text. */
function chargeTyped(text: string): string | null {
  const digits = /^(\d+(?:[.,]\d+)?) ?%?$/.exec(text.trim())?.[1] ?? '';
  const charge = Number(digits.replace(',', '.'));
  return charge >= 1 && charge <= 100 ? chargeItem(charge) : null;
}

/** The items that hold what was typed; a charge that was typed in full comes first, in the list or not. */
export function itemsInSight({ kind, items, typed }: Chooser): string[] {
  const found = items.filter((item) => item.toLowerCase().includes(typed.toLowerCase()));
  const charge = kind === 'pack' ? chargeTyped(typed) : null;
  return charge === null ? found : [charge, ...found.filter((item) => item !== charge)];
}

/** The state with an open list that shows the files as they are now, its cursor on the same item if that is there. */
export function withFreshItems(state: BenchState): BenchState {
  if (state.overlay?.kind !== 'chooser') return state;
  const { chooser } = state.overlay;
  const here = itemsInSight(chooser)[chooser.cursor] ?? '';
  const next = { ...chooser, items: itemsOf(state, chooser.kind) };
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
export const toggleItem: Act = withChooser((chooser) => {
  const item = itemsInSight(chooser)[chooser.cursor];
  if (item === undefined) return {};
  const without = chooser.chosen.filter((other) => other !== item);
  return { chosen: without.length < chooser.chosen.length ? without : [...without, item], isMarked: true };
});

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

/** The items that are taken: those marked, where something was marked here, else the one under the cursor. */
function itemsTaken(chooser: Chooser): string[] {
  const { kind, items, chosen: marks } = chooser;
  // Charges may be marked that were typed and are not in the list.
  const known = kind === 'pack' ? [...new Set([...items, ...marks])] : items;
  const marked = known.filter((item) => marks.includes(item));
  return chooser.isMarked && marked.length > 0
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
  const { setup } = state.choices;
  const changed = setupWith(setup, chooser.kind, items);
  return JSON.stringify(changed) === JSON.stringify(setup)
    ? closed
    : chosen(closed, { ...state.choices, setup: changed });
};

function setupWith(setup: Setup, kind: Chooser['kind'], items: readonly string[]): Setup {
  if (kind === 'board') return { ...setup, board: items[0]! };
  if (kind === 'rider') return { ...setup, riders: items };
  return kind === 'scenarios' ? { ...setup, scenarios: items } : { ...setup, charges: items.map(chargeOf) };
}
