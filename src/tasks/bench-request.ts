/**
 * What a full-screen bench is asked for and how it ends: agreed between the command that opens it and the screens.
 */
import type { Problem } from '../quantity/problem.js';
import type { Paint } from '../show/colour.js';
import type { SymbolSet } from '../show/glyphs.js';
import type { SpeedUnit } from '../show/quantities.js';
import type { Solver } from '../simulate/run.js';
import type { Places } from '../store/places.js';

/** What the bench is opened with; names that are left out stand for the usual ones, riders of null for all there are. */
export interface BenchRequest {
  places: Places;
  setup: { board?: string; riders?: string[] | null; charges?: (number | null)[]; scenarios?: string[] };
  seeds: readonly number[];
  solver: Solver;
  threads: number;
  paint: Paint;
  symbols: SymbolSet;
  speedUnit: SpeedUnit;
  /** False: nothing moves by itself. */
  animation: boolean;
}

/** How the bench was left, or why it could not be opened; `hung up`: its terminal is gone. */
export type BenchEnd =
  | { kind: 'left' }
  | { kind: 'interrupted' }
  | { kind: 'hung up' }
  | { kind: 'not opened'; problems: readonly Problem[] };
