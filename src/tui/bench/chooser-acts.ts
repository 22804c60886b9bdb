/**
 * What keys do in a list to choose from: board, riders, pack states, scenarios.
 */
import { chosen } from './choices.js';
import type { Act } from './binding.js';
import type { BenchState, Chooser, Setup } from './state.js';

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

/** The items that hold what was typed. */
export function itemsInSight({ items, typed }: Chooser): string[] {
  return items.filter((item) => item.toLowerCase().includes(typed.toLowerCase()));
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
    cursor: Math.min(itemsInSight(chooser).length - 1, Math.max(0, chooser.cursor + by)),
  }));
}

/** Chooses the item under the cursor too, or lets it go. */
export const toggleItem: Act = withChooser((chooser) => {
  const item = itemsInSight(chooser)[chooser.cursor];
  if (item === undefined || !choosesMany(chooser)) return {};
  const without = chooser.chosen.filter((other) => other !== item);
  return { chosen: without.length < chooser.chosen.length ? without : [...without, item], isMarked: true };
});

/** Chooses every item in sight, or lets all go where all are chosen. */
export const toggleAll: Act = withChooser((chooser) => {
  const inSight = itemsInSight(chooser);
  const all = inSight.every((item) => chooser.chosen.includes(item));
  return { chosen: all ? [] : [...new Set([...chooser.chosen, ...inSight])], isMarked: true };
});

/** Narrows the list by what is typed. */
export function typeInList(text: string): Act {
  return withChooser(({ typed }) => ({ typed: typed + text, cursor: 0 }));
}

/** Takes back the letter typed last. */
export const untypeInList: Act = withChooser(({ typed }) => ({ typed: typed.slice(0, -1), cursor: 0 }));

/** The items that are taken: those marked, where something was marked here, else the one under the cursor. */
function itemsTaken(chooser: Chooser): string[] {
  const marked = chooser.items.filter((item) => chooser.chosen.includes(item));
  if (chooser.isMarked && marked.length > 0) return marked;
  const here = itemsInSight(chooser)[chooser.cursor];
  const typed = chooser.kind === 'pack' && here === undefined ? chargeTyped(chooser.typed) : null;
  return [typed ?? here].filter((item) => item !== undefined);
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

/** A charge that is not in the list, typed as a number from 1 to 100. */
function chargeTyped(text: string): string | null {
  const charge = Number(text.replace('%', ''));
  return text.trim() !== '' && charge >= 1 && charge <= 100 ? chargeItem(charge) : null;
}

function setupWith(setup: Setup, kind: Chooser['kind'], items: readonly string[]): Setup {
  if (kind === 'board') return { ...setup, board: items[0]! };
  if (kind === 'rider') return { ...setup, riders: items };
  return kind === 'scenarios' ? { ...setup, scenarios: items } : { ...setup, charges: items.map(chargeOf) };
}
