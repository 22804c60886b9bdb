/**
 * What stands on the ride card of a kept profile? Its numbers with their hash, and short parts in the order of the card, as data:
 * text and pictures lay the same words out.
 */
import type { KeptFile } from '../quantity/kept-file.js';
import { againText } from './card-again.js';
import { liftSentence, limitsSentences } from './card-limits.js';
import { CAUTIONS } from './cautions.js';
import { ceilingRows, gainRows, type KeptRow } from './kept-sentences.js';
import { shortSlipSentences } from './kept-slips.js';
import { delayText, factorText, listed } from './margin-view.js';
import { plainText } from './plain-text.js';

/**
 * A part of the card: a short label, one text, and the rows that it keeps where the page is short of room. Parts that yield first
 * are cut down to these before one that yields last loses any; one that never yields is always whole.
 */
export interface CardPart {
  label: string;
  text: string;
  leastRows: number;
  yields: 'first' | 'last' | 'never';
}

/** What stands on a card. `numbers` are those of the profile's file, `hash` is theirs, `feel` and `parts` go below them. */
export interface RideCard {
  name: string;
  board: string;
  provenOn: string;
  version: string;
  numbers: KeptRow[];
  hash: string;
  feel: CardPart;
  parts: CardPart[];
}

/** Weak points, and numbers that are dangerous to get wrong, that a card has room for. */
const MOST_WEAK_POINTS = 3;
const MOST_SLIPS = 2;

/** The ride card of a kept profile. */
export function rideCard(name: string, kept: KeptFile): RideCard {
  const { origin, rig, numbers } = kept;
  return {
    name,
    board: rig.boardName,
    provenOn: origin.on.slice(0, 10),
    version: origin.underfoot,
    numbers: gainRows(kept),
    hash: numbers,
    feel: { label: 'feels', text: feelText(kept), leastRows: 1, yields: 'first' },
    parts: partsOf(name, kept).map((part) => ({ ...part, text: plainText(part.text) })),
  };
}

function partsOf(name: string, kept: KeptFile): CardPart[] {
  const part =
    (yields: CardPart['yields'], leastRows = 1) =>
    (label: string, text: string): CardPart => ({
      label,
      text,
      leastRows,
      yields,
    });
  const [never, last, first] = [part('never'), part('last'), part('first')];
  const many = (label: string, texts: readonly string[], made = first) =>
    texts.map((text, index) => made(index === 0 ? label : '', text));
  const weakest = kept.weakest.slice(0, MOST_WEAK_POINTS).map((point) => weakText(kept, point));
  return [
    never('CAUTION', CAUTIONS.join(' ')),
    last('ceilings', ceilingsText(kept)),
    last('lift', liftSentence(kept.profile)),
    part('first', 2)('riders', ridersText(kept)),
    first('not for', notForText(kept)),
    ...many('held to', limitsSentences(kept), part('first', 2)),
    first('margins', marginsText(kept)),
    ...many(
      'weakest',
      weakest.map((text, index) => `${index + 1}. ${text}`),
    ),
    ...many('typing', shortSlipSentences(kept, MOST_SLIPS)),
    ...many('note', noteTexts(kept)),
    last('again', againText(name, kept)),
  ];
}

function feelText({ feel, profile }: KeptFile): string {
  const words = feel.words.length === 0 ? 'no word for it' : listed(feel.words);
  return plainText(`${words}, simulated under ${feel.rider}. ${profile.summary.trim()}`);
}

function ceilingsText(kept: KeptFile): string {
  const told = ceilingRows(kept).map(({ label, value, unit, says }) => {
    const whose = label.startsWith('pack') ? '' : ` (${says.replace(/^the |(?<=; )the /g, '')})`;
    return `${label.replace(' ceiling', '')} ${value} ${unit}${whose}`;
  });
  return `${told.join(', ')}.`;
}

/** `55 to 100`, or one number where both are the same. */
function rangeText(values: readonly number[]): string {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return least === most ? String(least) : `${least} to ${most}`;
}

function ridersText({ rig }: KeptFile): string {
  const masses = rig.riders.map(({ rider }) => Number(rider.body.massKg.toFixed(1)));
  const delays = rangeText(rig.riders.map(({ rider }) => Number(rider.balance.delayS.toFixed(3))));
  const names = rig.riders.map(({ name }, index) => `${name} ${masses[index]}`);
  return (
    `simulated under ${rangeText(masses)} kg and corrections ${delays} s late (${names.join(', ')} kg); ` +
    'under nobody else.'
  );
}

function notForText({ figures, cells }: KeptFile): string {
  const { failures, notFor } = figures;
  if (failures === 0) return `none of these fell in ${cells.count} runs; others were not tried.`;
  const falls = `${failures} of ${cells.count} runs end in a fall`;
  return notFor.length === 0
    ? `nobody of these by name, but ${falls}.`
    : `${falls}, all under ${listed(notFor)}, who should not ride it.`;
}

function marginsText({ margins }: KeptFile): string {
  if (margins === null) return 'none: the loop holds by itself on no steady ride.';
  const { gainUpRatio, gainDownRatio, delayMs } = margins;
  const told = (value: number | null, text: (value: number) => string) =>
    value === null ? 'without end' : text(value);
  return (
    `all gains ${told(gainDownRatio.value, factorText)} to ${told(gainUpRatio.value, factorText)} together; ` +
    `delay ${told(delayMs.value, (ms) => `${delayText(ms / 1000)} more`)}.`
  );
}

function weakText({ cells }: KeptFile, { says, seed }: KeptFile['weakest'][number]): string {
  const chance = cells.seeds.length === 1 ? '' : ` (seed ${seed})`;
  return `${says.trim().replace(/\.$/, '')}${chance}.`;
}

/** What its rider says of it: the note, and how the last ride felt. */
function noteTexts({ note, rides }: KeptFile): string[] {
  const last = rides.toSorted((a, b) => (a.on < b.on ? -1 : Number(a.on > b.on))).at(-1);
  const felt = Object.entries(last?.felt ?? {}).filter(([, rating]) => rating !== undefined);
  const rated = felt.map(([word, rating]) => `${word} ${rating}`).join(', ');
  const ride =
    last === undefined
      ? ''
      : [`ridden ${last.on}`, rated === '' ? '' : `${rated} (1 not at all, 5 very)`, last.note.trim()]
          .filter((text) => text !== '')
          .join(': ');
  return [note.trim(), ride].filter((text) => text !== '');
}
