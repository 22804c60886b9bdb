/**
 * How does a kept profile leave the program? As a card for people, as data for programs, as a header for firmware, as a code for a
 * camera: always the same proven numbers, from the one kept file.
 */
import { extname } from 'node:path';
import type { KeptFile } from '../quantity/kept-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { quoted } from '../quantity/received.js';
import { shortText } from '../quantity/short-text.js';
import { cardHtml } from '../show/card-html.js';
import { cardSvg } from '../show/card-svg.js';
import { cardText } from '../show/card-text.js';
import type { Background, ColourMode } from '../show/colour.js';
import { exportCHeader } from '../show/export-c-header.js';
import { exportCsv } from '../show/export-csv.js';
import { exportJson } from '../show/export-json.js';
import { qrMatrix } from '../show/qr-matrix.js';
import { qrPath, qrSvg } from '../show/qr-svg.js';
import { qrLines, withCaption } from '../show/qr-terminal.js';
import type { Places } from '../store/places.js';
import { fileProblem } from '../store/system-fault.js';
import { loadKept } from './kept-check.js';

/** The forms in which a kept profile leaves, and the formats of each, the usual one first; none where there is one only. */
export const EXPORT_FORMATS = {
  card: ['text', 'svg', 'html'],
  json: [],
  csv: [],
  'c-header': [],
  qr: ['terminal', 'svg', 'text'],
} as const;

/** A form in which a kept profile leaves. */
export type ExportForm = keyof typeof EXPORT_FORMATS;

/** The forms, in the order in which help lists them. */
export const EXPORT_FORMS = Object.keys(EXPORT_FORMATS) as ExportForm[];

/** Every format of any form. */
export const ALL_EXPORT_FORMATS = ['text', 'terminal', 'svg', 'html'] as const;

/** A format of any form. */
export type ExportFormat = (typeof ALL_EXPORT_FORMATS)[number];

/** How text is drawn: in which colours on what, within ASCII or not, and in how many columns. */
export interface ExportLook {
  mode: ColourMode;
  background: Background;
  ascii: boolean;
  width: number;
}

/** What is to leave: `format` null for the one of the file's ending, else the usual one; `out` null for the standard output. */
export interface ExportAsked {
  form: ExportForm;
  format: ExportFormat | null;
  out: string | null;
  look: ExportLook;
}

/** Endings of files that say what must be in them. */
const FORMAT_OF_ENDING: Readonly<Record<string, ExportFormat>> = {
  '.svg': 'svg',
  '.html': 'html',
  '.htm': 'html',
};

/** The format asked for, or the problem with it. */
function formatFor({ form, format, out }: Omit<ExportAsked, 'look'>): Checked<ExportFormat | null, Problem> {
  const known: readonly ExportFormat[] = EXPORT_FORMATS[form];
  const ending = out === null ? '' : extname(out).toLowerCase();
  const wanted = format ?? FORMAT_OF_ENDING[ending] ?? known[0] ?? null;
  if (wanted === null || known.includes(wanted)) return { ok: true, value: wanted };
  const formats = known.length === 0 ? 'no format' : `one of the formats ${known.join(', ')}`;
  const received = format === null ? `a file that ends in ${ending}` : quoted(format);
  return {
    ok: false,
    faults: [{ ...fileProblem('', `${formats} with --as ${form}`, received), key: 'format' }],
  };
}

/** A kept profile by name, in one of the forms: the text of a file or of the standard output, or every problem. */
export function exported(places: Places, name: string, asked: ExportAsked): Checked<string, Problem> {
  const format = formatFor(asked);
  const kept = loadKept(places, name);
  if (!kept.ok || !format.ok) {
    return { ok: false, faults: [kept, format].flatMap((one) => (one.ok ? [] : one.faults)) };
  }
  const { form, look } = asked;
  return { ok: true, value: textOf(kept.value, { form, format: format.value, look }) };
}

interface Form {
  form: ExportForm;
  format: ExportFormat | null;
  look: ExportLook;
}

function textOf({ name, value }: { name: string; value: KeptFile }, { form, format, look }: Form): string {
  if (form === 'json') return exportJson(name, value);
  if (form === 'csv') return exportCsv(name, value);
  if (form === 'c-header') return exportCHeader(name, value);
  if (form === 'qr') return qrText(name, value, { format, look });
  if (format === 'text') return cardText(name, value, look);
  const qr = qrPath(qrMatrix(shortText(value.profile, value.numbers)));
  return format === 'svg' ? cardSvg(name, value, { qr }) : cardHtml([{ name, kept: value, qr }]);
}

function qrText(name: string, { profile, numbers }: KeptFile, { format, look }: Omit<Form, 'form'>): string {
  const text = shortText(profile, numbers);
  if (format === 'text') return `${text}\n`;
  const matrix = qrMatrix(text);
  if (format === 'svg') return qrSvg(matrix, `${name}, ${numbers}: ${text}`);
  const lines = withCaption(qrLines(matrix, look), [name, numbers, text], look.width);
  return `${lines.join('\n')}\n`;
}
