/**
 * What is missing of what the setup names, and which key chooses something else in its place?
 */
import type { NeededKind } from '../../quantity/file-kind.js';
import type { BenchState } from './state.js';

/** The key that chooses another file of a kind, and what it chooses; for profiles there is none: all of them are ranked. */
const CHOOSES: Readonly<Record<Exclude<NeededKind, 'profile'>, string>> = {
  board: 'b chooses another',
  rider: 'r chooses others',
  scenario: 'o chooses others',
};

/** Names that the setup has and the files have not, by kind. */
export function missingNames({
  shelf,
  choices: { setup },
}: Pick<BenchState, 'shelf' | 'choices'>): Readonly<Record<keyof typeof CHOOSES, readonly string[]>> {
  const gone = (kind: keyof typeof CHOOSES, names: readonly string[]) =>
    names.filter((name) => !shelf[kind].some((file) => file.name === name));
  return {
    board: gone('board', [setup.board]),
    rider: gone('rider', setup.riders ?? []),
    scenario: gone('scenario', setup.scenarios ?? []),
  };
}

/** What is missing, one sentence for each name, and for each kind of which there is no file at all. */
export function missingSentences(state: Pick<BenchState, 'shelf' | 'choices'>): string[] {
  const { shelf } = state;
  const missing = missingNames(state);
  const kinds = Object.keys(CHOOSES) as (keyof typeof CHOOSES)[];
  const named = kinds
    .filter((kind) => shelf[kind].length > 0)
    .flatMap((kind) => missing[kind].map((name) => `${kind} ${name} is no longer there; ${CHOOSES[kind]}`));
  const none = (['profile', ...kinds] as const)
    .filter((kind) => shelf[kind].length === 0)
    .map((kind) => `no ${kind} is left; at least one ${kind} file without problems is needed`);
  return [...none, ...named];
}
