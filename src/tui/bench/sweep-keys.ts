/**
 * The keys of the Sweep screen: of its form, and of what is found.
 */
import type { Binding, PlaceKeys } from './binding.js';
import { openChooser } from './chooser-acts.js';
import { openEntry } from './entry-acts.js';
import { goBack } from './rank-acts.js';
import { keeping, shortlisting } from './shortlist-keys.js';
import {
  metricOff,
  moveLeader,
  moveTo,
  nextMetric,
  nextPair,
  nextView,
  nextViewOff,
  pairOff,
  stoppingOff,
  stopOrGoOn,
  takeToRank,
  takeToTrace,
  takeToWhy,
  takingOff,
  worstOff,
} from './sweep-acts.js';
import {
  beginningOff,
  beginSweep,
  dropRange,
  droppingOff,
  moveFormRow,
  moveToEnd,
  nudgeNumber,
  typingOff,
  usualAgain,
} from './sweep-form-acts.js';
import { formView } from './sweep-form.js';
import { closeWords, openWords, scrollWords, turnWords } from './sweep-text.js';

const back: Binding = {
  keys: ['escape', 'q'],
  label: 'back',
  says: 'back to the screen before; the sweep goes on',
  act: goBack,
  inFooter: true,
};

const stopping: Binding = {
  keys: ['space'],
  label: 'stop or go on',
  says: 'stop the sweep, or let it go on with what is known',
  act: stopOrGoOn,
  off: stoppingOff,
  inFooter: true,
};

const view: Binding = {
  keys: ['tab', 'v'],
  label: 'view',
  says: 'the next view: finalists, map, front, ranges',
  act: nextView,
  off: nextViewOff,
  inFooter: true,
};

const formOff = (state: Parameters<typeof formView>[0]) =>
  formView(state) === null ? 'a board, riders, scenarios and a profile are needed first' : null;

/** The keys of the form. */
export const SWEEP_FORM_KEYS: PlaceKeys = {
  title: 'Sweep, ranges',
  bindings: [
    {
      keys: ['return'],
      label: 'begin',
      says: 'begin the sweep, in place of the one before',
      act: beginSweep,
      off: beginningOff,
      inFooter: true,
    },
    { keys: ['down', 'j'], label: 'down', says: 'next number', act: moveFormRow(1) },
    { keys: ['up', 'k'], label: 'up', says: 'number before', act: moveFormRow(-1) },
    {
      keys: ['left', 'h'],
      label: 'least',
      says: 'to the least end of the range; the first of two',
      act: moveToEnd('min'),
    },
    {
      keys: ['right', 'l'],
      label: 'greatest',
      says: 'to the greatest end; the second of two',
      act: moveToEnd('max'),
    },
    {
      keys: ['t'],
      label: 'type it',
      says: 'type the number; a digit begins at once',
      act: openEntry('range'),
      off: typingOff,
      inFooter: true,
    },
    { keys: ['+', '='], label: 'more', says: 'about a twentieth more', act: nudgeNumber(1) },
    { keys: ['_'], label: 'less', says: 'about a twentieth less', act: nudgeNumber(-1) },
    {
      keys: ['a'],
      label: 'numbers',
      says: 'choose which numbers of the profile are swept',
      act: openChooser('numbers'),
      off: formOff,
      inFooter: true,
    },
    {
      keys: ['d', 'delete'],
      label: 'take out',
      says: 'take the number under the cursor out',
      act: dropRange,
      off: droppingOff,
      inFooter: true,
    },
    {
      keys: ['f'],
      label: 'all else from',
      says: 'choose the profile that candidates share all else with',
      act: openChooser('from'),
      off: formOff,
      inFooter: true,
    },
    {
      keys: ['o'],
      label: 'usual',
      says: 'ranges that suit board and riders, and a spread that races',
      act: usualAgain,
    },
    { ...stopping, inFooter: true },
    view,
    shortlisting,
    back,
  ],
  typing: (text) => (state) =>
    /^[\d.,-]/.test(text) && typingOff(state) === null ? openEntry('range', { typed: text })(state) : state,
};

const looking: Binding = {
  keys: ['return'],
  label: 'look',
  says: 'look at the worst run of the candidate',
  act: takeToTrace,
  off: worstOff,
  inFooter: true,
};

/** What else is done with the candidate under the cursor. */
const taking: readonly Binding[] = [
  {
    keys: ['r'],
    label: 'rank it',
    says: 'rank the candidate as a profile with changed numbers',
    act: takeToRank,
    off: takingOff,
    inFooter: true,
  },
  {
    keys: ['y'],
    label: 'why',
    says: 'why the candidate rides as it does, and what would help',
    act: takeToWhy,
    off: takingOff,
    inFooter: true,
  },
  keeping,
  shortlisting,
];

/** What else map and front show. */
const plotted: readonly Binding[] = [
  {
    keys: ['m'],
    label: 'metric',
    says: 'map the next metric',
    act: nextMetric,
    off: metricOff,
    inFooter: true,
  },
  {
    keys: ['x'],
    label: 'other axes',
    says: 'the next two numbers on the map, or costs on the front',
    act: nextPair,
    off: pairOff,
    inFooter: true,
  },
];

/** The keys of what is found. */
export const SWEEP_KEYS: PlaceKeys = {
  title: 'Sweep',
  bindings: [
    // A sweep under way is stopped more often than its candidates are taken over: where the footer is short, it names that.
    looking,
    stopping,
    view,
    ...taking,
    { keys: ['t'], label: 'in words', says: 'say the view in words', act: openWords, inFooter: true },
    ...plotted,
    { keys: ['down'], label: 'down', says: 'next candidate; on a plot the one below', act: moveTo('down') },
    { keys: ['up'], label: 'up', says: 'candidate before; on a plot the one above', act: moveTo('up') },
    { keys: ['left', 'h'], label: 'left', says: 'on a plot the candidate to the left', act: moveTo('left') },
    {
      keys: ['right', 'l'],
      label: 'right',
      says: 'on a plot the candidate to the right',
      act: moveTo('right'),
    },
    { keys: ['j'], label: 'next', says: 'next finalist', act: moveLeader(1) },
    { keys: ['k'], label: 'before', says: 'finalist before', act: moveLeader(-1) },
    { keys: ['home'], label: 'first', says: 'first finalist', act: moveLeader(-Infinity) },
    { keys: ['end'], label: 'last', says: 'last finalist', act: moveLeader(Infinity) },
    back,
  ],
};

/** The keys of what is found while it is said in words. */
export const SWEEP_TEXT_KEYS: PlaceKeys = {
  title: 'Sweep in words',
  bindings: [
    { keys: ['down', 'j'], label: 'line down', says: 'a line down', act: scrollWords(1), inFooter: true },
    { keys: ['up', 'k'], label: 'line up', says: 'a line up', act: scrollWords(-1) },
    { keys: ['pagedown'], label: 'page down', says: 'a page down', act: turnWords(1), inFooter: true },
    { keys: ['pageup'], label: 'page up', says: 'a page up', act: turnWords(-1) },
    { keys: ['home'], label: 'start', says: 'to the first line', act: scrollWords(-Infinity) },
    { keys: ['end'], label: 'end', says: 'to the last line', act: scrollWords(Infinity) },
    { keys: ['right', 'l'], label: 'next', says: 'next finalist', act: moveLeader(1), inFooter: true },
    { keys: ['left', 'h'], label: 'before', says: 'finalist before', act: moveLeader(-1) },
    view,
    ...plotted,
    looking,
    ...taking,
    stopping,
    {
      keys: ['escape', 't', 'q'],
      label: 'pictures',
      says: 'back to tables and plots',
      act: closeWords,
      inFooter: true,
    },
  ],
};
