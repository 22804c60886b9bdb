/**
 * The keys of the Sweep screen: of its form, and of what is found.
 */
import type { Binding, PlaceKeys } from './binding.js';
import { openChooser } from './chooser-acts.js';
import { openEntry } from './entry-acts.js';
import { goBack } from './rank-acts.js';
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
  usualAgain,
} from './sweep-form-acts.js';
import { formView } from './sweep-form.js';

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
    { keys: ['left', 'h'], label: 'least', says: 'to the least end of the range', act: moveToEnd('min') },
    { keys: ['right', 'l'], label: 'greatest', says: 'to the greatest end', act: moveToEnd('max') },
    {
      keys: ['t'],
      label: 'type it',
      says: 'type the number; a digit begins at once',
      act: openEntry('range'),
      off: formOff,
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
    { keys: ['o'], label: 'usual', says: 'the ranges that suit board and riders', act: usualAgain },
    { ...stopping, inFooter: true },
    view,
    back,
  ],
  typing: (text) => (/^[\d.,-]/.test(text) ? openEntry('range', { typed: text }) : (state) => state),
};

/** The keys of what is found. */
export const SWEEP_KEYS: PlaceKeys = {
  title: 'Sweep',
  bindings: [
    {
      keys: ['return'],
      label: 'look',
      says: 'look at the worst run of the candidate',
      act: takeToTrace,
      off: worstOff,
      inFooter: true,
    },
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
    stopping,
    view,
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
