/**
 * The command `export`: a kept profile as a card, as data, as a header for firmware, as a code for a camera, or as what is to be
 * typed into a controller.
 */
import { existsSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { Option, type Command } from 'commander';
import type { Problem } from '../quantity/problem.js';
import { backgroundOf, colourMode, createPaint } from '../show/colour.js';
import { qrWidth } from '../show/qr-terminal.js';
import { findPlaces, isFolder, shownPath, type Places } from '../store/places.js';
import { fileProblem } from '../store/system-fault.js';
import { writeNewFile } from '../store/write-new-file.js';
import {
  ALL_EXPORT_FORMATS,
  EXPORT_FORMS,
  exported,
  type ExportForm,
  type ExportFormat,
  type ExportLook,
} from '../tasks/export.js';
import { sheetText } from './export-sheet.js';
import { outputWidth, printRemark, tellProblems } from './output.js';
import { drawingOptions, parseThreads, type DrawingFlags } from './run-arguments.js';

/** Columns of a text in a file, which is to be printed. */
const FILE_WIDTH = 80;

/** Stands for the standard output in place of a file. */
const STANDARD_OUTPUT = '-';

interface ExportFlags extends DrawingFlags {
  as?: ExportForm;
  format?: ExportFormat;
  sheet?: string;
  workers?: number;
  out?: string;
  force?: true;
}

/** What already speaks against the file. */
function outProblems(out: string | null, { force }: ExportFlags): Problem[] {
  if (out === null) return [];
  const folder = dirname(out);
  if (!isFolder(folder)) return [fileProblem(out, 'a path in a folder that exists', `no folder ${folder}`)];
  if (force || !existsSync(out)) return [];
  return [fileProblem(out, 'a new file, or --force to replace one', 'a file that is there already')];
}

/** How it is drawn: colours and the terminal's width only where it goes to a terminal. */
function lookFor(out: string | null, { color, background, symbols }: ExportFlags): ExportLook {
  const { env } = process;
  const isTTY = out === null && process.stdout.isTTY === true;
  return {
    mode: colourMode({ env, isTTY, flag: color }),
    background: backgroundOf(env, background),
    ascii: symbols === 'ascii',
    width: out === null ? outputWidth() : FILE_WIDTH,
  };
}

async function exportKept(name: string, flags: ExportFlags, command: Command): Promise<void> {
  const places = findPlaces(process.cwd());
  const out = flags.out === undefined || flags.out === STANDARD_OUTPUT ? null : flags.out;
  const { as: form, sheet } = flags;
  if (form !== undefined && sheet === undefined) return exportAs(places, { name, form, out }, flags);
  if (form !== undefined || sheet === undefined) {
    command.error('error: expected --as <form> or --sheet <sheet>, one of the two');
  }
  return exportSheet(places, { name, sheet, out }, flags);
}

/** A kept profile through a controller sheet: nothing is written where there is nothing to type. */
async function exportSheet(
  places: Places,
  { name, sheet, out }: { name: string; sheet: string; out: string | null },
  flags: ExportFlags,
): Promise<void> {
  const { mode, background, width } = lookFor(out, flags);
  const look = { width, symbols: flags.symbols, paint: createPaint(mode, background) };
  const asked = { name, sheet, threads: flags.workers, faults: outProblems(out, flags) };
  const text = await sheetText(places, asked, look);
  if (text === null) return;
  if (out === null) process.stdout.write(text);
  else await write(resolve(places.currentFolder, out), text, flags);
}

async function exportAs(
  places: Places,
  { name, form, out }: { name: string; form: ExportForm; out: string | null },
  flags: ExportFlags,
): Promise<void> {
  const asked = { form, format: flags.format ?? null, out, look: lookFor(out, flags) };
  const text = exported(places, name, asked);
  const problems = outProblems(out, flags);
  if (!text.ok || problems.length > 0) {
    return tellProblems([...(text.ok ? [] : text.faults), ...problems]);
  }
  if (out !== null) return write(resolve(places.currentFolder, out), text.value, flags);
  process.stdout.write(text.value);
  const isDrawn = flags.as === 'qr' && (flags.format ?? 'terminal') === 'terminal';
  if (isDrawn) remarkOnRoom(text.value.split('\n').slice(0, -1));
}

async function write(path: string, text: string, { force }: ExportFlags): Promise<void> {
  const shown = shownPath({ currentFolder: process.cwd() }, path);
  const written = await writeNewFile(path, text, { force: force === true });
  if (written.ok) printRemark([`wrote ${shown}`]);
  else tellProblems(written.faults.map((fault) => ({ ...fault, file: shown })));
}

/** A code that does not fit into the terminal cannot be read there: what else can be done. */
function remarkOnRoom(lines: readonly string[]): void {
  const { columns = Infinity, rows = Infinity } = process.stdout;
  if (lines.length < rows && qrWidth(lines) <= columns) return;
  printRemark([
    `${qrWidth(lines)} columns and ${lines.length} lines do not fit here: take a larger window, or --out FILE.svg`,
  ]);
}

/** Adds `export NAME` to the program. */
export function addExportCommand(program: Command): void {
  const { colour, background, symbols } = drawingOptions();
  program
    .command('export')
    .summary('a shortlisted profile as card, data or code, or through a controller sheet')
    .description(
      'Gives a shortlisted profile in the form that is asked for. card: one page for the pocket. json: all that is kept; what ' +
        'stands under "profile" is a profile file by itself (JSON is YAML), so that it can be saved as profiles/gains/NAME.yaml. ' +
        'csv: one number a line. c-header: constants for firmware in C or C++. qr: the numbers as a short text in a code for a ' +
        'camera; --format text prints the text alone. With --sheet: the numbers as the controller of the sheet wants them, what ' +
        'rounding and limits changed, and whether just that still deserves its rank; a sheet that turns a sign round is refused.',
    )
    .argument('<name>', 'name of a shortlisted profile')
    .addOption(new Option('--as <form>', 'what it becomes').choices(EXPORT_FORMS))
    .addOption(
      new Option(
        '--format <format>',
        'card: text, svg or html; qr: terminal, svg or text; left out: by the ending of --out, else the first',
      )
        .choices(ALL_EXPORT_FORMATS)
        .conflicts('sheet'),
    )
    .option(
      '--sheet <sheet>',
      'in place of --as: what to type into the controller of this sheet, name or path, simulated as it is typed',
    )
    .option('--workers <count>', 'with --sheet: threads; left out: one for each core', parseThreads)
    .option('--out <file>', 'write it to a new file; left out, or -: the standard output')
    .option('--force', 'replace a file that is there already')
    .addOption(colour)
    .addOption(background)
    .addOption(symbols)
    .addHelpText('before', 'Example: underfoot export my-profile --as c-header --out gains.h\n')
    .action(exportKept);
}
