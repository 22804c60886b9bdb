/**
 * How does a profile feel, in a sentence a word? The word with the numbers that made it, where they were found and what they
 * are held against.
 */
import type { FeelMeasure } from '../explain/feel-rules.js';
import type { FeelReason } from '../explain/feel.js';
import type { FeelWord } from '../quantity/feel-words.js';
import { hzText, paceText } from './margin-view.js';
import type { FeelView } from './why-view.js';

/** The sentences about the feel, the strongest word first. */
export function feelSentences({ rider, words }: FeelView): string[] {
  if (words.length === 0) return [`How it feels under ${rider} cannot be told: no ride was seen.`];
  return words.map(({ word, reasons }, index) => {
    const told = reasons.map((reason) => reasonText(reason, word)).join('; ');
    const start = index === 0 ? `Feels ${feltAs(word)} under ${rider}` : `Also ${feltAs(word)}`;
    return word === 'composed' ? `${start}: no limit is passed. Nearest: ${told}.` : `${start}: ${told}.`;
  });
}

/** The word as it stands after "feels". */
function feltAs(word: FeelWord): string {
  return word === 'rider-coupled wobble' ? `like a ${word}` : word;
}

/** What a measure is called in a sentence, and its digits. */
const MEASURES: Readonly<Record<FeelMeasure, { text: string; decimals: number }>> = {
  'tilt for a shift of weight': {
    text: 'the deck tilts under a twentieth of the weight shifted between the feet by',
    decimals: 1,
  },
  'largest pitch': { text: 'the largest tilt of a run is on the mean', decimals: 1 },
  'time to double': { text: 'a slow motion grows and doubles within', decimals: 2 },
  'time constant of coming level': { text: 'the deck comes level with a time constant of', decimals: 2 },
  'rise time': { text: 'a step of the deck takes', decimals: 2 },
  'damping ratio': { text: 'the damping ratio of a motion is', decimals: 2 },
  'sensitivity peak': { text: 'the sensitivity peak of the pitch loop is', decimals: 2 },
  'movement of the request': { text: 'the requested current moves by', decimals: 0 },
  'gyro noise in the request': { text: 'gyro noise in the request is', decimals: 2 },
};

function reasonText(reason: FeelReason, word: FeelWord): string {
  const { measure, value, unit, threshold, side } = reason;
  const { text, decimals } = MEASURES[measure];
  const shown = (number: number) => number.toFixed(decimals) + unitText(unit);
  const limit = `${word === 'composed' ? reason.word : word} ${side} ${threshold}${unitText(unit)}`;
  return `${text} ${shown(value)}${placeText(reason)} (${limit})`;
}

function unitText(unit: string): string {
  if (unit === '') return '';
  return unit === 'deg' ? '°' : ` ${unit}`;
}

function placeText({ speedKmPerH, scenario, frequencyHz }: FeelReason): string {
  const at = frequencyHz === null ? '' : ` at ${hzText(frequencyHz)}`;
  if (speedKmPerH !== null) {
    const pace = paceText({ speedKmPerH }, 'km/h');
    return `${at}${pace === 'standing' ? ', standing' : `, at ${pace}`}`;
  }
  return scenario === null ? at : `${at}, most in ${scenario}`;
}
