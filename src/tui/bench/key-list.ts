/**
 * Every key with what it does: for the help, searchable, and for the table in the README.
 */
import { KEYMAP, type Place } from './keymap.js';
import { beneathHelp } from './help-acts.js';
import { keyText } from './key-words.js';
import { placeOf } from './press.js';
import type { BenchState } from './state.js';

/** One place with its keys; `off` says why a key of the place in front does nothing now, or null. */
export interface KeyGroup {
  title: string;
  keys: { key: string; says: string; off: string | null }[];
}

const PLACES = Object.keys(KEYMAP) as Place[];

/** The keys of every place whose name, label or words hold what is searched for; the place in front comes first. */
export function keyList(state: BenchState, search = ''): KeyGroup[] {
  const wanted = search.toLowerCase();
  const beneath = beneathHelp(state);
  const front = placeOf(beneath);
  const inFront = (place: Place) => place === front || place === 'anywhere';
  const order = [...PLACES.filter(inFront), ...PLACES.filter((place) => !inFront(place))];
  return order
    .map((place): KeyGroup => {
      const { title, bindings } = KEYMAP[place];
      const keys = bindings.map((binding) => ({
        key: binding.keys.map((key) => keyText(key, state.options.symbols)).join(' or '),
        names: binding.keys.flatMap((key) => [key, keyText(key, null)]).join(' '),
        label: `${binding.label} ${title}`,
        says: binding.says,
        off: inFront(place) ? (binding.off?.(beneath) ?? null) : null,
      }));
      const found = keys.filter(({ key, names, label, says }) =>
        [key, names, label, says].some((text) => text.toLowerCase().includes(wanted)),
      );
      return { title, keys: found.map(({ key, says, off }) => ({ key, says, off })) };
    })
    .filter(({ keys }) => keys.length > 0);
}

/** All keys as a table in Markdown, for the README. */
export function keyTable(): string {
  const rows = PLACES.flatMap((place) =>
    KEYMAP[place].bindings.map(({ keys, says }) => {
      const written = keys.map((key) => `\`${keyText(key, null)}\``).join(', ');
      return `| ${KEYMAP[place].title} | ${written} | ${says} |`;
    }),
  );
  return ['| where | key | what it does |', '| --- | --- | --- |', ...rows].join('\n');
}
