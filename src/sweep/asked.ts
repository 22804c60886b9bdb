/**
 * How does a search speak with whoever runs candidates? It asks for runs and is told what came of them.
 */
import type { ProfileFile } from '../quantity/profile-file.js';
import type { Candidate } from './candidate.js';
import { soFar, type Priced, type SoFar } from './racing.js';

/** Part of the search that asks. */
export type Stage = 'racing' | 'going downhill' | 'running the best';

/** Candidates that are to be run in these cells before the search goes on. */
export interface Asked {
  stage: Stage;
  /** The rung or the generation, counted from 1, and how many there will be at most. */
  step: number;
  steps: number;
  candidates: readonly Candidate[];
  cells: readonly number[];
}

/** What a search must be told: what came of a run that it asked for, and which profiles cannot hold the board up. */
export interface Judge {
  priced: (candidate: Candidate, cell: number) => Priced;
  isHopeless: (profile: ProfileFile) => boolean;
}

/** What became of a candidate: out before it was run, dropped on the way, or run in every cell. */
export type Fate =
  | { kind: 'hopeless' }
  | { kind: 'dropped'; afterCells: number; failures: number }
  | { kind: 'run in every cell' };

/** A candidate and what became of it. */
export interface Tried {
  candidate: Candidate;
  fate: Fate;
}

/** How a candidate stands over cells that it was run in. */
export function standing(candidate: Candidate, cells: readonly number[], { priced }: Judge): SoFar {
  return soFar(cells.map((cell) => priced(candidate, cell)));
}
