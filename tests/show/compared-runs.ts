/** Made-up runs to compare: the sample run, and others that swing more, buzz, or fall. */
import { profileResult } from '../../src/measure/profile-result.js';
import type { Metrics } from '../../src/measure/metrics.js';
import { weightsWith } from '../../src/measure/scales.js';
import type { ComparedRun } from '../../src/show/compare-run.js';
import type { Outcome } from '../../src/simulate/outcome.js';
import { CALM } from '../measure/some-metrics.js';
import { sampleTape, sampleView } from './sample-run.js';

/** What is special about a run; `swing` stretches its pitch. */
export interface Special {
  name: string;
  metrics?: Partial<Metrics>;
  swing?: number;
  outcome?: Outcome;
  eventReached?: boolean;
}

/** A run over the sample tape with these metrics. */
export function comparedRun({
  name,
  metrics = {},
  swing = 1,
  outcome,
  eventReached = true,
}: Special): ComparedRun {
  const tape = sampleTape(6);
  const pitchRad = tape.columns.pitchRad;
  for (let row = 801; row < tape.length; row += 1) pitchRad[row] = (pitchRad[row] ?? 0) * swing;
  const ended = outcome ?? { kind: 'upright', atS: 6 };
  if (ended.kind !== 'upright') tape.length = Math.round(ended.atS * 800) + 1;
  const cell = {
    scenario: 'kerb',
    rider: 'kim',
    chargePercent: 80,
    seed: 1,
    outcome: ended,
    eventReached,
    metrics: { ...CALM, ...metrics },
  };
  const { worst } = profileResult({ name, summary: 'For tests' }, [cell], weightsWith());
  return { name, cell: worst, view: { ...sampleView(tape), outcome: ended } };
}

/** A calm one and one that is worse in several ways. */
export function pair(): [ComparedRun, ComparedRun] {
  return [
    comparedRun({ name: 'linen', metrics: { reboundPercent: 10, settlingTimeS: 1.2, packEnergyJ: 3600 } }),
    comparedRun({
      name: 'satin',
      swing: 1.6,
      metrics: { reboundPercent: 42.5, settlingTimeS: null, packEnergyJ: 3610, leastHeadroomShare: 0.5 },
    }),
  ];
}

/** One that falls at 3 s. */
export function fallen(name = 'gauze'): ComparedRun {
  return comparedRun({
    name,
    swing: 1.6,
    outcome: { kind: 'nose strike', atS: 3 },
    metrics: { reboundPercent: null },
  });
}
