/**
 * Does a kept profile still deserve its rank when it has gone through a controller sheet? What the controller will act on is
 * simulated in the cells that the profile was proven in. Signs are not believed either: what is typed is read back under the sheet's
 * own way of counting, and where that falls the export is refused.
 */
import { withController, withMotor, type Makings } from '../explain/makings.js';
import type { ProfileResult } from '../measure/profile-result.js';
import { CHANCE_SCORE_RATIO } from '../measure/scales.js';
import type { KeptFile } from '../quantity/kept-file.js';
import { withPlainNumbers, type NumberChange } from '../quantity/off-sheet.js';
import { changeOf, changeWithout, ontoSheet, type OntoSheet } from '../quantity/onto-sheet.js';
import type { Checked, Problem } from '../quantity/problem.js';
import type { SheetFile } from '../quantity/sheet-file.js';
import { COSTLY_SCORE_RATIO, type ChangeAlone, type NewFall, type SheetView } from '../show/sheet-view.js';
import { weakPointText } from '../show/worst-sentences.js';
import { load } from '../store/library.js';
import type { Places } from '../store/places.js';
import { numbersHash, shortHash } from '../store/short-hash.js';
import { openCrew } from './crew.js';
import { loadKept } from './kept-check.js';
import { figuresPart } from './kept-parts.js';
import { keptPlan, type KeptPlan } from './kept-plan.js';
import { trialsOf, type Named } from './plan.js';
import type { Labour } from './share-out.js';
import { AS_IS, makingsOf, runVariants, type Variant } from './study.js';
import { hasBalance, inBalanceOf } from './tolerance.js';

/** How it is simulated; `onProgress` hears of the runs that are done, of so many that are known of. */
export interface ThroughSheetOptions {
  threads: Labour;
  signal?: AbortSignal | undefined;
  onProgress?: ((done: number, all: number) => void) | undefined;
}

/** What is to go through which sheet, by name or path; `faults` already speak against it. */
export interface SheetExport extends ThroughSheetOptions {
  name: string;
  sheet: string;
  faults?: readonly Problem[];
}

/** A kept profile through a sheet, simulated; or all that is wrong with the files. */
export async function exportThroughSheet(
  places: Places,
  { name, sheet, faults: before = [], ...options }: SheetExport,
): Promise<Checked<SheetView, Problem>> {
  const kept = loadKept(places, name);
  const found = load(places, 'sheet', sheet);
  const planned = kept.ok ? keptPlan(places, kept.value) : null;
  if (!kept.ok || !found.ok || planned === null || !planned.ok || before.length > 0) {
    const faults = [kept, found, planned].flatMap((one) => (one === null || one.ok ? [] : one.faults));
    return { ok: false, faults: [...before, ...faults] };
  }
  const value = await throughSheet({ kept: kept.value, sheet: found.value, ...planned.value }, options);
  return { ok: true, value };
}

/** What goes through a sheet, and the cells that it was proven in. */
export interface ThroughSheet extends KeptPlan {
  kept: Named<KeptFile>;
  sheet: Named<SheetFile>;
}

/**
 * Takes a kept profile through a sheet and simulates it. Throws the reason of a signal that comes before the end, or a WorkFailed
 * for what could not be computed.
 */
export async function throughSheet(through: ThroughSheet, options: ThroughSheetOptions): Promise<SheetView> {
  const { threads } = options;
  if (typeof threads !== 'number' || threads <= 1) return simulated(through, options);
  // Opened once for all that is to be run.
  const crew = await openCrew(threads);
  try {
    return await simulated(through, { ...options, threads: crew });
  } finally {
    await crew.close();
  }
}

async function simulated(through: ThroughSheet, options: ThroughSheetOptions): Promise<SheetView> {
  const { kept, sheet, plan } = through;
  const onto = ontoSheet(sheet.value, kept.value.profile);
  const { proven, typed, run } = await provenAndTyped(through, onto, options);
  const newFalls = newFallsOf(proven, typed);
  const scoreRatio = ratioOf(typed, proven);
  const changes = changesOf(through, onto);
  const isCostly = newFalls.length > 0 || scoreRatio > COSTLY_SCORE_RATIO;
  const alone = isCostly ? await eachAlone(changes, { proven, run }) : [];
  const refused = onto.entries.some(({ signContradicts }) => signContradicts) && newFalls.length > 0;
  return {
    name: kept.name,
    sheetName: sheet.name,
    sheet: sheet.value,
    onto,
    numbers: numbersHash(kept.value.profile),
    typedHash: shortHash(typedText(onto)),
    runs: typed.cells.length,
    proven: { failures: proven.failures, score: proven.score },
    typed: { failures: typed.failures, score: typed.score },
    scoreRatio,
    newFalls,
    worst: weakPointText(typed.worst, plan.weights),
    alone,
    provenLoopRateHz: plan.board.value.controller.loopRateHz,
    hasLowerLimit: controllerChanges(through).some(({ name }) => name === 'currentLimitA'),
    notAsKept: notAsKept(through, proven),
    refused,
    deserves: !refused && newFalls.length === 0 && scoreRatio <= CHANCE_SCORE_RATIO,
  };
}

/** What is typed, row by row, as it is hashed. */
function typedText({ entries }: OntoSheet): string {
  return entries.map(({ row, text }) => `${row.label}=${text}\n`).join('');
}

/** Runs a profile with changes, in the cells of the plan; the deck begins in balance where the changed one could hold none. */
type Run = (changes: readonly Variant[]) => Promise<ProfileResult[]>;

async function provenAndTyped(
  through: ThroughSheet,
  { actedOn }: OntoSheet,
  { threads, signal, onProgress }: ThroughSheetOptions,
): Promise<{ proven: ProfileResult; typed: ProfileResult; run: Run }> {
  const { plan } = through;
  const trials = trialsOf(plan);
  const profile = plan.profiles[0]!;
  const told = { before: 0, all: 2 * trials.length };
  const study = async (variant: Variant) => {
    const { profile: changed } = variant.change(makingsOf(profile.value, trials[0]!));
    const where = hasBalance(changed) ? trials : await inBalanceOf(profile.value, trials, signal);
    const onRuns = (done: number) => onProgress?.(told.before + done, told.all);
    const [result] = await runVariants({ plan, profile, trials: where }, [variant], {
      threads,
      signal,
      onRuns,
    });
    told.before += trials.length;
    return result!;
  };
  const asTyped = (makings: Makings) =>
    controllerChanges(through).reduce((made, { change }) => change(made), { ...makings, profile: actedOn });
  const proven = await study(AS_IS);
  const typed = await study({ name: 'as typed', change: asTyped });
  const run: Run = async (changes) => {
    told.all += changes.length * trials.length;
    const results: ProfileResult[] = [];
    for (const change of changes) results.push(await study(change));
    return results;
  };
  return { proven, typed, run };
}

/** Changes that come from the controller itself, by the keys of the sheet. */
function controllerChanges({ plan, sheet }: ThroughSheet): Variant[] {
  const { loopRateHz, currentLimitA: limitA = Infinity } = sheet.value;
  const { controller, motor } = plan.board.value;
  const isLower = limitA < Math.max(motor.driveCurrentA, motor.brakeCurrentA);
  const limited = {
    driveCurrentA: Math.min(limitA, motor.driveCurrentA),
    brakeCurrentA: Math.min(limitA, motor.brakeCurrentA),
  };
  return [
    ...(controller.loopRateHz === loopRateHz
      ? []
      : [{ name: 'loopRateHz', change: (makings: Makings) => withController(makings, { loopRateHz }) }]),
    ...(isLower
      ? [{ name: 'currentLimitA', change: (makings: Makings) => withMotor(makings, limited) }]
      : []),
  ];
}

/** What is not as it was proven, each by itself under the key of its number. */
function changesOf(through: ThroughSheet, { entries, unplaced }: OntoSheet): Variant[] {
  const ofNumber = (name: string, changes: readonly NumberChange[]): Variant => ({
    name,
    change: (makings) => ({ ...makings, profile: withPlainNumbers(makings.profile, changes) }),
  });
  return [
    ...entries
      .filter(({ ours, back }) => ours !== back)
      .map((entry) => ofNumber(entry.row.quantity, [changeOf(entry)])),
    ...unplaced
      .map((one) => ({ key: one.key, changes: changeWithout(one) }))
      .filter(({ changes }) => changes.length > 0)
      .map(({ key, changes }) => ofNumber(key, changes)),
    ...controllerChanges(through),
  ];
}

/** Each change by itself, the dearest first. */
async function eachAlone(
  changes: readonly Variant[],
  { proven, run }: { proven: ProfileResult; run: Run },
): Promise<ChangeAlone[]> {
  const results = await run(changes);
  return results
    .map((result) => ({
      key: result.name,
      newFalls: newFallsOf(proven, result).length,
      scoreRatio: ratioOf(result, proven),
    }))
    .toSorted((a, b) => b.newFalls - a.newFalls || b.scoreRatio - a.scoreRatio);
}

function newFallsOf(proven: ProfileResult, typed: ProfileResult): NewFall[] {
  return typed.cells
    .filter((cell, index) => cell.failed && !proven.cells[index]!.failed)
    .map(({ scenario, rider, chargePercent, seed, outcome }) => {
      return { scenario, rider, chargePercent, seed, ending: outcome.kind, atS: outcome.atS };
    });
}

function ratioOf(result: ProfileResult, proven: ProfileResult): number {
  return proven.score > 0 ? result.score / proven.score : 1;
}

/** Whether the proof came out otherwise than it was kept, and why. */
function notAsKept({ kept, hasOtherScenarios }: ThroughSheet, proven: ProfileResult): SheetView['notAsKept'] {
  if (hasOtherScenarios) return 'other scenarios';
  const { failures, score } = figuresPart(proven);
  const { figures } = kept.value;
  return failures === figures.failures && score === figures.score ? null : 'other figures';
}
