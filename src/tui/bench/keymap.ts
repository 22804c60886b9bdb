/**
 * Which key does what, and where? The one map that the bench obeys, and from which the footer, the help and the table in
 * the README are made. Keys that cannot do their work now say why.
 */
import type { PlaceKeys } from './binding.js';
import { openHelp } from './help-acts.js';
import { interrupt, suspend } from './leave-acts.js';
import { GAINS_KEYS, HELP_KEYS, LINE_KEYS, LIST_KEYS, PROBLEMS_KEYS } from './overlay-keys.js';
import { RANK_KEYS } from './rank-keys.js';
import { SHORTLIST_KEYS } from './shortlist-keys.js';
import { SWEEP_FORM_KEYS, SWEEP_KEYS, SWEEP_TEXT_KEYS } from './sweep-keys.js';
import { COMPARE_KEYS, TRACE_KEYS } from './time-keys.js';
import { WHY_KEYS, WHY_TEXT_KEYS } from './why-keys.js';

/** Places where keys have a meaning of their own. */
export type Place =
  | 'rank'
  | 'trace'
  | 'compare'
  | 'why'
  | 'whyText'
  | 'sweepForm'
  | 'sweep'
  | 'sweepText'
  | 'shortlist'
  | 'gains'
  | 'list'
  | 'line'
  | 'help'
  | 'problems'
  | 'anywhere';

const ANYWHERE_KEYS: PlaceKeys = {
  title: 'Anywhere',
  bindings: [
    {
      keys: ['?', 'f1'],
      label: 'all keys',
      says: 'show all keys, searchable',
      act: openHelp,
      inFooter: true,
    },
    { keys: ['ctrl+c'], label: 'stop', says: 'leave at once, from anywhere', act: interrupt },
    { keys: ['ctrl+z'], label: 'suspend', says: 'back to the shell for a while; fg returns', act: suspend },
  ],
};

/** Every key of the bench. */
export const KEYMAP: Readonly<Record<Place, PlaceKeys>> = {
  rank: RANK_KEYS,
  trace: TRACE_KEYS,
  compare: COMPARE_KEYS,
  why: WHY_KEYS,
  whyText: WHY_TEXT_KEYS,
  sweepForm: SWEEP_FORM_KEYS,
  sweep: SWEEP_KEYS,
  sweepText: SWEEP_TEXT_KEYS,
  shortlist: SHORTLIST_KEYS,
  gains: GAINS_KEYS,
  list: LIST_KEYS,
  line: LINE_KEYS,
  help: HELP_KEYS,
  problems: PROBLEMS_KEYS,
  anywhere: ANYWHERE_KEYS,
};
