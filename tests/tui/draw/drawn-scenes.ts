/** Every screen, and all that opens over one, as states to be drawn at any size. */
import { shelved, told } from '../../../src/tui/bench/hear.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { afterKeys, drawnState, type Wanted } from './drawn-state.js';
import { LONG_NAME, LONGEST } from '../../show/kept-example.js';
import { withKept, withPreview, withQueue } from './drawn-shortlist.js';
import { endedSweep, runningSweep } from './drawn-sweep.js';
import { answeredWhy } from './drawn-why.js';

const names = (count: number, stem: string) =>
  Array.from({ length: count }, (_, index) => `${stem}-${String(index + 1).padStart(3, '0')}`);

const LONG = ['a-profile-with-a-name-of-forty-characters', 'another-name-as-long-as-a-name-ever-gets'];

/** How much there is to show. */
const BURDENS: Readonly<Record<string, Partial<Wanted>>> = {
  'the usual': {},
  'half computed': { computed: 2 },
  'nothing computed': { computed: 0 },
  'one profile': { profiles: ['only-one'] },
  'all fall': { allFall: true },
  'many profiles': { profiles: names(200, 'profile') },
  'many scenarios': { scenarios: names(60, 'scenario') },
  'long names': { profiles: LONG, scenarios: LONG },
  'wide characters': { summary: 'Fürs Übungsfeld: 静かな板、ゆっくり曲がる 🛹 and on, and on, and on.' },
};

/** Burdens that reach Trace and Compare. */
const CARRIED = ['many scenarios', 'long names', 'one profile'];

/** Keys that lead from the Rank screen to each of the others. */
const WAYS: Readonly<Record<string, readonly string[]>> = {
  rank: [],
  'rank, last row': ['end'],
  'rank, a scenario': ['down', 'right', 'right'],
  'rank, by settling': ['s', 's', 's', 's', 's', 'R'],
  'rank, picked': ['space', 'space'],
  filter: ['/', 'z', 'z'],
  'filtered away': ['/', 'z', 'z', 'return'],
  export: ['x'],
  board: ['b'],
  rider: ['r'],
  pack: ['p'],
  scenarios: ['o', 'down', 'space'],
  'scenarios, searched': ['o', 'q', 'q'],
  gains: ['e', 'down', 'right'],
  number: ['e', 'return'],
  save: ['e', 'down', 'right', 'w'],
  edited: ['e', 'right', 'escape'],
  help: ['?'],
  'help, searched': ['?', 'p', 'e', 'a'],
  'help, nothing found': ['?', 'z', 'z', 'z'],
  trace: ['return'],
  'trace, zoomed': ['return', 'z', 'z', 'n'],
  'trace in words': ['return', 't'],
  'compare two': ['space', 'space', 'c'],
  'compare three': ['space', 'space', 'space', 'c'],
  'compare four': ['space', 'space', 'space', 'space', 'c'],
  'compare in words': ['space', 'space', 'c', 't'],
  'help over trace': ['return', '?'],
  'why, asked': ['y'],
  'help over why': ['y', '?'],
  keep: ['down', 'a'],
  'keep from trace': ['return', 'a'],
  'nothing kept': ['L'],
  sweep: ['g'],
  'sweep, an end': ['g', 'down', 'right'],
  'sweep, typed': ['g', '4', '2', '0'],
  'sweep, refused': ['g', '9', '9', '9', '9', 'return'],
  'sweep, numbers': ['g', 'a', 'down'],
  'sweep, all else from': ['g', 'f'],
  'sweep, one number': ['g', 'd'],
  'sweep, a grid': ['g', 'end', 'down', 'down', 'down', 'right', 'down', 'right'],
  'sweep, plain': ['g', 'f', 'return', 'return'],
  'sweep, begun': ['g', 'return'],
};

/** Keys on the Why screen once its answer is there. */
const WHYS: Readonly<Record<string, readonly string[]>> = {
  why: [],
  'why, a change': ['end'],
  'why, a change made': ['end', 'return'],
  'why, save': ['end', 'return', 'w'],
  'why in words': ['t'],
  'why in words, the end': ['t', 'end'],
  'help over why in words': ['t', '?'],
};

/** Keys on the Sweep screen once a sweep is done. */
const SWEEPS: Readonly<Record<string, readonly string[]>> = {
  finalists: [],
  'finalists, the last': ['end'],
  map: ['tab'],
  'map, another candidate': ['tab', 'right', 'down', 'down'],
  'map of falls': ['tab', 'm'],
  front: ['tab', 'tab'],
  'front, other costs': ['tab', 'tab', 'x', 'j'],
  'in words': ['t'],
  'map in words': ['tab', 't'],
  'front in words': ['tab', 'tab', 't', 'end'],
  'ranges again': ['tab', 'tab', 'tab'],
  'trace of a finalist': ['return'],
  'why of a finalist': ['y'],
  'rank of a finalist': ['r'],
  'help over the map': ['tab', '?'],
};

/** Keys on the Shortlist screen with kept profiles. */
const SHORTLISTS: Readonly<Record<string, readonly string[]>> = {
  summary: [],
  'summary, the end': ['down', 'end'],
  card: ['v'],
  'no sheet chosen': ['v', 'v'],
  sheets: ['c', 'down'],
  sheet: ['c', 'down', 'return'],
  plan: ['v', 'v', 'v'],
  note: ['down', 'n'],
  felt: ['f', 'b', 'a', 'd', 'return'],
  export: ['v', 'x'],
  'take out': ['d'],
  waiting: ['down', 'down', 'down'],
  'help over the shortlist': ['?'],
};

const PROBLEM = {
  file: 'profiles/gains/quick-one.yaml',
  line: 5,
  column: 7,
  key: 'gains.proportionalAPerDeg',
  expected: 'a number from 0 to 100 A/deg',
  received: '"viel"',
};

/** A state with a name. */
export interface Scene {
  name: string;
  state: BenchState;
}

/** Every screen with the usual burden, the Rank screen with every other, and what no key leads to. */
export function scenesAt(size: Wanted['size'], options: NonNullable<Wanted['options']>): Scene[] {
  const usual = drawnState({ size, options });
  const problems = { ...usual, shelf: { ...usual.shelf, problems: [PROBLEM, PROBLEM] } };
  return [
    ...Object.entries(WAYS).map(([name, keys]) => ({ name, state: afterKeys(usual, ...keys) })),
    ...Object.entries(BURDENS).flatMap(([name, burden]) => {
      const state = drawnState({ size, options, ...burden });
      return [
        { name: `rank, ${name}`, state: afterKeys(state, 'end') },
        { name: `gains, ${name}`, state: afterKeys(state, 'e') },
        { name: `scenarios, ${name}`, state: afterKeys(state, 'o', 'end') },
        ...(CARRIED.includes(name)
          ? [
              { name: `trace, ${name}`, state: afterKeys(state, 'return') },
              { name: `compare, ${name}`, state: afterKeys(state, 'space', 'space', 'c') },
            ]
          : []),
      ];
    }),
    ...Object.entries(WHYS).map(([name, keys]) => ({ name, state: afterKeys(answeredWhy(usual), ...keys) })),
    { name: 'why, long names', state: answeredWhy(drawnState({ size, options, ...BURDENS['long names'] })) },
    { name: 'why, the worst runs alone', state: answeredWhy(usual, { isComplete: false }) },
    { name: 'why, nothing to blame', state: answeredWhy(usual, { findings: 0 }) },
    ...Object.entries(SWEEPS).map(([name, keys]) => ({
      name: `sweep, ${name}`,
      state: afterKeys(endedSweep(usual), ...keys),
    })),
    { name: 'sweep, running', state: runningSweep(usual) },
    { name: 'sweep, stopped', state: afterKeys(runningSweep(usual), 'space') },
    { name: 'rank while a sweep runs', state: afterKeys(runningSweep(usual), 'escape') },
    { name: 'sweep, nobody stays up', state: endedSweep(usual, { isHopeless: true }) },
    {
      name: 'sweep, long names',
      state: runningSweep(drawnState({ size, options, ...BURDENS['long names'] })),
    },
    ...Object.entries(SHORTLISTS).map(([name, keys]) => ({
      name: `shortlist, ${name}`,
      state: withPreview(afterKeys(withQueue(withKept(usual), 'tea', 'soup'), 'L', ...keys)),
    })),
    {
      name: 'shortlist, computing a plan',
      state: afterKeys(withKept(usual), 'L', 'v', 'v', 'v'),
    },
    {
      name: 'shortlist, a damaged file',
      state: afterKeys(
        withKept(usual, undefined, [{ ...PROBLEM, file: 'shortlist/spare.yaml' }]),
        'L',
        'end',
      ),
    },
    ...['', 'v', 'V'].map((key) => ({
      name: `shortlist ${key}, long names and wide characters`,
      state: afterKeys(withKept(usual, [{ name: LONG_NAME, value: LONGEST }]), 'L', ...key),
    })),
    { name: 'problems in files', state: problems },
    { name: 'problems', state: afterKeys(problems, '!') },
    { name: 'notice', state: told(usual, 'wrote rank.csv') },
    { name: 'fault', state: told(usual, [PROBLEM, PROBLEM]) },
    { name: 'fault over a line', state: told(afterKeys(usual, 'x'), [PROBLEM, PROBLEM]) },
    { name: 'faulty file', state: shelved(usual, { ...usual.shelf, problems: [PROBLEM] }) },
    { name: 'nothing to rank', state: shelved(usual, { ...usual.shelf, board: [], profile: [] }) },
  ];
}
