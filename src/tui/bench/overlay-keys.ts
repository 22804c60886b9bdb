/**
 * The keys of what opens over a screen: numbers of a profile, lists, a line to type in, help, problems.
 */
import { PAGE, type Binding, type PlaceKeys } from './binding.js';
import {
  acceptChoice,
  markingOff,
  markOrDivide,
  moveItem,
  toggleAll,
  typeInList,
  untypeInList,
} from './chooser-acts.js';
import { acceptEntry, cancelEntry, clearText, openEntry, typeText, untype } from './entry-acts.js';
import { asInFile, gainsView, leaveOut, moveField, nudge } from './gains-acts.js';
import { moveHelp, searchHelp, unsearchHelp } from './help-acts.js';
import { closeOverlay } from './leave-acts.js';
import { saving, undoing } from './rank-keys.js';

/** The keys of the numbers of a profile. */
export const GAINS_KEYS: PlaceKeys = {
  title: 'Numbers of a profile',
  bindings: [
    {
      keys: ['right', 'l'],
      label: 'more',
      says: 'about a twentieth more',
      act: nudge(1, { finely: false }),
      inFooter: true,
    },
    {
      keys: ['left', 'h'],
      label: 'less',
      says: 'about a twentieth less',
      act: nudge(-1, { finely: false }),
      inFooter: true,
    },
    {
      keys: ['shift+right', '}'],
      label: 'a little more',
      says: 'about a hundredth more',
      act: nudge(1, { finely: true }),
    },
    {
      keys: ['shift+left', '{'],
      label: 'a little less',
      says: 'about a hundredth less',
      act: nudge(-1, { finely: true }),
    },
    { keys: ['down', 'j'], label: 'down', says: 'next number', act: moveField(1) },
    { keys: ['up', 'k'], label: 'up', says: 'number before', act: moveField(-1) },
    {
      keys: ['return'],
      label: 'type it',
      says: 'type the number; a digit begins at once',
      act: openEntry('number'),
      inFooter: true,
    },
    {
      keys: ['f'],
      label: 'as in file',
      says: 'the number as it is in the file',
      act: asInFile,
      inFooter: true,
    },
    {
      keys: ['o'],
      label: 'leave out',
      says: 'leave the number out, where the file may',
      act: leaveOut,
      off: (state) => (gainsView(state)?.field.optional ? null : 'this number cannot be left out'),
    },
    ...undoing.map((binding): Binding => ({ ...binding, inFooter: true })),
    { ...saving, inFooter: true },
    {
      keys: ['escape', 'e', 'q'],
      label: 'done',
      says: 'close; the changes stay until you leave',
      act: closeOverlay,
      inFooter: true,
    },
  ],
  typing: (text) => (/^[\d.,-]/.test(text) ? openEntry('number', { typed: text }) : (state) => state),
};

/** The keys of a list to choose from. */
export const LIST_KEYS: PlaceKeys = {
  title: 'Lists',
  bindings: [
    { keys: ['down'], label: 'down', says: 'next item', act: moveItem(1) },
    { keys: ['up'], label: 'up', says: 'item before', act: moveItem(-1) },
    { keys: ['pagedown'], label: 'page down', says: 'ten items on', act: moveItem(PAGE) },
    { keys: ['pageup'], label: 'page up', says: 'ten items back', act: moveItem(-PAGE) },
    {
      keys: ['return'],
      label: 'take',
      says: 'take what you marked, or else the item under the cursor',
      act: acceptChoice,
      inFooter: true,
    },
    {
      keys: ['space'],
      label: 'mark',
      says: 'mark the item; behind a typed charge: begin another',
      act: markOrDivide,
      off: markingOff,
      inFooter: true,
    },
    {
      keys: ['tab'],
      label: 'all',
      says: 'mark all in sight, or none of them',
      act: toggleAll,
      off: markingOff,
      inFooter: true,
    },
    {
      keys: ['backspace'],
      label: 'untype',
      says: 'take back a letter; letters narrow the list',
      act: untypeInList,
    },
    {
      keys: ['escape'],
      label: 'as it was',
      says: 'close, nothing changed',
      act: closeOverlay,
      inFooter: true,
    },
  ],
  typing: typeInList,
};

/** The keys of a line to type in. */
export const LINE_KEYS: PlaceKeys = {
  title: 'Typing',
  bindings: [
    { keys: ['return'], label: 'take', says: 'take the text', act: acceptEntry, inFooter: true },
    { keys: ['escape'], label: 'close', says: 'close the line', act: cancelEntry, inFooter: true },
    { keys: ['ctrl+u'], label: 'clear', says: 'take back all of the text', act: clearText, inFooter: true },
    {
      keys: ['backspace', 'delete'],
      label: 'untype',
      says: 'take back a character; a letter replaces an offered text',
      act: untype,
    },
  ],
  typing: typeText,
};

/** The keys of the help. */
export const HELP_KEYS: PlaceKeys = {
  title: 'Help',
  bindings: [
    { keys: ['down'], label: 'down', says: 'scroll down', act: moveHelp(1), inFooter: true },
    { keys: ['up'], label: 'up', says: 'scroll up', act: moveHelp(-1) },
    { keys: ['pagedown'], label: 'page down', says: 'a page down', act: moveHelp(PAGE) },
    { keys: ['pageup'], label: 'page up', says: 'a page up', act: moveHelp(-PAGE) },
    {
      keys: ['backspace'],
      label: 'untype',
      says: 'take back a letter of the search; letters search',
      act: unsearchHelp,
    },
    { keys: ['escape'], label: 'back', says: 'close the help', act: closeOverlay, inFooter: true },
  ],
  typing: searchHelp,
};

/** The keys of the list of problems. */
export const PROBLEMS_KEYS: PlaceKeys = {
  title: 'Problems',
  bindings: [
    { keys: ['down', 'j'], label: 'down', says: 'scroll down', act: moveHelp(1), inFooter: true },
    { keys: ['up', 'k'], label: 'up', says: 'scroll up', act: moveHelp(-1) },
    { keys: ['pagedown'], label: 'page down', says: 'a page down', act: moveHelp(PAGE) },
    { keys: ['pageup'], label: 'page up', says: 'a page up', act: moveHelp(-PAGE) },
    {
      keys: ['escape', 'q', '!'],
      label: 'back',
      says: 'close the list',
      act: closeOverlay,
      inFooter: true,
    },
  ],
};
