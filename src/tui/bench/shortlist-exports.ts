/**
 * What is written to a file from the Shortlist screen? The ending of its name says it, and the view where an ending could mean more
 * than one thing.
 */
import { quoted } from '../../quantity/received.js';
import type { Checked } from '../../quantity/problem.js';
import type { ExportForm, ExportFormat } from '../../tasks/export.js';
import { chosenSheet, currentKept, previewNow, sheetProblem } from './shortlist-items.js';
import type { CarriedForm, ShortlistViewName } from './shortlist-state.js';
import type { BenchState } from './state.js';

const form = (of: ExportForm, format: ExportFormat | null = null): CarriedForm => ({
  kind: 'form',
  form: of,
  format,
});

/** What endings mean in every view. */
const OF_ENDING: Readonly<Record<string, CarriedForm>> = {
  txt: form('card', 'text'),
  svg: form('card', 'svg'),
  html: form('card', 'html'),
  htm: form('card', 'html'),
  json: form('json'),
  csv: form('csv'),
  h: form('c-header'),
};

/** What they mean in one. */
const OF_VIEW: Readonly<Record<ShortlistViewName, Readonly<Record<string, CarriedForm>>>> = {
  summary: {},
  card: {},
  sheet: { txt: { kind: 'sheet' } },
  plan: { txt: { kind: 'plan' } },
  qr: { txt: form('qr', 'text'), svg: form('qr', 'svg') },
};

/** What a file of this name is to hold, or what is wrong with that. */
export function carriedForm(state: BenchState, path: string): Checked<CarriedForm, string> {
  const { view } = state.shortlist;
  const ending = /[^/\\]\.([^./\\]+)$/.exec(path)?.[1]?.toLowerCase() ?? '';
  const found = OF_VIEW[view][ending] ?? OF_ENDING[ending];
  if (found === undefined) {
    const fault = `expected the name of a file that ends in .txt, .svg, .html, .json, .csv or .h, received ${quoted(path)}`;
    return { ok: false, faults: [fault] };
  }
  const off = found.kind === 'form' ? null : notThere(state, found.kind);
  return off === null ? { ok: true, value: found } : { ok: false, faults: [off] };
}

/** What a file holds, in words. */
export function carriedWords(carried: CarriedForm): string {
  if (carried.kind === 'form')
    return carried.form === 'qr' && carried.format === 'text'
      ? 'the text of its QR code'
      : FORM_WORDS[carried.form];
  return carried.kind === 'plan' ? 'the first-ride plan' : 'what to type, in the order of the sheet';
}

const FORM_WORDS: Readonly<Record<ExportForm, string>> = {
  card: 'the ride card',
  json: 'its numbers and what was proven',
  csv: 'its numbers as underfoot counts them',
  'c-header': 'its numbers as underfoot counts them',
  qr: 'its numbers as a QR code',
};

/** What endings mean in the view in front: `.txt the plan; .svg, .html the card; ...`. */
export function endingWords({ shortlist: { view } }: Pick<BenchState, 'shortlist'>): string {
  const own = {
    summary: '',
    card: '',
    sheet: '.txt what to type; ',
    plan: '.txt the plan; ',
    qr: '.svg the code, .txt its text; ',
  };
  const cards = {
    summary: '.txt, .svg, .html',
    card: '.txt, .svg, .html',
    sheet: '.svg, .html',
    plan: '.svg, .html',
    qr: '.html',
  };
  return `${own[view]}${cards[view]} the card; .json all that was proven; .csv, .h its numbers`;
}

/** Why there is nothing yet to be written of a sheet or a plan; null where there is. */
function notThere(state: BenchState, kind: 'sheet' | 'plan'): string | null {
  if (kind === 'sheet' && chosenSheet(state) === undefined)
    return 'no controller sheet is chosen; Esc, then c chooses one';
  if (kind === 'sheet' && sheetProblem(state) !== null)
    return 'the file of this sheet is damaged: mend it first';
  const answer = previewNow(state)?.answer;
  if (answer?.kind !== kind) return `the ${kind} is not simulated yet; Enter again once it is`;
  return answer.kind === 'sheet' && answer.view.refused
    ? 'this sheet is refused, so that there is nothing to type'
    : null;
}

/** The name of a file that is offered for the view in front. */
export function carriedName(state: BenchState): string {
  const name = currentKept(state)?.name ?? 'profile';
  const sheet = chosenSheet(state)?.name ?? 'sheet';
  const names: Readonly<Record<ShortlistViewName, string>> = {
    summary: `${name}-card.html`,
    card: `${name}-card.txt`,
    sheet: `${name}-${sheet}.txt`,
    plan: `${name}-plan.txt`,
    qr: `${name}-qr.svg`,
  };
  return names[state.shortlist.view];
}
