/**
 * The state that the bench begins with, or what is wrong with what was asked for.
 */
import { NEEDED_KINDS } from '../../quantity/file-kind.js';
import type { Checked, Problem } from '../../quantity/problem.js';
import { quoted } from '../../quantity/received.js';
import { suggestion } from '../../quantity/suggestion.js';
import { RANK_ORDER } from '../../measure/row-order.js';
import type { Shelf } from '../../tasks/shelf.js';
import { firstSetup, workOf } from './choices.js';
import type { BenchOptions, BenchState, Setup } from './state.js';
import { FIRST_SHORTLIST } from './shortlist-state.js';
import { FIRST_SWEEP } from './sweep-form.js';

/** What is asked for by names that are not there. */
function unknownNames(shelf: Shelf, setup: Setup): Problem[] {
  const asked = {
    board: [setup.board],
    rider: setup.riders ?? [],
    profile: [],
    scenario: setup.scenarios ?? [],
  };
  return NEEDED_KINDS.flatMap((kind) => {
    const names = shelf[kind].map(({ name }) => name);
    const place = { file: '', line: null, column: null, key: kind };
    if (names.length === 0)
      return [{ ...place, expected: `at least one ${kind} file without problems`, received: 'none' }];
    return asked[kind]
      .filter((name) => !names.includes(name))
      .map((name): Problem => {
        const near = suggestion(name, names);
        const problem = {
          ...place,
          expected: `the name of a ${kind} (${names.join(', ')})`,
          received: quoted(name),
        };
        return near === undefined ? problem : { ...problem, suggestion: near };
      });
  });
}

/** The first state; files with problems are told only where without them nothing can be ranked. */
export function firstState(from: {
  size: BenchState['size'];
  shelf: Shelf;
  setup: Partial<Setup>;
  options: BenchOptions;
}): Checked<BenchState, Problem> {
  const { size, shelf, options } = from;
  const choices = { setup: firstSetup(shelf, from.setup), edits: [] };
  const unknown = unknownNames(shelf, choices.setup);
  if (unknown.length > 0) return { ok: false, faults: [...shelf.problems, ...unknown] };
  return {
    ok: true,
    value: {
      options,
      size,
      files: shelf,
      shelf,
      choices,
      past: [],
      future: [],
      work: workOf(shelf, choices, options),
      rows: [],
      unedited: new Map(),
      progress: { doneCells: 0, allCells: 0 },
      screen: 'rank',
      behind: [],
      rank: { cursor: null, column: null, order: RANK_ORDER, filter: '', picked: [] },
      view: { profiles: [], trial: 0, inWords: false },
      playhead: { timeS: null, playing: false, rate: 1, span: null },
      why: null,
      sweep: FIRST_SWEEP,
      shortlist: FIRST_SHORTLIST,
      looks: [],
      overlay: null,
      entry: null,
      notice: null,
      leaving: false,
      errands: [],
    },
  };
}
