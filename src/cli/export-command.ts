/**
 * The command `export`: a kept profile as a card, as data, as a header for firmware, as a code for a camera, or as what is to be
 * typed into a controller.
 */
import { Option, type Command } from 'commander';
import { backgroundOf, colourMode, createPaint } from '../show/colour.js';
import { qrWidth } from '../show/qr-terminal.js';
import { findPlaces, type Places } from '../store/places.js';
import {
  ALL_EXPORT_FORMATS,
  EXPORT_FORMS,
  exported,
  type ExportForm,
  type ExportFormat,
  type ExportLook,
} from '../tasks/export.js';
import { loadKept } from '../tasks/kept-check.js';
import { rigRemarks } from '../tasks/kept-rig.js';
import { FILE_WIDTH, outProblems, writeOut } from '../tasks/export-out.js';
import { sheetText } from './export-sheet.js';
import { outPath, outputWidth, printRemark, tellProblems } from './output.js';
import { drawingOptions, parseThreads, type DrawingFlags } from './run-arguments.js';

interface ExportFlags extends DrawingFlags {
  as?: ExportForm;
  format?: ExportFormat;
  sheet?: string;
  workers?: number;
  out?: string;
  force?: true;
  json?: true;
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
  const out = outPath(flags.out);
  const { as: form, sheet } = flags;
  if (flags.json && sheet === undefined)
    command.error('error: expected --sheet with --json; else take --as json');
  const isForm = form !== undefined && sheet === undefined;
  if (!isForm && (form !== undefined || sheet === undefined)) {
    command.error('error: expected --as <form> or --sheet <sheet>, one of the two');
  }
  if (isForm) await exportAs(places, { name, form, out }, flags);
  else if (sheet !== undefined) await exportSheet(places, { name, sheet, out }, flags);
  const kept = loadKept(places, name);
  if (kept.ok) printRemark(rigRemarks(places, kept.value));
}

/** A kept profile through a controller sheet: nothing is written where there is nothing to type. */
async function exportSheet(
  places: Places,
  { name, sheet, out }: { name: string; sheet: string; out: string | null },
  flags: ExportFlags,
): Promise<void> {
  const { mode, background, width } = lookFor(out, flags);
  const look = { width, symbols: flags.symbols, paint: createPaint(mode, background) };
  const faults = outProblems(places, { out, force: flags.force === true });
  const made = await sheetText(
    places,
    { name, sheet, threads: flags.workers, faults, json: flags.json },
    look,
  );
  if (made === null) return;
  if (out === null) process.stdout.write(made.text);
  else if (await write(places, out, { text: made.text, flags })) printRemark([made.verdict]);
}

async function exportAs(
  places: Places,
  { name, form, out }: { name: string; form: ExportForm; out: string | null },
  flags: ExportFlags,
): Promise<void> {
  const asked = { form, format: flags.format ?? null, out, look: lookFor(out, flags) };
  const text = exported(places, name, asked);
  const problems = outProblems(places, { out, force: flags.force === true });
  if (!text.ok || problems.length > 0) {
    return tellProblems([...(text.ok ? [] : text.faults), ...problems]);
  }
  if (out !== null) {
    await write(places, out, { text: text.value, flags });
    return;
  }
  process.stdout.write(text.value);
  const isDrawn = flags.as === 'qr' && (flags.format ?? 'terminal') === 'terminal';
  if (isDrawn) remarkOnRoom(text.value.split('\n').slice(0, -1));
}

/** Writes a text into a file and says so; false where it could not be. */
async function write(
  places: Places,
  out: string,
  { text, flags }: { text: string; flags: ExportFlags },
): Promise<boolean> {
  const written = await writeOut(places, { out, force: flags.force === true }, text);
  if (written.ok) printRemark([`wrote ${written.value}`]);
  else tellProblems(written.faults);
  return written.ok;
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
    .option('--json', 'with --sheet: print the result as JSON')
    .option('--workers <count>', 'with --sheet: threads; left out: one for each core', parseThreads)
    .option('--out <file>', 'write it to a new file; left out, or -: the standard output')
    .option('--force', 'replace a file that is there already')
    .addOption(colour)
    .addOption(background)
    .addOption(symbols)
    .addHelpText('before', 'Example: underfoot export my-profile --as c-header --out gains.h\n')
    .action(exportKept);
}
