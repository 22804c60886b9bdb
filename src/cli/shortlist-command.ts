/**
 * The command `shortlist`: which profiles are kept to be carried onto the board, and what was felt on it?
 */
import { InvalidArgumentError, type Command } from 'commander';
import { FELT_KEYS, type FeltKey } from '../quantity/feel-words.js';
import { suggestion } from '../quantity/suggestion.js';
import { feltSentences } from '../show/felt-words.js';
import { plainText } from '../show/plain-text.js';
import { problemLines } from '../show/problems.js';
import { keptLines } from '../show/shortlist-lines.js';
import { shortlistLines } from '../show/shortlist-table.js';
import { writer, type WhyOptions } from '../show/why-lines.js';
import { findPlaces, PROGRAM_NAME } from '../store/places.js';
import { loadKept } from '../tasks/kept-check.js';
import { rigRemarks } from '../tasks/kept-rig.js';
import { dayOf, noteKept, type Noted } from '../tasks/shortlist-note.js';
import { removeKept, shortlist } from '../tasks/shortlist.js';
import { EXIT } from './exit-codes.js';
import { outputWidth, printJson, printRemark, printResult, tellProblems } from './output.js';
import { drawingOptions, paintFor, wholeNumber, type DrawingFlags } from './run-arguments.js';
import { addAddCommand } from './shortlist-add.js';

interface ShownFlags extends DrawingFlags {
  json?: true;
}

interface NoteFlags extends ShownFlags {
  felt?: Partial<Record<FeltKey, number>>;
  on?: string;
}

/** How what is kept is to be shown. */
function showOptions(flags: DrawingFlags): WhyOptions {
  return { width: outputWidth(), symbols: flags.symbols, paint: paintFor(flags) };
}

function list(flags: ShownFlags): void {
  const places = findPlaces(process.cwd());
  const { kept, problems } = shortlist(places);
  if (flags.json) printJson({ kept: kept.map((one) => ({ ...one, path: plainText(one.path) })) });
  else if (kept.length > 0 || problems.length === 0) printResult(shortlistLines(kept, showOptions(flags)));
  if (places.isStarterSet) {
    printRemark([`the starter set has no shortlist: make a folder of your own with '${PROGRAM_NAME} init'`]);
  }
  tellProblems(problems);
}

function show(name: string, flags: ShownFlags): void {
  const loaded = loadKept(findPlaces(process.cwd()), name);
  if (!loaded.ok) tellProblems(loaded.faults);
  else if (flags.json) printJson({ ...loaded.value, path: plainText(loaded.value.path) });
  else printResult(keptLines(loaded.value, showOptions(flags)));
  if (loaded.ok) printRemark(rigRemarks(findPlaces(process.cwd()), loaded.value));
}

function remove(name: string, { force, json }: { force?: true; json?: true }): void {
  const removed = removeKept(findPlaces(process.cwd()), { name, force: force === true });
  if (!removed.ok) tellProblems(removed.faults);
  else if (json) printJson({ removed: plainText(removed.value) });
  else printRemark([`removed ${plainText(removed.value)}`]);
}

async function note(
  name: string,
  text: string | undefined,
  flags: NoteFlags,
  command: Command,
): Promise<void> {
  const { felt, on } = flags;
  if (text === undefined && felt === undefined) {
    command.error('error: expected words, or --felt with a rating such as twitchy=4, or both');
  }
  const isRide = felt !== undefined || on !== undefined;
  const ride = isRide ? { on: on ?? dayOf(new Date()), note: text ?? '', felt: felt ?? {} } : null;
  const noted = await noteKept(findPlaces(process.cwd()), { name, note: isRide ? null : (text ?? ''), ride });
  if (!noted.ok) tellProblems(noted.faults);
  else printNoted(noted.value, isRide, flags);
}

/** Tells what was written, what was there before, and what the ratings say; a damage is told, and makes the program end with 1. */
function printNoted(noted: Noted, isRide: boolean, flags: NoteFlags): void {
  const { name, value, noteBefore, damage } = noted;
  const path = plainText(noted.path);
  const was = !isRide && noteBefore !== '' && noteBefore !== value.note;
  printRemark([
    `wrote ${isRide ? 'a ride' : 'the note'} into ${path}`,
    ...(was ? [`the note was: ${plainText(noteBefore)}`] : []),
  ]);
  const sentences = isRide ? feltSentences(value) : [];
  if (flags.json) printJson({ name, path, note: value.note, rides: value.rides, sentences });
  else {
    const { say } = writer(showOptions(flags));
    printResult(sentences.flatMap((text) => say(text)));
  }
  if (damage.length === 0) return;
  printRemark(problemLines(damage));
  process.exitCode = EXIT.requirementNotMet;
}

/** One rating such as `twitchy=4`, beside those before it; several may stand in one argument, divided by commas. */
function parseFelt(
  text: string,
  before: Partial<Record<FeltKey, number>> = {},
): Partial<Record<FeltKey, number>> {
  const felt = { ...before };
  for (const part of text.split(',')) {
    const [word = '', rating = ''] = part.split('=').map((piece) => piece.trim());
    const key = FELT_KEYS.find((known) => known === word);
    if (key === undefined) {
      const near = suggestion(word, FELT_KEYS);
      const hint = near === undefined ? '' : ` Did you mean ${near}?`;
      throw new InvalidArgumentError(`Expected word=rating with a word of ${FELT_KEYS.join(', ')}.${hint}`);
    }
    if (felt[key] !== undefined) throw new InvalidArgumentError(`Expected one rating of ${key}.`);
    felt[key] = wholeNumber(rating, { least: 1, most: 5 });
  }
  return felt;
}

/** Adds `shortlist add|note|list|show|remove` to the program. */
export function addShortlistCommand(program: Command): void {
  const command = program
    .command('shortlist')
    .summary('keep profiles to be carried onto the board, and say what was felt')
    .description(
      'Keeps profiles as plain files in shortlist/ of your folder: their numbers, the rig and the cells they were proven in, what came ' +
        'out, your note and your rides. What was proven is sealed: a file that is damaged or was changed by hand is reported, and never written over.',
    )
    .addHelpText(
      'before',
      `Examples: ${PROGRAM_NAME} shortlist add linen --as evening-one\n          ${PROGRAM_NAME} shortlist note evening-one 'Nervous over kerbs' --felt twitchy=4\n`,
    );
  const drawn = (sub: Command) => {
    const { colour, background, symbols } = drawingOptions();
    return sub
      .option('--json', 'print the result as JSON')
      .addOption(colour)
      .addOption(background)
      .addOption(symbols);
  };
  addAddCommand(drawn(command.command('add')));
  drawn(command.command('note'))
    .summary('write a note, or what was felt on a ride')
    .description(
      'Exchanges the note of a kept profile; with --felt or --on a ride is added instead, and what was felt is held against what the ' +
        'simulation promised. Nothing else in the file is touched, not even by a letter.',
    )
    .argument('<name>', 'name of the kept profile')
    .argument('[text]', 'your words')
    .option(
      '--felt <word=rating>',
      `1 not at all to 5 very, for ${FELT_KEYS.join(', ')}; once for each`,
      parseFelt,
    )
    .option('--on <day>', 'day of the ride, such as 2026-05-31; left out: today')
    .addHelpText(
      'before',
      `Example: ${PROGRAM_NAME} shortlist note evening-one 'Calm, but buzzy' --felt composed=4,buzzy=3\n`,
    )
    .action(note);
  drawn(command.command('list'))
    .summary('what is kept, a row each')
    .addHelpText('before', `Example: ${PROGRAM_NAME} shortlist list\n`)
    .action(list);
  drawn(command.command('show'))
    .summary('all that is known of a kept profile')
    .argument('<name>', 'name of the kept profile, or path of its file')
    .addHelpText('before', `Example: ${PROGRAM_NAME} shortlist show evening-one\n`)
    .action(show);
  command
    .command('remove')
    .summary('remove a kept profile')
    .argument('<name>', 'name of the kept profile')
    .option('--force', 'remove it though it is damaged or was changed by hand')
    .option('--json', 'print the result as JSON')
    .addHelpText('before', `Example: ${PROGRAM_NAME} shortlist remove evening-one\n`)
    .action(remove);
}
