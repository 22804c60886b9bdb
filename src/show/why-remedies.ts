/**
 * What was tried, and what did it do? One paragraph a change: what it makes fall comes first, then falls, score, what gets
 * better and what gets worse; and the verdict over all changes.
 */
import type { Evidence, Moment } from '../explain/evidence.js';
import type { Edit } from '../explain/remedies.js';
import type { Effect, Remedy, TermChange, Verdict } from '../explain/remedy-effect.js';
import type { CostName } from '../measure/scales.js';
import type { RankedCell } from '../measure/profile-result.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import { listed } from './margin-view.js';
import { speedText } from './quantities.js';
import { capital, cellName, plainNumber, scoreText } from './why-sentences.js';
import type { RemediesView } from './why-view.js';
import { waysSentences } from './why-ways.js';
import { causeWords } from './why-words.js';

/** Words for the keys of a profile that remedies change. */
const KEY_WORDS: Readonly<Record<string, string>> = {
  proportionalAPerDeg: 'proportional gain',
  rateAPerDegPerS: 'rate gain',
  integralAPerDegS: 'integral gain',
  integralLimitA: 'limit of the integral',
  gyroLowPassHz: 'gyro low-pass',
  blendTimeS: 'blend time',
  slewLimitAPerS: 'slew limit',
  progressiveStiffnessPerDeg: 'progressive stiffness',
  driveCeilingA: 'drive ceiling',
  brakeCeilingA: 'brake ceiling',
  restTrimNoseUpDeg: 'trim, nose up,',
};

/** What a change changes: `rate gain from 0.02 to 1.1 A/(deg/s)`. */
export function editsText(edits: readonly Edit[]): string {
  const sections = [...new Set(edits.map(({ path }) => path.slice(0, -1).join('.')))];
  return sections
    .flatMap((section) => {
      const own = edits.filter(({ path }) => path.slice(0, -1).join('.') === section);
      if (section === 'shaping.headroomLift') return [liftText(own)];
      return own.map(editText);
    })
    .join(', and ');
}

function editText({ path, unit, from, to }: Edit): string {
  const key = path.at(-1)!;
  const section = path.at(-2) === 'loadFeedForward' ? 'load feed-forward ' : '';
  const name = section + (KEY_WORDS[key] ?? key);
  const withUnit = (value: number) => `${plainNumber(value)}${unit === '' ? '' : ` ${unit}`}`;
  if (to === null) return `without ${name} (was ${withUnit(from ?? 0)})`;
  return from === null ? `${name} ${withUnit(to)}` : `${name} from ${plainNumber(from)} to ${withUnit(to)}`;
}

function liftText(edits: readonly Edit[]): string {
  const value = (key: string) => {
    const to = edits.find(({ path }) => path.at(-1) === key)?.to;
    return to === null || to === undefined ? null : plainNumber(to);
  };
  const [below, rise, rate] = ['belowPercent', 'upToDeg', 'rateDegPerS'].map(value);
  const parts = [
    ...(below === null ? [] : [`below ${below} % headroom`]),
    ...(rise === null ? [] : [`up to ${rise}°`]),
    ...(rate === null ? [] : [`${rate} deg/s`]),
  ];
  return `headroom lift ${parts.join(', ')}`;
}

/** What a change achieves, as profiles are ranked: `falls from 1 to 0, score from 2.51 to 0.44`. */
export function gainText({ failuresBefore, failuresAfter, scoreBefore, scoreAfter }: Effect): string {
  const falls =
    failuresBefore === failuresAfter
      ? `falls ${failuresAfter}`
      : `falls from ${failuresBefore} to ${failuresAfter}`;
  return `${falls}, score from ${scoreText(scoreBefore)} to ${scoreText(scoreAfter)}`;
}

/** The paragraph of a tried change, sentence by sentence. */
export function remedySentences({ edits, effect }: Remedy): string[] {
  const { cured, newlyFailed, better, worse } = effect;
  const newFalls =
    newlyFailed.length === 0
      ? ''
      : `${capital(failsText(newlyFailed.length))} that stood: ${namesOf(newlyFailed)}. `;
  return [
    `${newFalls}${capital(editsText(edits))}: ${gainText(effect)}.`,
    ...(cured.length === 0 ? [] : [`Stays up now: ${namesOf(cured)}.`]),
    ...termsSentence('Better', better),
    ...termsSentence('Worse', worse),
  ];
}

function failsText(count: number): string {
  return count === 1 ? 'makes a run fall' : `makes ${count} runs fall`;
}

/** Cells that are named; the others are counted. */
const NAMED_CELLS = 3;

function namesOf(cells: readonly RankedCell[]): string {
  const names = cells.slice(0, NAMED_CELLS).map(cellName);
  const others = cells.length - names.length;
  return listed(others === 0 ? names : [...names, `${others} more`]);
}

/** A term's words, the factor to the unit that it is shown in, and its digits. */
const TERMS: Readonly<Record<CostName, { text: string; factor: number; unit: string; decimals: number }>> = {
  overshoot: { text: 'overshoot', factor: 1, unit: ' %', decimals: 0 },
  settling: { text: 'settling', factor: 1, unit: ' s', decimals: 2 },
  saturation: { text: 'ticks cut', factor: 100, unit: ' %', decimals: 1 },
  'saturation-stretch': { text: 'longest cut', factor: 1000, unit: ' ms', decimals: 0 },
  'peak-pitch': { text: 'largest tilt', factor: DEG_PER_RAD, unit: '°', decimals: 1 },
  'lack-of-headroom': { text: 'headroom used at most', factor: 100, unit: ' %', decimals: 0 },
  'foot-light': { text: 'one foot light', factor: 1, unit: ' s', decimals: 2 },
  'pitch-rate-activity': { text: 'shiver above 3 Hz', factor: DEG_PER_RAD, unit: '°/s', decimals: 1 },
  'command-activity': { text: 'movement of the request', factor: 1, unit: ' A/s', decimals: 0 },
  'rider-torque': { text: "rider's torque", factor: 1, unit: ' Nm', decimals: 1 },
  'feet-acceleration': { text: 'feet vibration', factor: 1, unit: ' m/s2', decimals: 2 },
};

/** What a term of the cost is called. */
export function termName(name: CostName): string {
  return TERMS[name].text;
}

/** Terms with what they were and are; those that look the same after rounding are left out. */
function termsSentence(title: string, terms: readonly TermChange[]): string[] {
  const seen = terms.flatMap(({ name, before, after }) => {
    const { text, factor, unit, decimals } = TERMS[name];
    const [was, is] = [before, after].map((value) => (factor * value).toFixed(decimals));
    return was === is ? [] : [`${text} ${was} to ${is}${unit}`];
  });
  return seen.length === 0 ? [] : [`${title}: ${seen.join(', ')}.`];
}

/** What the limits of a machine or a person ask for, where no numbers in a profile help. */
const WAYS_OUT: Readonly<Record<string, string>> = {
  'voltage ceiling': 'more cells in series or a motor that turns faster per volt, or less speed',
  'low pack': 'less speed as the pack empties',
  'current ceiling': 'a stronger motor and controller, or less haste',
  'pack ceiling': 'a pack that may give and take more, or less haste',
  'loop delay': 'a quicker loop, or gains that ask less of it',
  'noise of the gyro': 'a quieter gyro or a softer mount for it',
};

/** The verdict: which kind of help there is, and what no numbers in a profile cure. */
export function verdictSentences(
  { verdict, counts, ways }: RemediesView,
  findings: readonly Evidence[],
): string[] {
  const limits = verdict.limits.flatMap(({ cause }) => {
    const moment = findings.find(({ finding }) => finding.cause === cause)?.moment ?? null;
    const simulated = ways.filter((one) => one.cause === cause).flatMap(waysSentences);
    return [limitSentence(cause, moment, simulated.length > 0), ...simulated];
  });
  return [kindSentence(verdict, counts), ...limits];
}

function kindSentence({ kind }: Verdict, { ofOne, ofTwo }: RemediesView['counts']): string {
  const pairs = ofTwo === 0 ? '' : ` and ${ofTwo} of two`;
  const count = `${ofOne} changes of one thing${pairs} were tried on every run`;
  if (kind === 'one change helps') return `${count}; the best first.`;
  if (kind === 'only two changes help') return `${count}. No single change helps; two together do.`;
  return `${count}. None helps; these came nearest.`;
}

function limitSentence(cause: string, moment: Moment | null, isSimulated: boolean): string {
  const title = causeWords(cause).title.toLowerCase();
  const wayOut = WAYS_OUT[cause];
  const none = 'no numbers in a profile that were tried cure it';
  const said = cause.endsWith('ceiling')
    ? `This is the hardware's limit: ${title} cuts; ${none}.`
    : `${capital(title)}: ${none}.`;
  const firstCut = cause === 'voltage ceiling' ? moment?.firstCut : null;
  const speed =
    firstCut?.ceiling === 'voltage' ? ` (it first cuts at ${speedText(firstCut.speedMPerS)})` : '';
  return wayOut === undefined || isSimulated ? said : `${said} What would: ${wayOut}${speed}.`;
}
