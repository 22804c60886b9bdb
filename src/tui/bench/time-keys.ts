/**
 * The keys of Trace and Compare: the same ones move through time on both.
 */
import type { Binding, PlaceKeys } from './binding.js';
import { goBack } from './rank-acts.js';
import { moveProfile, moveTrial, toggleWords } from './run-acts.js';
import { keeping, shortlisting } from './shortlist-keys.js';
import {
  changeRate,
  goTo,
  goToEvent,
  goToFirstCut,
  goToParting,
  goToPeak,
  scrub,
  showMeasured,
  showWhole,
  step,
  togglePlaying,
  zoom,
} from './time-acts.js';
import { openWhy } from './why-acts.js';

const playing: Binding = {
  keys: ['space'],
  label: 'play',
  says: 'play, or pause',
  act: togglePlaying,
  off: ({ options }) => (options.animation ? null : 'nothing moves by itself with --no-animation'),
  inFooter: true,
};

const time: readonly Binding[] = [
  { keys: ['left', 'h'], label: 'back', says: 'a hundredth of what is in sight back', act: scrub(-1) },
  { keys: ['right', 'l'], label: 'on', says: 'a hundredth of what is in sight on', act: scrub(1) },
  { keys: ['shift+left', '{'], label: 'far back', says: 'a tenth of what is in sight back', act: scrub(-10) },
  { keys: ['shift+right', '}'], label: 'far on', says: 'a tenth of what is in sight on', act: scrub(10) },
  { keys: [','], label: 'tick back', says: 'one tick back', act: step(-1) },
  { keys: ['.'], label: 'tick on', says: 'one tick on', act: step(1) },
  { keys: ['home'], label: 'start', says: 'to the start', act: goTo('start') },
  { keys: ['end'], label: 'end', says: 'to the end', act: goTo('end') },
  { keys: ['-'], label: 'slower', says: 'play slower', act: changeRate(-1) },
  { keys: ['+', '='], label: 'faster', says: 'play faster', act: changeRate(1) },
  { keys: ['z'], label: 'zoom in', says: 'zoom in about the cursor', act: zoom(true), inFooter: true },
  { keys: ['Z'], label: 'zoom out', says: 'zoom out', act: zoom(false) },
  { keys: ['0'], label: 'whole run', says: 'show the whole run', act: showWhole },
  { keys: ['m'], label: 'measured', says: 'show the measured stretch alone', act: showMeasured },
  { keys: ['n'], label: 'next event', says: 'to the next event', act: goToEvent('next'), inFooter: true },
  { keys: ['N'], label: 'event before', says: 'to the event before', act: goToEvent('previous') },
  {
    keys: ['p'],
    label: 'peak',
    says: 'to the largest pitch of the measured stretch',
    act: goToPeak,
    inFooter: true,
  },
  {
    keys: ['c'],
    label: 'first cut',
    says: 'to the first tick at which a ceiling cuts the request',
    act: goToFirstCut,
    inFooter: true,
  },
  { keys: ['down'], label: 'scenario', says: 'the next scenario', act: moveTrial(1), inFooter: true },
  { keys: ['up'], label: 'scenario before', says: 'the scenario before', act: moveTrial(-1) },
  {
    keys: ['t'],
    label: 'in words',
    says: 'say the pictures in sentences, or draw them again',
    act: toggleWords,
  },
];

const back: Binding = {
  keys: ['escape', 'q'],
  label: 'back',
  says: 'back to the screen before',
  act: goBack,
  inFooter: true,
};

/** The keys of Trace. */
export const TRACE_KEYS: PlaceKeys = {
  title: 'Trace',
  bindings: [
    playing,
    {
      keys: ['pagedown', 'j'],
      label: 'profile',
      says: 'the same scenario with the next profile',
      act: moveProfile(1),
      inFooter: true,
    },
    ...time,
    {
      keys: ['pageup', 'k'],
      label: 'profile before',
      says: 'the same scenario with the profile before',
      act: moveProfile(-1),
    },
    {
      keys: ['y'],
      label: 'why',
      says: 'why the profile rides as it does, and what would help',
      act: openWhy,
      inFooter: true,
    },
    keeping,
    shortlisting,
    back,
  ],
};

/** The keys of Compare. */
export const COMPARE_KEYS: PlaceKeys = {
  title: 'Compare',
  bindings: [
    playing,
    ...time,
    {
      keys: ['d'],
      label: 'where they part',
      says: 'to the first moment at which the profiles part',
      act: goToParting,
      inFooter: true,
    },
    shortlisting,
    back,
  ],
};
