/**
 * Did it feel as the simulation promised? The ratings of the rides beside the promised words, what a disagreement means, and which
 * command looks into it next.
 */
import { chargesText } from '../quantity/charges-text.js';
import { FEEL_WORDS, feltKeyOf, type FeelWord } from '../quantity/feel-words.js';
import type { KeptFile } from '../quantity/kept-file.js';
import { listed } from './margin-view.js';
import { isCountedFromOne } from './card-again.js';
import { explainCommand } from './why-sentences.js';

/** A word with the mean of its ratings, from 1 not at all to 5 very, and how many rides rated it. */
export interface FeltMean {
  word: FeelWord;
  mean: number;
  count: number;
}

/** The mean rating of every word that was rated, the strongest first. */
export function feltMeans(rides: KeptFile['rides']): FeltMean[] {
  return FEEL_WORDS.flatMap((word): FeltMean[] => {
    const ratings = rides.flatMap(({ felt }) => felt[feltKeyOf(word)] ?? []);
    if (ratings.length === 0) return [];
    const mean = ratings.reduce((sum, rating) => sum + rating, 0) / ratings.length;
    return [{ word, mean, count: ratings.length }];
  }).toSorted((a, b) => b.mean - a.mean);
}

/** A mean rating: whole where it is. */
export function ratingText(mean: number): string {
  return Number(mean.toFixed(1)).toString();
}

/** From this rating on a word was felt, and up to that one it was not (ours). */
const FELT_FROM = 3.5;
const NOT_FELT_UP_TO = 2.5;

/** Words that were felt though not promised, and promised ones that were not felt. */
export function disagreements({ feel, rides }: Pick<KeptFile, 'feel' | 'rides'>): FeltMean[] {
  return feltMeans(rides).filter(({ word, mean }) =>
    feel.words.includes(word) ? mean <= NOT_FELT_UP_TO : mean >= FELT_FROM,
  );
}

/** Where the numbers of a rig are to be looked at first, for a word that was felt otherwise than promised; the rules of the words say why. */
const LOOK_AT: Readonly<Record<FeelWord, string>> = {
  loose:
    "whether the proportional gain came over as written, the motor's torque constant, the rider's weight and stance",
  sluggish: "whether the gains came over as written, the deck's inertia, the motor's torque constant",
  composed: 'whether the rides were like the scenarios it was proven in',
  stiff:
    "whether the proportional gain came over as written, the motor's torque constant, the rider's weight and stance",
  twitchy: "the loop's delay and rate, the lag of the current, the deck's inertia",
  buzzy: "the noise of the gyro, the loop's rate, whether the gyro low-pass came over as written",
  'rider-coupled wobble': "the rider's own delay, stiffness and damping",
};

/** The promised words as one text. */
export function promisedText({ words }: KeptFile['feel']): string {
  return words.length === 0 ? 'nothing' : listed(words);
}

/** What the ratings say beside what was promised, and what to do next; nothing as long as nothing was rated. */
export function feltSentences(kept: Pick<KeptFile, 'feel' | 'rides' | 'origin' | 'rig' | 'cells'>): string[] {
  const means = feltMeans(kept.rides);
  if (means.length === 0) return [];
  const promised = promisedText(kept.feel);
  const told = means.map(({ word, mean }) => `${word} ${ratingText(mean)}`).join(', ');
  const rides = kept.rides.filter(({ felt }) => Object.keys(felt).length > 0).length;
  const start = `Promised ${promised}, felt ${told}${rides > 1 ? ` (means of ${rides} rides)` : ''}, of 5.`;
  const others = disagreements(kept);
  if (others.length === 0) return [`${start} That agrees.`];
  return [
    `${start} ${others.map((other) => meaning(other, kept.feel)).join(' ')}`,
    `Look first at ${[...new Set(others.map(({ word }) => LOOK_AT[word]))].join('; then at ')}. ` +
      'What the files of the board and the rider say may not be what is on the road, or the rides were others than those it was proven in.',
    `What pulls the simulated feel this way or that, of ${kept.origin.from} as its file is now: ${explainKept(kept)}`,
  ];
}

function meaning({ word, mean }: FeltMean, feel: KeptFile['feel']): string {
  return feel.words.includes(word)
    ? `It was to be ${word}, and hardly was (${ratingText(mean)}).`
    : `It was felt to be ${word} (${ratingText(mean)}), which the simulation did not see.`;
}

/** More letters of scenarios than these are no line to copy from a terminal: without them it is explained over all (ours). */
const MOST_LETTERS = 60;

/** The command that explains the profile that was kept, where it was proven; over all scenarios where those are many. */
export function explainKept(kept: Pick<KeptFile, 'origin' | 'rig' | 'feel' | 'cells'>): string {
  const { origin, rig, feel, cells } = kept;
  const { scenarios, chargesPercent, seeds } = cells;
  const names = scenarios.join(',');
  const isOwnCharge = chargesPercent.every((charge) => charge === null);
  const words = [
    '--rider',
    feel.rider,
    ...(names.length > MOST_LETTERS ? [] : ['--scenarios', names]),
    ...(isOwnCharge ? [] : ['--charge', chargesText(chargesPercent)]),
    ...(seeds.length === 1 || !isCountedFromOne(seeds) ? [] : ['--seeds', String(seeds.length)]),
  ];
  return explainCommand({ profile: origin.from, board: rig.boardName, cells: words }, []);
}
