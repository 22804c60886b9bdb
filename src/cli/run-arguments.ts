/**
 * Arguments that several commands take: lists of names, seeds, charges, weights, solver and colours. What is not understood is
 * told at once with what would have been.
 */
import { availableParallelism } from 'node:os';
import { InvalidArgumentError, Option } from 'commander';
import { COST_NAMES, weightsWith, type CostName, type Weights } from '../measure/scales.js';
import { chargesText, OWN_CHARGE_WORD } from '../quantity/charges-text.js';
import { suggestion } from '../quantity/suggestion.js';
import {
  BACKGROUND_FLAGS,
  backgroundOf,
  COLOUR_FLAGS,
  colourMode,
  createPaint,
  type BackgroundFlag,
  type ColourFlag,
  type Paint,
} from '../show/colour.js';
import { SYMBOL_SETS, type SymbolSet } from '../show/glyphs.js';
import { SOLVERS } from '../simulate/run.js';
import { ALL, type Selection } from '../tasks/select.js';

/** In which cells a command runs profiles, as it was typed. */
export interface CellFlags {
  board?: string;
  rider?: string[];
  scenarios?: string[];
  charge?: (number | null)[];
  seeds?: number[];
  weights?: Weights;
}

/** The cells that were asked for; charges [%] that are not given are the usual ones of the command. */
export function selectedCells(
  flags: CellFlags,
  usualCharges: readonly (number | null)[],
): Omit<Selection, 'profiles' | 'solver'> {
  return {
    board: flags.board,
    riders: flags.rider?.includes(ALL) ? null : flags.rider,
    scenarios: flags.scenarios ?? null,
    charges: flags.charge ?? [...usualCharges],
    seeds: flags.seeds ?? [1],
    weights: flags.weights ?? weightsWith(),
  };
}

/** Names divided by commas. */
export function parseNames(text: string): string[] {
  const names = text.split(',').map((name) => name.trim());
  if (names.some((name) => name === '')) throw new InvalidArgumentError('Expected names divided by commas.');
  return names;
}

/** A whole number between two others. */
export function wholeNumber(text: string, { least, most }: { least: number; most: number }): number {
  const number = Number(text);
  if (!/^\d+$/.test(text.trim()) || number < least || number > most) {
    throw new InvalidArgumentError(`Expected a whole number from ${least} to ${most}.`);
  }
  return number;
}

/** The number of a thing in a list, counted from 1. */
export function parseCount(text: string): number {
  return wholeNumber(text, { least: 1, most: 1000 });
}

/** So many seeds, counted from 1. */
export function parseSeedCount(text: string): number[] {
  return Array.from({ length: wholeNumber(text, { least: 1, most: 1000 }) }, (_, index) => index + 1);
}

/** One seed. */
export function parseSeed(text: string): number {
  return wholeNumber(text, { least: 0, most: 2 ** 31 - 1 });
}

/** Threads to compute with, the main one counted. */
export function parseThreads(text: string): number {
  return wholeNumber(text, { least: 1, most: 256 });
}

/** A state of charge, %; null for the scenario's own. */
export function parseCharge(text: string): number | null {
  const charge = Number(text);
  if (text.trim() === OWN_CHARGE_WORD) return null;
  if (text.trim() === '' || !(charge >= 1 && charge <= 100)) {
    throw new InvalidArgumentError(
      `Expected a state of charge from 1 to 100 %, or ${OWN_CHARGE_WORD} for the scenario's own.`,
    );
  }
  return charge;
}

/** What the option for several states of charge says of itself; `usual` are those where it is left out. */
export function chargesHelp(usual: readonly (number | null)[] = [null]): string {
  return `states of charge, divided by commas, ${OWN_CHARGE_WORD} for each scenario's own; left out: ${chargesText(usual)}`;
}

/** States of charge divided by commas, each once, %; null for each scenario's own. */
export function parseCharges(text: string): (number | null)[] {
  return [...new Set(text.split(',').map(parseCharge))];
}

/** Weights such as `settling=3,overshoot=0`. */
export function parseWeights(text: string): Weights {
  const overrides: Partial<Record<CostName, number>> = {};
  for (const part of text.split(',')) {
    const [name = '', value = ''] = part.split('=').map((piece) => piece.trim());
    const known = COST_NAMES.find((cost) => cost === name);
    if (known === undefined) {
      const near = suggestion(name, COST_NAMES);
      const hint = near === undefined ? '' : ` Did you mean ${near}?`;
      throw new InvalidArgumentError(`Expected name=number with a name of ${COST_NAMES.join(', ')}.${hint}`);
    }
    const weight = Number(value);
    if (value === '' || !(weight >= 0 && weight <= 1e6)) {
      throw new InvalidArgumentError(`Expected a number from 0 to 1000000 as the weight of ${known}.`);
    }
    overrides[known] = weight;
  }
  const weights = weightsWith(overrides);
  if (Object.values(weights).every((weight) => weight === 0)) {
    throw new InvalidArgumentError('Expected at least one weight above 0.');
  }
  return weights;
}

/** The option that chooses the solver. */
export function solverOption(otherwise: (typeof SOLVERS)[number]): Option {
  return new Option('--solver <solver>', 'fixed: one Runge-Kutta step a tick; reference: odex')
    .choices(SOLVERS)
    .default(otherwise);
}

/** What the options about drawing were given. */
export interface DrawingFlags {
  color: ColourFlag;
  background: BackgroundFlag;
  symbols: SymbolSet;
}

/** The options that say how things are drawn. */
export function drawingOptions(): { colour: Option; background: Option; symbols: Option } {
  return {
    colour: new Option('--color <when>', 'colours in the output').choices(COLOUR_FLAGS).default('auto'),
    background: new Option('--background <shade>', "the terminal's own background; auto reads COLORFGBG")
      .choices(BACKGROUND_FLAGS)
      .default('auto'),
    symbols: new Option('--symbols <set>', 'characters to draw with').choices(SYMBOL_SETS).default('braille'),
  };
}

/** The paint for the standard output. */
export function paintFor({ color, background }: Pick<DrawingFlags, 'color' | 'background'>): Paint {
  const { env } = process;
  const mode = colourMode({ env, isTTY: process.stdout.isTTY === true, flag: color });
  return createPaint(mode, backgroundOf(env, background));
}

/** Threads that the machine has for a computation. */
export function threadsOfMachine(): number {
  return availableParallelism();
}
