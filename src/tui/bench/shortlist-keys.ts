/**
 * The keys of the Shortlist screen, and those with which other screens keep a profile and open it.
 */
import type { Binding, PlaceKeys } from './binding.js';
import { openChooser } from './chooser-acts.js';
import { openProblems } from './leave-acts.js';
import { goBack } from './rank-acts.js';
import {
  keptOff,
  keptWritingOff,
  moveKept,
  moveView,
  openCarrying,
  openFelt,
  openNote,
  openShortlist,
  removeKept,
  removingOff,
  sheetOff,
  takeNumbersToRank,
} from './shortlist-acts.js';
import { askToKeep, keepingOff } from './shortlist-keep.js';
import { scrollPreview, turnPreview } from './shortlist-text.js';

/** Keeping the profile in front. */
export const keeping: Binding = {
  keys: ['a'],
  label: 'shortlist',
  says: 'have the profile proven, and keep it on the shortlist',
  act: askToKeep,
  off: keepingOff,
  inFooter: true,
};

/** Opening the Shortlist screen. */
export const shortlisting: Binding = {
  keys: ['L'],
  label: 'shortlist screen',
  says: 'open the shortlist: ride card, controller sheet, first-ride plan, notes',
  act: openShortlist,
};

/** The keys of the Shortlist screen. */
export const SHORTLIST_KEYS: PlaceKeys = {
  title: 'Shortlist',
  bindings: [
    {
      keys: ['tab', 'v'],
      label: 'view',
      says: 'the next view: summary, ride card, controller sheet, first-ride plan, QR code',
      act: moveView(1),
      off: keptOff,
      inFooter: true,
    },
    {
      keys: ['shift+tab', 'V'],
      label: 'view before',
      says: 'the view before',
      act: moveView(-1),
      off: keptOff,
    },
    { keys: ['down', 'j'], label: 'down', says: 'next kept profile', act: moveKept(1) },
    { keys: ['up', 'k'], label: 'up', says: 'kept profile before', act: moveKept(-1) },
    {
      keys: ['n'],
      label: 'note',
      says: 'write a note about the kept profile',
      act: openNote,
      off: keptWritingOff,
      inFooter: true,
    },
    {
      keys: ['f'],
      label: 'felt',
      says: 'rate what was felt on a ride today, such as twitchy 4, loose 2',
      act: openFelt,
      off: keptWritingOff,
      inFooter: true,
    },
    {
      keys: ['c'],
      label: 'sheet',
      says: 'choose the controller sheet, and see the numbers through it',
      act: openChooser('sheet'),
      off: (state) => keptOff(state) ?? sheetOff(state),
      inFooter: true,
    },
    {
      keys: ['x'],
      label: 'export',
      says: 'write the view, the card or the numbers to a new file; its ending says which',
      act: openCarrying,
      off: keptWritingOff,
      inFooter: true,
    },
    {
      keys: ['pagedown', 'space'],
      label: 'page down',
      says: 'a page of the view down',
      act: turnPreview(1),
      inFooter: true,
    },
    { keys: ['pageup'], label: 'page up', says: 'a page of the view up', act: turnPreview(-1) },
    { keys: ['right', 'l'], label: 'line down', says: 'a line of the view down', act: scrollPreview(1) },
    { keys: ['left', 'h'], label: 'line up', says: 'a line of the view up', act: scrollPreview(-1) },
    { keys: ['home'], label: 'start', says: 'to the first line of the view', act: scrollPreview(-Infinity) },
    { keys: ['end'], label: 'end', says: 'to the last line of the view', act: scrollPreview(Infinity) },
    {
      keys: ['e'],
      label: 'edit',
      says: 'take its numbers to Rank, as changes of the profile it came from',
      act: takeNumbersToRank,
      off: keptOff,
      inFooter: true,
    },
    {
      keys: ['d', 'delete'],
      label: 'take out',
      says: 'take it off the shortlist, its file too; asks once more',
      act: removeKept,
      off: removingOff,
      inFooter: true,
    },
    {
      keys: ['!'],
      label: 'problems',
      says: 'show what is wrong with files of the folder',
      act: openProblems,
      off: ({ shelf }) => (shelf.problems.length === 0 ? 'no file has a problem' : null),
    },
    {
      keys: ['escape', 'q'],
      label: 'back',
      says: 'back to the screen before; what is being proven goes on',
      act: goBack,
      inFooter: true,
    },
  ],
};
