/**
 * What would a person type in a shell for what the screen in front shows?
 */
import { RANK_ORDER } from '../../measure/row-order.js';
import { PROGRAM_NAME } from '../../store/places.js';
import { editedProfiles } from './choices.js';
import type { BenchState } from './state.js';

/** The command that gives the same; profiles as their files have them. */
export function shellCommand(state: BenchState): string {
  const { choices, shelf, screen, view, work, options, rank } = state;
  const { board, riders, charges, scenarios } = choices.setup;
  const solver = (usual: string) => (options.solver === usual ? [] : ['--solver', options.solver]);
  const trial = work?.trials[view.trial]?.key;
  if (screen !== 'rank' && trial !== undefined) {
    const [first = ''] = view.profiles;
    const what =
      screen === 'trace'
        ? ['run', first, trial.scenario]
        : ['compare', ...view.profiles, '--scenario', trial.scenario];
    const rig = [
      '--board',
      board,
      '--rider',
      trial.rider,
      '--charge',
      String(trial.chargePercent),
      '--seed',
      String(trial.seed),
    ];
    return [PROGRAM_NAME, ...what, ...rig, ...solver('reference')].join(' ');
  }
  const stated = charges.filter((charge) => charge !== null);
  return [
    PROGRAM_NAME,
    'rank',
    '--board',
    board,
    '--rider',
    riders.join(','),
    ...(scenarios.length === shelf.scenario.length ? [] : ['--scenarios', scenarios.join(',')]),
    ...(stated.length === 0 ? [] : ['--charge', stated.join(',')]),
    ...(options.seeds.length === 1 ? [] : ['--seeds', String(options.seeds.length)]),
    ...solver('fixed'),
    ...(rank.order.by === RANK_ORDER.by ? [] : ['--sort', rank.order.by]),
    ...(rank.order.reversed ? ['--reverse'] : []),
  ].join(' ');
}

/** The command in words, and what it leaves out. */
export function shellSentence(state: BenchState): string {
  const edited = editedProfiles(state);
  const but =
    edited.length === 0 ? '' : ` (without the changes to ${edited.join(', ')}, which are not saved)`;
  return `The same from a shell: ${shellCommand(state)}${but}`;
}
