/**
 * What is done with the files of the shortlist: a note or ratings written, a file made of a kept profile, one taken out.
 */
import { resolve } from 'node:path';
import type { Checked, Problem } from '../../quantity/problem.js';
import { createPaint } from '../../show/colour.js';
import { firstRideLines } from '../../show/first-ride-lines.js';
import { sheetLines } from '../../show/sheet-lines.js';
import { shownPath, type Places } from '../../store/places.js';
import { fileProblem } from '../../store/system-fault.js';
import { writeNewFile } from '../../store/write-new-file.js';
import { exported } from '../../tasks/export.js';
import { loadKept } from '../../tasks/kept-check.js';
import type { ShelfReader } from '../../tasks/shelf.js';
import { FILE_WIDTH } from '../../tasks/export-out.js';
import { dayOf, noteKept } from '../../tasks/shortlist-note.js';
import { removeKept } from '../../tasks/shortlist.js';
import { refusedErrand, shelved, told } from '../bench/hear.js';
import { carriedWords } from '../bench/shortlist-exports.js';
import { previewNow, withNearRow } from '../bench/shortlist-items.js';
import type { BenchState, ShortlistErrand } from '../bench/state.js';
import type { Store } from '../bench/store.js';

/** What an errand came to: what is told of it, or every problem. */
type Done = Checked<string, Problem>;

/** Does an errand, and tells what came of it; the files are read again. */
export async function doShortlistErrand(
  errand: ShortlistErrand,
  { store, places, reader }: { store: Store; places: Places; reader: ShelfReader },
): Promise<void> {
  const done = await doneOf(errand, { places, state: store.get() });
  store.change((now) => {
    const later = shelved(now, reader.read());
    const next = errand.kind === 'remove' ? withNearRow(now, later) : later;
    return done.ok ? told(next, done.value) : refusedErrand(next, errand, done.faults);
  });
}

async function doneOf(
  errand: ShortlistErrand,
  { places, state }: { places: Places; state: BenchState },
): Promise<Done> {
  const { kind, name } = errand;
  if (kind === 'carry') return carried(errand, { places, state });
  if (kind === 'remove') {
    const removed = removeKept(places, { name, force: false });
    return removed.ok ? { ok: true, value: `removed ${removed.value}` } : removed;
  }
  const words =
    kind === 'note'
      ? { note: errand.note, ride: null }
      : { note: null, ride: { on: dayOf(new Date()), note: '', felt: errand.felt } };
  const noted = await noteKept(places, { name, ...words });
  if (!noted.ok) return noted;
  return {
    ok: true,
    value: `wrote ${kind === 'note' ? 'the note' : 'a ride of today'} into ${noted.value.path}`,
  };
}

type Carrying = Extract<ShortlistErrand, { kind: 'carry' }>;

/** Writes a new file with what was asked for. */
async function carried(
  errand: Carrying,
  { places, state }: { places: Places; state: BenchState },
): Promise<Done> {
  const path = resolve(places.currentFolder, errand.path);
  const shown = shownPath(places, path);
  const text = textOf(errand, { places, state });
  if (!text.ok) return text;
  const written = await writeNewFile(path, text.value, { force: null });
  return written.ok
    ? { ok: true, value: `wrote ${shown}: ${carriedWords(errand.form)}` }
    : { ok: false, faults: written.faults.map((fault) => ({ ...fault, file: shown })) };
}

function textOf(
  { name, path, form }: Carrying,
  { places, state }: { places: Places; state: BenchState },
): Done {
  const look = { mode: 'none', background: 'dark', ascii: false, width: FILE_WIDTH } as const;
  if (form.kind === 'form') return exported(places, name, { ...form, out: path, look });
  // Nothing leaves of a file that is not what was proven, whatever was computed before.
  const kept = loadKept(places, name);
  if (!kept.ok) return kept;
  const lines = computedLines(state, form.kind);
  return lines === null
    ? { ok: false, faults: [fileProblem('', `the ${form.kind}, simulated`, 'none of these numbers yet')] }
    : { ok: true, value: `${lines.join('\n')}\n` };
}

function computedLines(state: BenchState, kind: 'sheet' | 'plan'): string[] | null {
  const answer = previewNow(state)?.answer;
  const show = { width: FILE_WIDTH, symbols: 'braille', paint: createPaint('none') } as const;
  if (answer?.kind !== kind) return null;
  return answer.kind === 'sheet' ? sheetLines(answer.view, show) : firstRideLines(answer.plan, show);
}
