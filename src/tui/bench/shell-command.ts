/**
 * What would a person type in a shell for what the screen in front shows?
 */
import { RANK_ORDER } from '../../measure/row-order.js';
import { PROGRAM_NAME } from '../../store/places.js';
import type { TrialKey } from '../../tasks/plan.js';
import { chargesText } from '../../quantity/charges-text.js';
import { ALL } from '../../tasks/select.js';
import { USUAL_CHARGES } from '../../tasks/sweep-select.js';
import { editedProfiles } from './choices.js';
import { missingNames } from './missing.js';
import { chosenSheet, currentKept } from './shortlist-items.js';
import type { BenchState } from './state.js';
import { PLAIN, sweepPlanOf, USUAL_COUNT } from './sweep-form.js';

const solverOf = ({ options: { solver } }: BenchState, usual: string) =>
  solver === usual ? [] : ['--solver', solver];

/** The words for the states of charge; none for those that the command has by itself. */
function chargeWords(charges: readonly (number | null)[], usual: readonly (number | null)[]): string[] {
  return chargesText(charges) === chargesText(usual) ? [] : ['--charge', chargesText(charges)];
}

/** The words of the command for the run or the comparison in front. */
function lookWords(state: BenchState, { scenario, rider, chargePercent, seed }: TrialKey): string[] {
  const { choices, screen, view } = state;
  const [first = ''] = view.profiles;
  const what =
    screen === 'trace' ? ['run', first, scenario] : ['compare', ...view.profiles, '--scenario', scenario];
  const rig = ['--board', choices.setup.board, '--rider', rider];
  const chance = ['--charge', String(chargePercent), '--seed', String(seed)];
  return [...what, ...rig, ...chance, ...solverOf(state, 'reference')];
}

/** The words of the command for the table; names without a file are left out, as they are in the table. */
function rankWords(state: BenchState): string[] {
  const { rank } = state;
  return [
    'rank',
    ...planWords(state),
    ...(rank.order.by === RANK_ORDER.by ? [] : ['--sort', rank.order.by]),
    ...(rank.order.reversed ? ['--reverse'] : []),
  ];
}

/** The words for what profiles are run on. */
function planWords(state: BenchState): string[] {
  return ['--board', state.choices.setup.board, ...cellWords(state)];
}

/** The words for the cells that profiles are run in, on whichever board. */
export function cellWords(state: BenchState): string[] {
  const { choices, options } = state;
  const { riders, charges, scenarios } = choices.setup;
  const missing = missingNames(state);
  const riderList = riders?.filter((name) => !missing.rider.includes(name)) ?? [ALL];
  const scenarioList = scenarios?.filter((name) => !missing.scenario.includes(name)) ?? [];
  return [
    '--rider',
    riderList.join(','),
    ...(scenarioList.length === 0 ? [] : ['--scenarios', scenarioList.join(',')]),
    ...chargeWords(charges, [null]),
    ...(options.seeds.length === 1 ? [] : ['--seeds', String(options.seeds.length)]),
    ...solverOf(state, 'fixed'),
  ];
}

/** The words of the command for the sweep that was begun, or that the form asks for. */
function sweepWords(state: BenchState): string[] {
  const { run, view } = state.sweep;
  const isAsked = run === null || view === 'ranges';
  const plan = isAsked ? sweepPlanOf(state) : run.plan;
  const isPlain = isAsked ? state.sweep.form.from === PLAIN : run.isPlain;
  if (plan === null) return ['sweep'];
  const { cells, base, ranges, count, grid, isExhaustive } = plan;
  const named = (files: readonly { name: string }[]) => files.map(({ name }) => name).join(',');
  return [
    'sweep',
    '--board',
    cells.board.name,
    '--rider',
    named(cells.riders),
    '--scenarios',
    named(cells.scenarios),
    ...chargeWords(cells.charges, USUAL_CHARGES),
    ...(cells.seeds.length === 1 ? [] : ['--seeds', String(cells.seeds.length)]),
    ...(isPlain ? [] : ['--from', base.name]),
    ...ranges.flatMap(({ path, min, max }) => ['--range', `${path.at(-1)!}=${min}..${max}`]),
    ...(grid !== null
      ? ['--grid', String(grid)]
      : count === USUAL_COUNT
        ? []
        : ['--candidates', String(count)]),
    ...(isExhaustive ? ['--exhaustive'] : []),
  ];
}

/** The words of the command for the view of the shortlist in front. */
function shortlistWords(state: BenchState): string[] {
  const kept = currentKept(state);
  if (kept === undefined) return ['shortlist', 'list'];
  const { name } = kept;
  const { view } = state.shortlist;
  if (view === 'summary') return ['shortlist', 'show', name];
  if (view === 'plan') return ['plan', name];
  const sheet = chosenSheet(state)?.name ?? 'SHEET';
  return ['export', name, ...(view === 'sheet' ? ['--sheet', sheet] : ['--as', view])];
}

/** The command that gives the same; profiles as their files have them. */
export function shellCommand(state: BenchState): string {
  if (state.screen === 'sweep') return [PROGRAM_NAME, ...sweepWords(state)].join(' ');
  if (state.screen === 'shortlist') return [PROGRAM_NAME, ...shortlistWords(state)].join(' ');
  if (state.screen === 'why') {
    const name = state.why?.plan.profiles[0]?.name ?? '';
    return [PROGRAM_NAME, 'explain', name, ...planWords(state)].join(' ');
  }
  const trial = state.work?.trials[state.view.trial]?.key;
  const isLook = state.screen !== 'rank' && trial !== undefined;
  return [PROGRAM_NAME, ...(isLook ? lookWords(state, trial) : rankWords(state))].join(' ');
}

/** The command in words, and what it leaves out. */
export function shellSentence(state: BenchState): string {
  const edited = editedProfiles(state);
  const but =
    edited.length === 0 ? '' : ` (without the changes to ${edited.join(', ')}, which are not saved)`;
  return `The same from a shell: ${shellCommand(state)}${but}`;
}
