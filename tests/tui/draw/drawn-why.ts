/** The Why screen with a made-up answer: a finding in the profile, one in the motor, and two changes that were tried. */
import { editsBetween } from '../../../src/explain/remedies.js';
import { withFields } from '../../../src/quantity/profile-fields.js';
import type { ProfileFile } from '../../../src/quantity/profile-file.js';
import type { Why } from '../../../src/tasks/why.js';
import { explained } from '../../../src/tui/bench/hear.js';
import { press } from '../../../src/tui/bench/press.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { sampleEvidence, sampleFeel, sampleFinding, sampleRemedy } from '../../show/sample-why.js';
import { withLooks } from './drawn-state.js';

/** What of an answer is not the usual. */
interface Unusual {
  isComplete?: boolean;
  findings?: number;
}

/** A change of a profile that was tried. */
function remedyFor(profile: ProfileFile, changes: Parameters<typeof withFields>[1]) {
  const changed = withFields(profile, changes)!;
  return { ...sampleRemedy({}, editsBetween(profile, changed)), profile: changed };
}

/** A made-up answer to the question of a state. */
export function answerFor(state: BenchState, { isComplete = true, findings = 2 }: Unusual = {}): Why {
  const { plan } = state.why!;
  const profile = plan.profiles[0]!;
  const result = state.rows.find(({ name }) => name === profile.name)!.result!;
  const [cell, without = cell] = result.cells;
  const motor = sampleFinding({ cause: 'voltage ceiling', family: 'power', failuresCured: 0, share: 0.2 });
  const seen = { cell: cell!, without: without! };
  const evidence = [
    sampleEvidence(seen),
    sampleEvidence({ ...seen, finding: motor, causes: ['voltage ceiling', 'low pack'] }),
  ].slice(0, findings);
  const remedies = [
    remedyFor(profile.value, [{ path: ['gains', 'rateAPerDegPerS'], value: 1.9 }]),
    remedyFor(profile.value, [
      { path: ['shaping', 'headroomLift', 'belowPercent'], value: 30 },
      { path: ['shaping', 'headroomLift', 'upToDeg'], value: 4 },
      { path: ['shaping', 'headroomLift', 'rateDegPerS'], value: 10 },
    ]),
  ];
  const { rider, rides, words } = sampleFeel();
  return {
    plan,
    explanation: {
      profile,
      isComplete,
      result,
      reference: result,
      removals: [],
      blame: {
        excess: 0.5,
        isProfileToBlame: true,
        isRigTroubled: true,
        findings: evidence.map(({ finding }) => finding),
      },
    },
    evidence,
    feel: isComplete ? { rider, rides: [...rides], words: [...words] } : null,
    tried: isComplete
      ? {
          remedies,
          counts: { ofOne: remedies.length, ofTwo: 0 },
          verdict: { kind: 'one change helps', limits: [] },
          ways: [],
        }
      : null,
  };
}

/** The state with the question asked of the row under the cursor, and answered. */
export function answeredWhy(state: BenchState, unusual?: Unusual): BenchState {
  const asked = press(state, { name: 'y', text: 'y' });
  return withLooks(explained(asked, asked.why!.plan, { answer: answerFor(asked, unusual) }));
}
