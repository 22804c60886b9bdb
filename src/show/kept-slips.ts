/**
 * Which numbers of a kept profile are dangerous to get wrong? Sentences about what happens in the simulation when one comes onto the
 * board wrongly, and about what the simulation cannot see of it.
 */
import { CHANCE_SCORE_RATIO } from '../measure/scales.js';
import { SLIPS, type KeptFile, type Slip } from '../quantity/kept-file.js';
import { PROFILE_FIELDS } from '../quantity/profile-fields.js';
import { endsText, numberLabel } from './kept-sentences.js';
import { timeText } from './quantities.js';

const SLIP_TEXTS: Readonly<Record<Slip, string>> = {
  'a tenth less': 'a tenth too small',
  'a tenth more': 'a tenth too large',
  'first digit one less': 'with its first digit one too small',
  'first digit one more': 'with its first digit one too large',
  'a tenth of it': 'with its decimal point one place too far left',
  'ten times it': 'with its decimal point one place too far right',
  'the other sign': 'with the other sign',
};

type KeptSlip = KeptFile['slips'][number];

/** Orders slips, the most dangerous first: most falls more than without, then the soonest fall, then the score. */
export function byDanger(a: KeptSlip, b: KeptSlip): number {
  return (
    b.moreFailures - a.moreFailures ||
    (a.soonestS ?? Number.MAX_VALUE) - (b.soonestS ?? Number.MAX_VALUE) ||
    b.scoreRatio - a.scoreRatio
  );
}

/** The worst slip of each number, the number first that is most dangerous to get wrong. */
export function worstSlips({ slips }: Pick<KeptFile, 'slips'>): KeptSlip[] {
  const sorted = slips.toSorted(byDanger);
  return sorted.filter(({ key }, index) => sorted.findIndex((other) => other.key === key) === index);
}

/** One sentence a number, the most dangerous first, for so many of them at most: what its worst slip does, and the smallest that harms. */
export function slipSentences(kept: Pick<KeptFile, 'slips'>, most: number): string[] {
  return sentencesOf(kept, { most, tell: slipSentence, rigid: RIGID_FRAME });
}

/** The same in as few words as a card has room for. */
export function shortSlipSentences(kept: Pick<KeptFile, 'slips'>, most: number): string[] {
  return sentencesOf(kept, { most, tell: shortSlipSentence, rigid: SHORT_RIGID_FRAME });
}

/** How many slips are told, and how. */
interface Telling {
  most: number;
  tell: (slip: KeptSlip, slips: readonly KeptSlip[]) => string;
  rigid: string;
}

function sentencesOf(kept: Pick<KeptFile, 'slips'>, { most, tell, rigid }: Telling): string[] {
  const { slips } = kept;
  if (slips.length === 0) return ['No slips were tried.'];
  const felling = worstSlips(kept).filter(({ moreFailures }) => moreFailures > 0);
  const costly = worstSlips(kept).filter(
    ({ moreFailures, scoreRatio }) => moreFailures <= 0 && scoreRatio > CHANCE_SCORE_RATIO,
  );
  const told = [...felling, ...costly].slice(0, most).map((slip) => tell(slip, slips));
  const none = felling.length > 0 ? [] : ['No slip that was tried made a run fall that did not before.'];
  return [...none, ...told, ...(slips.some(isHighGainThatHolds) ? [rigid] : [])];
}

/** What the simulation cannot see of gains that are too high. */
const RIGID_FRAME =
  'That a gain too high fells no more runs is no leave to type it: a real frame bends and can shake with it, this one is rigid.';

const SHORT_RIGID_FRAME = 'Too high a gain can shake a real frame; the simulated one is rigid.';

const isHighGainThatHolds = ({ key, slip, moreFailures }: KeptSlip) =>
  moreFailures <= 0 &&
  (slip === 'ten times it' || slip === 'first digit one more') &&
  PROFILE_FIELDS.some((field) => field.key === key && field.path[0] === 'gains');

function slipSentence(slip: KeptSlip, slips: readonly KeptSlip[]): string {
  const { moreFailures, soonestS, ending } = slip;
  const start = `${capitalised(numberLabel(slip.key))} ${slipText(slip)}`;
  if (moreFailures <= 0) return `${start}: ${costText(slip)}.`;
  const soonest = soonestS === null ? '' : `; the soonest ${endsText(ending)} at ${timeText(soonestS)}`;
  const smallest = smallestHarm(slip, slips);
  const already = smallest === null ? '' : `; more fall already ${slipText(smallest)}`;
  return `${start}: ${fallsText(slip)}${soonest}${already}.`;
}

function shortSlipSentence(slip: KeptSlip, slips: readonly KeptSlip[]): string {
  const { moreFailures, soonestS } = slip;
  const start = `${capitalised(numberLabel(slip.key))} ${slipText(slip)}`;
  if (moreFailures <= 0) return `${start}: ${costText(slip)}.`;
  const falls = slip.runs > 1 && slip.failures === slip.runs ? `all ${slip.runs} runs fall` : fallsText(slip);
  const soonest = soonestS === null ? '' : `, from ${timeText(soonestS)} on`;
  const smallest = smallestHarm(slip, slips);
  const already = smallest === null ? '' : `; more fall at ${valueText(smallest)} too`;
  return `${start}: ${falls}${soonest}${already}.`;
}

const capitalised = (label: string) => `${label.slice(0, 1).toUpperCase()}${label.slice(1)}`;

const costText = ({ scoreRatio }: KeptSlip) =>
  `no more falls, but costs ${scoreRatio.toFixed(1)} times as high`;

function fallsText({ failures, runs }: KeptSlip): string {
  return `${failures} of ${runs} run${runs === 1 ? '' : 's'} fall${runs === 1 || failures === 1 ? 's' : ''}`;
}

/** The slightest slip of the same number with which more runs fall; null where it is this one. */
function smallestHarm(slip: KeptSlip, slips: readonly KeptSlip[]): KeptSlip | null {
  const harmful = slips.filter(({ key, moreFailures }) => key === slip.key && moreFailures > 0);
  const [least] = harmful.toSorted((a, b) => SLIPS.indexOf(a.slip) - SLIPS.indexOf(b.slip));
  return least === undefined || least.slip === slip.slip ? null : least;
}

/** A slip in words after the name of a number: `a tenth too large (24.2 A/deg)`. */
export function slipText(slip: Pick<KeptSlip, 'slip' | 'value' | 'key'>): string {
  return `${SLIP_TEXTS[slip.slip]} (${valueText(slip)})`;
}

function valueText({ value, key }: Pick<KeptSlip, 'value' | 'key'>): string {
  const unit = PROFILE_FIELDS.find((field) => field.key === key)?.unit ?? '';
  return `${Number(value.toPrecision(6))} ${unit}`.trimEnd();
}
