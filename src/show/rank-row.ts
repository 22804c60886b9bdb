/**
 * What does a row of the ranked table say of one profile? A sign for each scenario and the few figures, as text.
 */
import { rowFigures, standingOf, type ProfileResult, type Standing } from '../measure/profile-result.js';
import type { Piece } from './cell-grid.js';
import type { StyleName } from './colour.js';
import { numberText } from './quantities.js';

/** The sign of each standing, told apart by shape; `ascii` for plain terminals. */
export const STANDING_SIGNS: Readonly<Record<Standing, { sign: string; ascii: string; style: StyleName }>> = {
  composed: { sign: '●', ascii: 'o', style: 'ok' },
  marginal: { sign: '◐', ascii: '!', style: 'warn' },
  failed: { sign: '✗', ascii: 'x', style: 'bad' },
};

/** The standings with their signs, in words: `● composed, ◐ marginal, ✗ failed`. */
export function standingLegend(ascii: boolean): string {
  return Object.entries(STANDING_SIGNS)
    .map(([standing, signs]) => `${ascii ? signs.ascii : signs.sign} ${standing}`)
    .join(', ');
}

/** One sign a scenario: how the profile stands there at its worst, as far as its cells are known; a dot where none is. */
export function stripPieces(
  { cells }: Pick<ProfileResult, 'cells'>,
  scenarios: readonly string[],
  ascii: boolean,
): Piece[] {
  return scenarios.map((scenario) => {
    const own = cells.filter((cell) => cell.scenario === scenario);
    if (own.length === 0) return { text: ascii ? '.' : '·', style: 'dim' };
    const { sign, ascii: plain, style } = STANDING_SIGNS[standingOf(own)];
    return { text: ascii ? plain : sign, style };
  });
}

/** The figures of a row with their units; a hyphen where there is none. */
export function figureTexts(profile: ProfileResult) {
  const figures = rowFigures(profile.cells);
  return {
    falls: `${profile.failures}/${profile.cells.length}`,
    score: numberText(profile.score, 'ratio'),
    overshoot: figures.overshootPercent === null ? '-' : `${figures.overshootPercent.toFixed(0)} %`,
    settling: settlingText(figures.settlingTimeS, figures.notSettledCount),
    cut: figures.saturationShare === null ? '-' : `${numberText(100 * figures.saturationShare, 'percent')} %`,
  };
}

/** A mean that holds runs which had not settled is a bound from below. */
function settlingText(settlingTimeS: number | null, notSettledCount: number): string {
  if (settlingTimeS === null) return '-';
  return `${notSettledCount > 0 ? '> ' : ''}${numberText(settlingTimeS, 'meanTimeS')} s`;
}
