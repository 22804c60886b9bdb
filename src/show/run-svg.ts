/**
 * How does one run look as a picture? The panels of run-plot as one self-contained SVG: no scripts,
 * no outside fonts, light or dark as the reader's system prefers. Lines differ in dashes and not in
 * colour alone; the measured window is shaded.
 */
import { wrapped } from './fit-text.js';
import type { PlotMark, TimeSpan } from './plot-frame.js';
import type { SpeedUnit } from './quantities.js';
import {
  legend,
  markLines,
  markNames,
  nameRowCount,
  NAME_ROW_HEIGHT,
  timeAxis,
  windowShade,
} from './run-svg-marks.js';
import { cutRows, CUT_ROW_HEIGHT, CUT_ROWS_GAP, panelSvg } from './run-svg-panel.js';
import type { PanelBox } from './run-svg-panel.js';
import { outcomeText } from './run-sentences.js';
import { RUN_SVG_STYLE } from './run-svg-style.js';
import { ceilingsMet, measuredSpan, runMarks, runPanels, tapeSpan } from './run-view.js';
import type { RunPanel, RunView } from './run-view.js';
import { svgNumber, svgText } from './svg-text.js';

const WIDTH = 960;
const MARGIN = 24;
const GUTTER = 120;
const ROW_HEIGHT = 19;
const SENTENCE_CHARACTERS = 128;
const PANEL_HEIGHTS = { pitch: 190, current: 190, speed: 110 } as const;

/** What all panels need to be laid out. */
interface Page {
  view: RunView;
  span: TimeSpan;
  marks: readonly PlotMark[];
  window: TimeSpan | null;
}

/** One panel from `top` down, and where it ends. */
function placedPanel(
  panel: RunPanel,
  top: number,
  page: Page,
): { parts: string[]; box: PanelBox; bottom: number } {
  const { view, span, marks, window } = page;
  const sentence = wrapped(panel.sentence, SENTENCE_CHARACTERS);
  const box: PanelBox = {
    left: GUTTER,
    top: top + sentence.length * ROW_HEIGHT + 10,
    width: WIDTH - GUTTER - MARGIN,
    height: PANEL_HEIGHTS[panel.name],
    span,
  };
  if (panel.name === 'pitch') box.top += nameRowCount(marks, box) * NAME_ROW_HEIGHT;
  const ceilings = panel.name === 'current' ? ceilingsMet(view.tape) : [];
  const parts = [
    ...sentence.map((row, index) => textRow(row, top + 13 + index * ROW_HEIGHT)),
    ...(panel.name === 'pitch' ? markNames(marks, box) : []),
    ...windowShade(window, box),
    ...markLines(marks, box),
    ...panelSvg(panel, box),
    ...cutRows(view.tape, ceilings, box),
  ];
  const cutHeight = ceilings.length === 0 ? 0 : CUT_ROWS_GAP + ceilings.length * CUT_ROW_HEIGHT;
  return { parts, box, bottom: box.top + box.height + cutHeight };
}

/** A row of text at the left margin; `kind` names its class. */
function textRow(text: string, y: number, kind?: string): string {
  const named = kind === undefined ? '' : ` class="${kind}"`;
  return `<text${named} x="${MARGIN}" y="${svgNumber(y)}">${svgText(text)}</text>`;
}

/** The panels one below the other, the time axis and the legend; `height` is where they end. */
function body(view: RunView, speedUnit: SpeedUnit): { parts: string[]; sentences: string[]; height: number } {
  const span = tapeSpan(view.tape);
  if (span === null) return { parts: [textRow('Nothing was recorded.', 90)], sentences: [], height: 110 };
  const page: Page = { view, span, marks: runMarks(view), window: measuredSpan(view) };
  const panels = runPanels(view, speedUnit);
  const parts: string[] = [];
  let bottom = 60;
  for (const panel of panels) {
    const placed = placedPanel(panel, bottom + 20, page);
    parts.push(...placed.parts);
    if (panel.name === 'speed') parts.push(...timeAxis(placed.box));
    bottom = placed.bottom;
  }
  parts.push(...legend(GUTTER, bottom + 46, page.marks.length > 0));
  return { parts, sentences: panels.map(({ sentence }) => sentence), height: bottom + 68 };
}

/** One run as the text of an SVG file, 960 px wide; scales are those of the terminal's plot. */
export function runSvg(view: RunView, options: { speedUnit: SpeedUnit }): string {
  const { parts, sentences, height } = body(view, options.speedUnit);
  const outcome = outcomeText(view.outcome);
  const size = `width="${WIDTH}" height="${svgNumber(height)}" viewBox="0 0 ${WIDTH} ${svgNumber(height)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img">`,
    `<title>${svgText(`${view.title}: ${outcome}`)}</title>`,
    `<desc>${svgText(sentences.join(' '))}</desc>`,
    `<style>${RUN_SVG_STYLE}</style>`,
    `<rect class="paper" width="${WIDTH}" height="${svgNumber(height)}"/>`,
    textRow(view.title, 38, 'title'),
    textRow(outcome, 60, 'quiet'),
    ...parts,
    '</svg>',
    '',
  ].join('\n');
}
