/**
 * Why does a profile cost what it costs, in words? One paragraph a finding: the cause with its number, how much goes with it,
 * the moment where it is seen best, what the linear view says of it, and the command that shows it again.
 */
import type { Finding } from '../explain/blame.js';
import type { CauseNumber } from '../explain/cause-number.js';
import type { Evidence, Instant } from '../explain/evidence.js';
import type { RankedCell } from '../measure/profile-result.js';
import { listed } from './margin-view.js';
import { pitchText, speedText, timeText } from './quantities.js';
import { linearSentence } from './why-linear.js';
import type { WhyView } from './why-view.js';
import { causeWords } from './why-words.js';
import { cellPhrase } from './worst-sentences.js';

/** How the profile fares, and against what it is held. */
export function standingSentences({ profile, riders, result, reference, isComplete }: WhyView): string[] {
  const { failures, score, cells } = result;
  const count = cells.length;
  const one = count === 1 ? 'the one run' : `all ${count} runs`;
  const some = failures === count ? `falls in ${one}` : `falls in ${failures} of ${count} runs`;
  const falls = failures === 0 ? `stays up in ${one}` : some;
  const what = isComplete ? '' : ', the worst; the others are still to come';
  const plain = `${reference.failures} ${reference.failures === 1 ? 'fall' : 'falls'}, score ${scoreText(reference.score)}`;
  return [
    `${profile} ${falls}${what}; score ${scoreText(score)}. ` +
      `A plain reference set, made for ${riders.length === 1 ? 'this rig' : 'the rig of each rider'}, comes to ${plain}.`,
  ];
}

/** A score, or a cost, with two digits that count. */
export function scoreText(score: number): string {
  return score.toFixed(2);
}

/** A number as short as it can be without losing what was typed. */
export function plainNumber(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** A number with its unit. */
export function plainQuantity(value: number, unit: string): string {
  return unit === '' ? plainNumber(value) : `${plainNumber(value)} ${unit}`;
}

/** The paragraph of a finding, sentence by sentence; the command is the last. */
export function findingSentences(view: WhyView, evidence: Evidence): string[] {
  // The linear view is of the profile, and says nothing of what is seen under the reference.
  const linear = evidence.isUnderReference
    ? null
    : linearSentence(evidence.causes[0]!, view.feel, evidence.cell.rider);
  return [
    causeSentence(evidence),
    reliefSentence(view, evidence),
    ...familySentences(evidence.finding),
    momentSentence(view, evidence),
    ...(linear === null ? [] : [linear]),
  ];
}

function causeSentence({ causes, finding, number }: Evidence): string {
  const [first, second] = causes.map(causeWords);
  const { title, does } = first!;
  const named = second === undefined ? title : `${title}, here one thing with ${lowerCase(second.title)}`;
  const rival =
    finding.rival === null
      ? ''
      : `Not sure: ${lowerCase(title)} or ${lowerCase(causeWords(finding.rival).title)}. `;
  return `${rival}${named}${number === null ? '' : ` (${numberText(number)})`}: ${does}.`;
}

function numberText({ name, value, unit, beside }: CauseNumber): string {
  const other = beside === null ? '' : `, ${beside.name} ${plainNumber(beside.value)}`;
  return `${name} ${plainQuantity(value, unit)}${other}`;
}

/** What goes with the cause, as far as it was simulated. */
function reliefSentence({ isComplete, result }: WhyView, evidence: Evidence): string {
  const { finding, isUnderReference, causes } = evidence;
  const { without } = causeWords(causes[0]!);
  const percent = `${Math.round(100 * finding.share)} %`;
  const cost =
    finding.family === 'profile'
      ? `${percent} of what the profile costs more than the reference set goes away`
      : `${percent} of the cost goes away`;
  const under = isUnderReference ? 'It costs under the reference set too: ' : '';
  const where = isComplete ? '' : ` in the ${result.cells.length} worst runs`;
  const head = capital(`${without}, ${cost}${where}${fallsText(finding.failuresCured)}.`);
  const rival =
    finding.rival === null
      ? ''
      : ` Taking away ${lowerCase(causeWords(finding.rival).title)} does nearly as much.`;
  return `${under}${under === '' ? head : lowerCase(head)}${rival}`;
}

function fallsText(count: number): string {
  if (count === 0) return '';
  const many = `${Math.abs(count)} ${Math.abs(count) === 1 ? 'fall' : 'falls'}`;
  return count > 0 ? `, and ${many} with it` : `, but there ${count === -1 ? 'is' : 'are'} ${many} more`;
}

/** What kind of thing it is, where no numbers in a profile are the cause. */
function familySentences({ family }: Finding): string[] {
  const said = {
    profile: null,
    loop: "It lies in the controller and its sensors, not in the profile's numbers.",
    power: 'It lies in motor and pack, not in the gains.',
    rider: 'It lies in the rider: a set of gains can only make room for it.',
    road: 'It lies in the road.',
  }[family];
  return said === null ? [] : [said];
}

function momentSentence({ weights }: WhyView, evidence: Evidence): string {
  const { cell, without, moment, finding, causes, isUnderReference } = evidence;
  const { peak, firstCut } = moment;
  const isCut = finding.family === 'power' && firstCut !== null;
  const at = isCut
    ? `the ${firstCut.ceiling} ceiling first cuts with the board ${instantText(firstCut)}; largest tilt: ${instantText(peak)}`
    : `largest tilt: ${instantText(peak)}`;
  return (
    `Seen best in ${cellName(cell)}: ${cellPhrase(cell, weights)}; ${at}. ` +
    `${capital(causeWords(causes[0]!).without)}${isUnderReference ? ', under the reference set' : ''}: ${cellPhrase(without, weights)}.`
  );
}

function instantText({ timeS, speedMPerS, pitchRad }: Instant): string {
  return `${pitchText(pitchRad)} at ${timeText(timeS)} and ${speedText(speedMPerS)}`;
}

/** A cell by what meets in it. */
export function cellName({ scenario, rider, seed }: RankedCell): string {
  return `${scenario} with ${rider}${seed === 1 ? '' : `, seed ${seed}`}`;
}

/** The command that runs a cell again. */
export function runCommand({ asked, ownCharges }: WhyView, cell: RankedCell): string {
  const { scenario, rider, chargePercent, seed } = cell;
  return [
    `underfoot run ${shellWord(asked.profile)} ${scenario} --rider ${rider}`,
    ...(asked.board === null ? [] : [`--board ${shellWord(asked.board)}`]),
    ...(chargePercent === ownCharges[scenario] ? [] : [`--charge ${chargePercent}`]),
    ...(seed === 1 ? [] : [`--seed ${seed}`]),
    '--solver fixed',
  ].join(' ');
}

/** The command that explains the same cells again, with more words at its end. */
export function explainCommand({ profile, board, cells }: WhyView['asked'], more: readonly string[]): string {
  const rig = board === null ? [] : ['--board', board];
  return ['underfoot', 'explain', profile, ...rig, ...cells, ...more].map(shellWord).join(' ');
}

/** A word that a shell takes as it is. */
export function shellWord(word: string): string {
  return /^[\w./,-]+$/.test(word) ? word : `'${word.replaceAll("'", String.raw`'\''`)}'`;
}

/** Share of what the profile costs too much from which a cause takes nearly all of it away. */
const NEARLY_ALL_SHARE = 0.8;

/** Says so where several causes each take nearly all away, being ways out of one trouble, and where none takes half of it. */
export function togetherSentences({ findings }: WhyView): string[] {
  const ways = findings.filter(
    ({ finding }) => finding.family === 'profile' && finding.share >= NEARLY_ALL_SHARE,
  );
  const names = listed(ways.map(({ causes }) => lowerCase(causeWords(causes[0]!).title)));
  const isPartOnly = findings.length > 0 && findings.every(({ finding }) => finding.share < HALF_SHARE);
  return [
    ...(ways.length < 2 ? [] : [`Any one of these by itself takes nearly all of it away: ${names}.`]),
    ...(isPartOnly ? ['Most of what it costs no single suspect explains.'] : []),
  ];
}

const HALF_SHARE = 0.5;

/** Says why nobody is named, and where the profile is weakest. */
export function blamelessSentences(view: WhyView): string[] {
  const { result, weights, isComplete } = view;
  const { worst, cells } = result;
  const scope = isComplete ? '' : ` in the ${cells.length} worst runs`;
  return [
    `${blamelessSentence(view, scope)} It is weakest in ${cellName(worst)}: ${cellPhrase(worst, weights)}.`,
  ];
}

function blamelessSentence({ blame, suspects, result, reference }: WhyView, scope: string): string {
  if (suspects === 0 && !blame.isProfileToBlame && !blame.isRigTroubled) {
    const beside = result.failures < reference.failures ? 'falls less often than' : 'costs no more than';
    return `Nobody is to blame${scope}: it ${beside} the reference set, and no run is in trouble.`;
  }
  if (blame.isProfileToBlame) {
    return (
      `Not explained${scope}: the profile costs ${scoreText(blame.excess)} more a run than the reference set, but of ` +
      `${suspects} suspects taken away one by one none takes a good part of it away.`
    );
  }
  return result.failures > 0
    ? `Not explained${scope}: of ${suspects} suspects taken away one by one none keeps what falls up.`
    : `Nobody is to blame${scope}: ${suspects} suspects were taken away one by one, and none changes much.`;
}

/** A text that begins with a capital. */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

function lowerCase(text: string): string {
  return text.slice(0, 1).toLowerCase() + text.slice(1);
}
