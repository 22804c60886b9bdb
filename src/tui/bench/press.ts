/**
 * From a key or a paste to the next state, by the keymap.
 */
import type { Act, Binding } from './binding.js';
import { KEYMAP, type Place } from './keymap.js';
import { isTooSmall } from './least-size.js';
import { interrupt, leave, suspend } from './leave-acts.js';
import type { BenchState } from './state.js';

/** A key as the terminal layer names it, and the text it would type. */
export interface PressedKey {
  name: string;
  text: string;
}

/** The place whose keys are asked first. */
export function placeOf(state: BenchState): Place {
  const { entry, overlay } = state;
  if (entry !== null) return 'line';
  if (overlay === null) return placeOfScreen(state);
  return overlay.kind === 'chooser' ? 'list' : overlay.kind;
}

function placeOfScreen({ screen, why, sweep }: BenchState): Place {
  if (screen === 'why') return why !== null && why.read !== null ? 'whyText' : 'why';
  if (screen !== 'sweep') return screen;
  if (sweep.view === 'ranges') return 'sweepForm';
  return sweep.read === null ? 'sweep' : 'sweepText';
}

/** True where typed text goes into a line or a search, so that only keys that type nothing mean something else. */
export function isTyping(place: Place): boolean {
  return place === 'line' || place === 'list' || place === 'help';
}

/** What a key does now; undefined where it does nothing. */
export function bindingOf(state: BenchState, { name, text }: PressedKey): Binding | undefined {
  const place = placeOf(state);
  const find = (where: Place) => KEYMAP[where].bindings.find(({ keys }) => keys.includes(name));
  const own = isTyping(place) && place === 'line' && text !== '' ? undefined : find(place);
  return own ?? (isTyping(place) && text !== '' ? undefined : find('anywhere'));
}

/** All that keys do while nothing is drawn. */
const UNSEEN: ReadonlyMap<string, Act> = new Map([
  ['q', leave],
  ['ctrl+c', interrupt],
  ['ctrl+z', suspend],
]);

/** The state after a key. */
export function press(state: BenchState, key: PressedKey): BenchState {
  const fresh = { ...state, notice: null };
  if (isTooSmall(state)) return settled(state, UNSEEN.get(key.name)?.(fresh) ?? state);
  const binding = bindingOf(fresh, key);
  if (binding === undefined) return settled(state, typed(fresh, key.text));
  const reason = binding.off?.(fresh) ?? null;
  if (reason !== null)
    return settled(state, { ...fresh, notice: { text: `${binding.label}: ${reason}`, isFault: false } });
  return settled(state, binding.act(fresh));
}

/** The state after a paste: text where text is taken, nothing elsewhere. */
export function paste(state: BenchState, text: string): BenchState {
  if (isTooSmall(state) || !isTyping(placeOf(state))) return state;
  return settled(state, typed({ ...state, notice: null }, text));
}

function typed(state: BenchState, text: string): BenchState {
  const { typing } = KEYMAP[placeOf(state)];
  return text === '' || typing === undefined ? state : typing(text)(state);
}

/** The wish to leave holds for one key, and the one to take something off the shortlist. */
function settled(before: BenchState, after: BenchState): BenchState {
  const next = before.leaving && after.leaving ? { ...after, leaving: false } : after;
  const { removing } = before.shortlist;
  return removing !== null && next.shortlist.removing === removing
    ? { ...next, shortlist: { ...next.shortlist, removing: null } }
    : next;
}
