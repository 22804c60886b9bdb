/**
 * What is to be said of a kept profile? Its numbers with labels and units, and sentences about its margins and
 * its limits; the same on the shortlist, on the ride card and in the plan.
 */
import {
  EDGE_NAMES,
  edgeKinds,
  STATED_PUSH_NS,
  type EdgeKind,
  type EdgeName,
} from '../explain/edge-scenarios.js';
import type { KeptFile } from '../quantity/kept-file.js';
import { PROFILE_FIELDS, readField } from '../quantity/profile-fields.js';
import { RAD_PER_DEG } from '../quantity/units.js';
import { circumstances, edgeWords, sizeText } from './edge-words.js';
import { degreesText, delayText, factorText, paceText } from './margin-view.js';

/** A number as it is to be shown: `key` as the file has it, `value` as text without its unit. */
export interface KeptRow {
  label: string;
  key: string;
  value: string;
  unit: string;
  says: string;
}

const LABELS: Readonly<Record<string, string>> = {
  proportionalAPerDeg: 'proportional gain',
  rateAPerDegPerS: 'rate gain',
  integralAPerDegS: 'integral gain',
  progressiveStiffnessPerDeg: 'progressive stiffness',
  integralLimitA: 'integral limit',
  slewLimitAPerS: 'slew limit',
  driveCeilingA: 'drive ceiling',
  brakeCeilingA: 'brake ceiling',
  gyroLowPassHz: 'gyro low-pass',
  blendTimeS: 'blend time',
  restTrimNoseUpDeg: 'rest trim, nose up',
  engageRampS: 'engage ramp',
  filterTimeS: 'load feed-forward: filter time',
  currentShare: 'load feed-forward: current share',
  noseUpDegPerA: 'load feed-forward: nose up',
  belowPercent: 'headroom lift: begins below',
  upToDeg: 'headroom lift: up to',
  rateDegPerS: 'headroom lift: rate',
};

/** The label of a number of a profile in plain words; a key without one goes by itself. */
export function numberLabel(key: string): string {
  return LABELS[key] ?? key;
}

/** The numbers of a kept profile in the order of its file; what is left out there is left out. */
export function gainRows({ profile }: Pick<KeptFile, 'profile'>): KeptRow[] {
  return PROFILE_FIELDS.flatMap((field) => {
    const value = readField(profile, field);
    if (value === undefined) return [];
    const { key, unit, says } = field;
    return [{ label: numberLabel(key), key, value: String(value), unit, says }];
  });
}

/** The ceilings on current that hold with it [A]: the lower of the profile's and the board's, and the pack's. */
export function ceilingRows({ profile, rig }: Pick<KeptFile, 'profile' | 'rig'>): KeptRow[] {
  const { motor, pack } = rig.board;
  const { driveCeilingA, brakeCeilingA } = profile.shaping;
  const row = (key: string, own: number | undefined, boardA: number): KeptRow => ({
    label: numberLabel(key),
    key,
    value: String(Math.min(own ?? Infinity, boardA)),
    unit: 'A',
    says: own === undefined || own >= boardA ? "the board's" : `the profile's; the board's is ${boardA} A`,
  });
  const ofPack = (label: string, key: string, currentA: number): KeptRow => ({
    label,
    key,
    value: String(currentA),
    unit: 'A',
    says: "the pack's",
  });
  return [
    row('driveCeilingA', driveCeilingA, motor.driveCurrentA),
    row('brakeCeilingA', brakeCeilingA, motor.brakeCurrentA),
    ofPack('pack out', 'dischargeCurrentA', pack.dischargeCurrentA),
    ofPack('pack in', 'chargeCurrentA', pack.chargeCurrentA),
  ];
}

/** One sentence a margin: how much, under whom and at which speed it is least, and what spends it. */
export function marginSentencesOf({ margins }: Pick<KeptFile, 'margins'>): string[] {
  if (margins === null) return ['No margins: a ceiling cuts every steady ride that they are told from.'];
  type Margin = NonNullable<KeptFile['margins']>['disk'];
  const told = ({ value, rider, speedKmPerH }: Margin, text: (value: number) => string, none: string) =>
    value === null
      ? `${none}.`
      : `${text(value)} (least under ${rider}, ${paceText({ speedKmPerH }, 'km/h')}).`;
  return [
    told(margins.gainUpRatio, (by) => `All gains together may grow to ${factorText(by)}`, NO_UP),
    told(margins.gainDownRatio, (by) => `All gains together may shrink to ${factorText(by)}`, NO_DOWN),
    told(
      margins.delayMs,
      (ms) =>
        `The loop can spare ${delayText(ms / 1000)} of delay: a slower loop or one more filter spends it`,
      'No delay that loses the loop was found',
    ),
    told(
      margins.phaseDeg,
      (deg) => `Phase to spare: ${degreesText(deg * RAD_PER_DEG)}`,
      'No loss of phase that loses the loop was found',
    ),
    told(
      margins.disk,
      (value) => `Disk margin, gain and phase off together: ${value.toFixed(2)}, where 0 is lost`,
      'The disk margin is without end',
    ),
  ];
}

const NO_UP = 'No rise of all gains together that loses the loop was found';
const NO_DOWN = 'No fall of all gains together that loses the loop was found';

type Limit = KeptFile['limits'][number];

/** One sentence a limit: how far it holds out, under which rider and circumstances, and what comes then. */
export function limitSentences({
  limits,
  rig,
  margins,
}: Pick<KeptFile, 'limits' | 'rig' | 'margins'>): string[] {
  const kinds = edgeKinds(rig.board);
  return limits.map((limit) => `${limitSentence(limit, kinds)}${rattleText(limit, margins)}`);
}

/** That a delay is held out which the loop itself cannot spare: the ceilings then keep a board up that rattles. */
function rattleText({ what, unit, survived }: Limit, margins: KeptFile['margins']): string {
  const spareMs = margins?.delayMs.value ?? null;
  if (what !== RATTLING.what || unit !== RATTLING.unit || spareMs === null || (survived ?? 0) <= spareMs)
    return '';
  return ` With more than ${delayText(spareMs / 1000)} of it the loop rattles, and what holds out then holds out rattling.`;
}

const RATTLING = { what: 'extra delay', unit: 'ms' } as const satisfies { what: EdgeName; unit: string };

function limitSentence(limit: Limit, kinds: readonly EdgeKind[]): string {
  const { survived, failed, rider } = limit;
  const { thing, none, shape, where, size } = wordsOf(limit, kinds);
  const under = `${where}, under ${rider}`;
  const ends = endsText(limit.ending);
  if (failed === null) {
    return survived === null
      ? `${thing}: nothing is known, ${under}.`
      : `${thing}: holds out even at ${size(survived)}, the most that was tried, ${shape}${under}.`;
  }
  if (survived === null) return `${thing}: no limit to be found, for ${none} ${ends}, ${under}.`;
  const most = survived === 0 && limit.speedKmPerH !== null ? 'against none' : `up to ${size(survived)}`;
  return `${thing}: holds out ${most}, ${shape}${under}; at ${size(failed)} it ${ends}.`;
}

function wordsOf(limit: Limit, kinds: readonly EdgeKind[]) {
  const { what, unit, speedKmPerH, chargePercent, survived, failed } = limit;
  const name = EDGE_NAMES.find((known) => known === what);
  const kind = kinds.find((known) => known.name === name && known.unit === unit);
  if (name === undefined || kind === undefined) {
    const pace = speedKmPerH === null ? '' : `at ${speedKmPerH} km/h `;
    return {
      thing: `${what.slice(0, 1).toUpperCase()}${what.slice(1)}`,
      none: 'the ride without it',
      shape: '',
      where: `${pace}with the pack at ${chargePercent} %`,
      size: (value: number) => `${Number(value.toFixed(1))} ${unit}`,
    };
  }
  const found = { survived, failed, ending: null, largestTried: survived ?? 0, footLightFrom: null };
  const pushNS = MET_BY_PUSH.includes(name) ? STATED_PUSH_NS : null;
  const edge = { ...found, name, unit: kind.unit, speedKmPerH, chargePercent, pushNS };
  const { thing, none, shape = '' } = edgeWords(edge);
  return { thing, none, shape, where: circumstances(edge), size: (value: number) => sizeText(value, edge) };
}

/** Rides that meet the stated push, with more and more of something else. */
const MET_BY_PUSH: readonly EdgeName[] = ['extra delay', 'pack sag', 'speed'];

const ENDS: Readonly<Record<string, string>> = {
  'nose strike': 'ends in a nose strike',
  'tail strike': 'ends in a tail strike',
  'rider off': 'ends in the rider coming off',
  'solver stopped': 'ends in a stopped solver',
  'not met': 'stays up but never gets there',
};

/** How a run ended, after "it": `ends in a nose strike`. */
export function endsText(ending: string | null): string {
  if (ending === null) return 'does not end upright';
  return ENDS[ending] ?? `ends so: ${ending}`;
}
