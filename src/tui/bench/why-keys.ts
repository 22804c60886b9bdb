/**
 * The keys of the Why screen, over its lists and over the whole answer as text.
 */
import { PAGE, type PlaceKeys } from './binding.js';
import { goBack } from './rank-acts.js';
import { saving, undoing } from './rank-keys.js';
import { keeping, shortlisting } from './shortlist-keys.js';
import { itemOff, moveItem, takeItem } from './why-acts.js';
import { closeText, openText, scrollLines, scrollPages, textOff } from './why-text.js';

/** The keys of the Why screen. */
export const WHY_KEYS: PlaceKeys = {
  title: 'Why',
  bindings: [
    {
      keys: ['return'],
      label: 'look or try',
      says: 'look at the run where a finding is seen best, or try a change at once',
      act: takeItem,
      off: itemOff,
      inFooter: true,
    },
    {
      keys: ['down', 'j'],
      label: 'next',
      says: 'next finding, then the changes that were tried',
      act: moveItem(1),
      inFooter: true,
    },
    {
      keys: ['t'],
      label: 'in words',
      says: 'say all of it in words, how far it is to the edge too',
      act: openText,
      off: textOff,
      inFooter: true,
    },
    { keys: ['up', 'k'], label: 'before', says: 'finding or change before', act: moveItem(-1) },
    { keys: ['pagedown'], label: 'page down', says: 'ten findings or changes on', act: moveItem(PAGE) },
    { keys: ['pageup'], label: 'page up', says: 'ten findings or changes back', act: moveItem(-PAGE) },
    { keys: ['home'], label: 'first', says: 'first finding', act: moveItem(-Infinity) },
    { keys: ['end'], label: 'last', says: 'last change', act: moveItem(Infinity) },
    ...undoing.map((binding) => ({ ...binding, inFooter: true as const })),
    { ...saving, inFooter: true },
    keeping,
    shortlisting,
    {
      keys: ['escape', 'q'],
      label: 'back',
      says: 'back to the screen before',
      act: goBack,
      inFooter: true,
    },
  ],
};

/** The keys of the Why screen while it says all in words. */
export const WHY_TEXT_KEYS: PlaceKeys = {
  title: 'Why in words',
  bindings: [
    { keys: ['down', 'j'], label: 'line down', says: 'a line down', act: scrollLines(1), inFooter: true },
    { keys: ['up', 'k'], label: 'line up', says: 'a line up', act: scrollLines(-1), inFooter: true },
    { keys: ['pagedown'], label: 'page down', says: 'a page down', act: scrollPages(1), inFooter: true },
    { keys: ['pageup'], label: 'page up', says: 'a page up', act: scrollPages(-1), inFooter: true },
    { keys: ['home'], label: 'start', says: 'to the first line', act: scrollLines(-Infinity) },
    { keys: ['end'], label: 'end', says: 'to the last line', act: scrollLines(Infinity), inFooter: true },
    keeping,
    shortlisting,
    {
      keys: ['escape', 't', 'q'],
      label: 'lists',
      says: 'back to the findings and changes',
      act: closeText,
      inFooter: true,
    },
  ],
};
