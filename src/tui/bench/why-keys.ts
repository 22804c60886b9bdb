/**
 * The keys of the Why screen.
 */
import { PAGE, type PlaceKeys } from './binding.js';
import { goBack } from './rank-acts.js';
import { saving, undoing } from './rank-keys.js';

import { itemOff, moveItem, takeItem } from './why-acts.js';

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
    { keys: ['up', 'k'], label: 'before', says: 'finding or change before', act: moveItem(-1) },
    { keys: ['pagedown'], label: 'page down', says: 'ten findings or changes on', act: moveItem(PAGE) },
    { keys: ['pageup'], label: 'page up', says: 'ten findings or changes back', act: moveItem(-PAGE) },
    { keys: ['home'], label: 'first', says: 'first finding', act: moveItem(-Infinity) },
    { keys: ['end'], label: 'last', says: 'last change', act: moveItem(Infinity) },
    ...undoing.map((binding) => ({ ...binding, inFooter: true as const })),
    { ...saving, inFooter: true },
    {
      keys: ['escape', 'q'],
      label: 'back',
      says: 'back to the screen before',
      act: goBack,
      inFooter: true,
    },
  ],
};
