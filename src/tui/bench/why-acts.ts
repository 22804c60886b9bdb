/**
 * What keys do on the Why screen, and how it is opened.
 */
import type { Evidence } from '../../explain/evidence.js';
import type { Act } from './binding.js';
import { trialIndex } from './carry-over.js';
import { withNumbersOf } from './choices.js';
import { currentRow } from './rows.js';
import type { BenchState } from './state.js';
import { currentItem, isInUse, itemsOf, whyOf } from './why-items.js';

/** Asks why the profile under the cursor, or the one that is shown, rides as it does. Why stands behind itself never. */
export const openWhy: Act = (state) => {
  const { work, behind, screen } = state;
  const name = screen === 'trace' ? state.view.profiles[0] : currentRow(state)?.name;
  const profile = work?.plan.profiles.find((one) => one.name === name);
  if (work === null || profile === undefined) return state;
  const at = behind.indexOf('why');
  const isSame = state.why?.plan.profiles[0] === profile;
  return {
    ...state,
    screen: 'why',
    behind: at === -1 ? [...behind, screen] : behind.slice(0, at),
    why: isSame ? state.why : whyOf(work, profile.name),
    rank: { ...state.rank, cursor: profile.name },
    playhead: { ...state.playhead, playing: false },
    looks: [],
  };
};

/** Moves over findings and changes; it stops at the ends. */
export function moveItem(by: number): Act {
  return (state) => {
    const { why } = state;
    if (why === null) return state;
    const last = Math.max(0, itemsOf(why).length - 1);
    return { ...state, why: { ...why, cursor: Math.min(last, Math.max(0, why.cursor + by)) } };
  };
}

/** Why nothing comes of what is under the cursor; null where something does. */
export function itemOff(state: BenchState): string | null {
  const item = currentItem(state);
  if (item === undefined) return state.why?.answer ? 'nothing is to blame' : 'nothing is found yet';
  return item.kind === 'remedy' && isInUse(state, item.remedy)
    ? 'this change is made already; u takes it back'
    : null;
}

/** Looks at the run in which a finding is seen best, or tries a change. */
export const takeItem: Act = (state) => {
  const item = currentItem(state);
  if (item === undefined) return state;
  return item.kind === 'finding'
    ? lookAt(state, item.evidence)
    : withNumbersOf(state, explainedName(state), item.remedy.profile);
};

const explainedName = ({ why }: BenchState) => why!.plan.profiles[0]!.name;

/** Opens the run of a finding at its moment; what was seen under the reference has another moment here. */
function lookAt(state: BenchState, { cell, moment, finding, isUnderReference }: Evidence): BenchState {
  const { peak, firstCut } = moment;
  const { timeS } = finding.family === 'power' && firstCut !== null ? firstCut : peak;
  return {
    ...state,
    screen: 'trace',
    behind: [...state.behind, 'why'],
    view: {
      ...state.view,
      profiles: state.why!.plan.profiles.map(({ name }) => name),
      trial: Math.max(0, trialIndex(state.work, cell)),
    },
    playhead: { ...state.playhead, timeS: isUnderReference ? null : timeS, playing: false, span: null },
    looks: [],
  };
}
