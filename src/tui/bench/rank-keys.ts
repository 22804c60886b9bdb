/**
 * The keys of the Rank screen.
 */
import { PAGE, type Binding, type PlaceKeys } from './binding.js';
import { openChooser } from './chooser-acts.js';
import { redo, undo } from './choices.js';
import { exportName, newName, openEntry, savedProfile } from './entry-acts.js';
import { openGains } from './gains-acts.js';
import { leave, openProblems } from './leave-acts.js';
import { ownFolderOff } from './own-folder.js';
import {
  comparingOff,
  liftFilter,
  lookingOff,
  moveColumn,
  moveOrder,
  moveRow,
  openCompare,
  openTrace,
  rowOff,
  togglePick,
  turnOrder,
} from './rank-acts.js';
import { keeping, shortlisting } from './shortlist-keys.js';
import { openSweep } from './sweep-acts.js';
import { openWhy } from './why-acts.js';

/** Undo and redo. */
export const undoing: readonly Binding[] = [
  {
    keys: ['u'],
    label: 'undo',
    says: 'take back the last change of numbers or of the setup',
    act: undo,
    off: ({ past }) => (past.length === 0 ? 'nothing to undo' : null),
  },
  {
    keys: ['U'],
    label: 'redo',
    says: 'make the change again',
    act: redo,
    off: ({ future }) => (future.length === 0 ? 'nothing to redo' : null),
  },
];

/** Saving a changed profile. */
export const saving: Binding = {
  keys: ['w'],
  label: 'save as',
  says: 'write the changed profile to a new file',
  act: openEntry('save', { offered: newName }),
  off: (state) => (savedProfile(state) === null ? 'this profile is as in its file' : ownFolderOff(state)),
};

/** The keys of the Rank screen. */
export const RANK_KEYS: PlaceKeys = {
  title: 'Rank',
  bindings: [
    {
      keys: ['return'],
      label: 'look',
      says: 'look at the run under the cursor, or at the worst',
      act: openTrace,
      off: lookingOff,
      inFooter: true,
    },
    { keys: ['down', 'j'], label: 'down', says: 'next profile', act: moveRow(1) },
    { keys: ['up', 'k'], label: 'up', says: 'profile before', act: moveRow(-1) },
    { keys: ['pagedown'], label: 'page down', says: 'ten profiles on', act: moveRow(PAGE) },
    { keys: ['pageup'], label: 'page up', says: 'ten profiles back', act: moveRow(-PAGE) },
    { keys: ['home'], label: 'first', says: 'first profile', act: moveRow(-Infinity) },
    { keys: ['end'], label: 'last', says: 'last profile', act: moveRow(Infinity) },
    {
      keys: ['right', 'l'],
      label: 'scenario',
      says: 'next scenario of the strip; past the last: the worst one',
      act: moveColumn(1),
    },
    { keys: ['left', 'h'], label: 'scenario before', says: 'scenario before', act: moveColumn(-1) },
    {
      keys: ['space'],
      label: 'pick',
      says: 'pick the profile, or let it go',
      act: togglePick,
      off: rowOff,
      inFooter: true,
    },
    {
      keys: ['c'],
      label: 'compare',
      says: 'compare the picked profiles',
      act: openCompare,
      off: comparingOff,
      inFooter: true,
    },
    {
      keys: ['e'],
      label: 'edit',
      says: 'change numbers of the profile and see its row move',
      act: openGains,
      off: rowOff,
      inFooter: true,
    },
    {
      keys: ['y'],
      label: 'why',
      says: 'why the profile rides as it does, and what would help',
      act: openWhy,
      off: rowOff,
      inFooter: true,
    },
    {
      keys: ['g'],
      label: 'sweep',
      says: 'look through ranges of numbers for better profiles',
      act: openSweep,
      inFooter: true,
    },
    keeping,
    { keys: ['s'], label: 'sort', says: 'sort by the next column', act: moveOrder(1), inFooter: true },
    { keys: ['S'], label: 'sort before', says: 'sort by the column before', act: moveOrder(-1) },
    { keys: ['R'], label: 'turn round', says: 'turn the order round', act: turnOrder },
    {
      keys: ['/'],
      label: 'filter',
      says: 'show profiles whose name or summary holds a text',
      act: openEntry('filter', { kept: ({ rank }) => rank.filter }),
      inFooter: true,
    },
    {
      keys: ['escape'],
      label: 'lift filter',
      says: 'show every profile again',
      act: liftFilter,
      off: ({ rank }) => (rank.filter === '' ? 'there is no filter' : null),
    },
    { keys: ['b'], label: 'board', says: 'choose the board', act: openChooser('board'), inFooter: true },
    { keys: ['r'], label: 'rider', says: 'choose riders', act: openChooser('rider'), inFooter: true },
    {
      keys: ['p'],
      label: 'pack',
      says: 'choose states of charge',
      act: openChooser('pack'),
      inFooter: true,
    },
    {
      keys: ['o'],
      label: 'roads',
      says: 'choose scenarios',
      act: openChooser('scenarios'),
      inFooter: true,
    },
    { ...shortlisting, inFooter: true },
    ...undoing,
    saving,
    {
      keys: ['x'],
      label: 'export',
      says: 'write the table as it stands to a .csv, .json or .txt file',
      act: openEntry('export', { offered: exportName }),
      off: ({ rows }) => (rows.some(({ result }) => result !== null) ? null : 'no row is computed yet'),
    },
    {
      keys: ['!'],
      label: 'problems',
      says: 'show what is wrong with files of the folder',
      act: openProblems,
      off: ({ shelf }) => (shelf.problems.length === 0 ? 'no file has a problem' : null),
    },
    { keys: ['q'], label: 'leave', says: 'leave underfoot', act: leave },
  ],
};
