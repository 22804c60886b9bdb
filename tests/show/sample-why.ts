/** An explanation with round numbers, for tests of what is shown. */
import type { Finding } from '../../src/explain/blame.js';
import type { Evidence } from '../../src/explain/evidence.js';
import { feelOf } from '../../src/explain/feel.js';
import type { Edit } from '../../src/explain/remedies.js';
import type { Effect, Remedy } from '../../src/explain/remedy-effect.js';
import { weightsWith } from '../../src/measure/scales.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import type { FeelView, WhyView } from '../../src/show/why-view.js';
import { cellOf, fallOf, resultOf } from '../explain/made-results.js';
import { sampleReport } from './sample-margins.js';

const RAD = Math.PI / 180;

/** A finding; what is given replaces the usual. */
export function sampleFinding(changes: Partial<Finding> = {}): Finding {
  return {
    cause: 'too little rate gain',
    family: 'profile',
    relief: 0.4,
    share: 0.63,
    failuresCured: 1,
    cured: ['hill/kim/80/1'],
    sureness: 'sure',
    rival: null,
    ...changes,
  };
}

/** A finding with what shows it: a fall on the hill that is none without it. */
export function sampleEvidence(changes: Partial<Evidence> = {}): Evidence {
  const finding = changes.finding ?? sampleFinding();
  return {
    finding,
    causes: [finding.cause],
    isUnderReference: false,
    number: {
      name: 'rate gain',
      value: 0.02,
      unit: 'A/(deg/s)',
      beside: { name: 'the reference set has', value: 1.18, unit: '' },
    },
    cell: resultOf(fallOf('hill', 3.2)).cells[0]!,
    without: resultOf(cellOf('hill', { reboundPercent: 12 })).cells[0]!,
    moment: { peak: { timeS: 3.2, speedMPerS: 5, pitchRad: 15 * RAD }, firstCut: null },
    ...changes,
  };
}

/** A feel told from the sample report, the deck coming level without delay. */
export function sampleFeel(report: Parameters<typeof sampleReport>[0] = {}): FeelView {
  const usual = { deckStiffnessNmPerDeg: { at01Hz: 9, at1Hz: 11.5 }, ...report };
  const rides = [0, 10, 20].map((speedKmPerH) => ({ speedKmPerH, report: sampleReport(usual) }));
  return { rider: 'kim', rides, words: feelOf({ rides, cells: [], footShiftNm: 19 }) };
}

/** An edit of the rate gain, unless something else is given. */
export function sampleEdit(changes: Partial<Edit> = {}): Edit {
  return { path: ['gains', 'rateAPerDegPerS'], unit: 'A/(deg/s)', from: 0.02, to: 1.2, ...changes };
}

/** A change that was tried. */
export function sampleRemedy(effect: Partial<Effect> = {}, edits: Edit[] = [sampleEdit()]): Remedy {
  return {
    causes: ['too little rate gain'],
    edits,
    profile: profileSchema.parse({ summary: 'x', gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1 } }),
    helps: true,
    effect: {
      failuresBefore: 1,
      failuresAfter: 0,
      scoreBefore: 2.51,
      scoreAfter: 0.44,
      cured: [],
      newlyFailed: [],
      failing: [],
      better: [{ name: 'settling', unit: 's', before: 4.09, after: 0.59, costChange: -0.2 }],
      worse: [{ name: 'command-activity', unit: 'A/s', before: 50, after: 71, costChange: 0.01 }],
      ...effect,
    },
  };
}

/** An explanation of a profile that falls on the hill. */
export function sampleWhy(changes: Partial<WhyView> = {}): WhyView {
  return {
    profile: 'satin',
    board: 'otter',
    asked: { profile: 'satin', board: null, cells: [] },
    riders: ['kim'],
    isComplete: true,
    weights: weightsWith(),
    result: resultOf(fallOf('hill', 3.2), cellOf('kerb', { reboundPercent: 40 })),
    reference: resultOf(cellOf('hill', { reboundPercent: 12 }), cellOf('kerb')),
    blame: { excess: 0.4, isProfileToBlame: true, isRigTroubled: false },
    suspects: 5,
    ownCharges: { hill: 80, kerb: 80 },
    findings: [sampleEvidence()],
    feel: sampleFeel(),
    tried: {
      remedies: [sampleRemedy()],
      counts: { ofOne: 9, ofTwo: 3 },
      verdict: { kind: 'one change helps', limits: [] },
      ways: [],
    },
    ...changes,
  };
}
