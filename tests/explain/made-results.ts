/** Results of profiles made by hand, for tests of what is found in them. */
import { profileResult, type CellResult, type ProfileResult } from '../../src/measure/profile-result.js';
import type { Metrics } from '../../src/measure/metrics.js';
import { weightsWith } from '../../src/measure/scales.js';
import { CALM } from '../measure/some-metrics.js';

/** A cell upright over its 8 s, with these metrics beside those of a calm one. */
export function cellOf(scenario: string, metrics: Partial<Metrics> = {}, rider = 'kim'): CellResult {
  return {
    scenario,
    rider,
    chargePercent: 80,
    seed: 1,
    outcome: { kind: 'upright', atS: 8 },
    eventReached: true,
    metrics: { ...CALM, ...metrics },
  };
}

/** A cell that ends with the nose on the ground. */
export function fallOf(scenario: string, atS = 3.2, rider = 'kim'): CellResult {
  return { ...cellOf(scenario, {}, rider), outcome: { kind: 'nose strike', atS } };
}

/** The result of a profile with these cells. */
export function resultOf(...cells: CellResult[]): ProfileResult {
  return profileResult({ name: 'wool', summary: 'soft' }, cells, weightsWith());
}
