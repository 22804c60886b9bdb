/**
 * How does a first-ride plan stand on a page? Section by section, each line with what it is for at its head, so that it can be gone
 * through with a pencil.
 */
import type { FirstRidePlan } from '../explain/first-ride.js';
import type { PlanItem, PlanItemKind } from './first-ride-item.js';
import { firstRideSections } from './first-ride-sections.js';
import { writer, type WhyOptions } from './why-lines.js';

/** What stands at the head of a line. */
const HEADS: Readonly<Record<PlanItemKind, string>> = {
  set: 'Set',
  check: '[ ]',
  expect: 'Expect',
  stop: 'STOP if',
  know: '-',
};

/** Columns that the heads take. */
const HEAD_WIDTH = 8;

/** The plan in lines, none wider than asked for. */
export function firstRideLines(plan: FirstRidePlan, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const { name, kept } = plan;
  const about =
    `First ride with ${name}: board ${kept.rig.boardName}, numbers ${kept.numbers}. Go on to the next stage only when ` +
    'everything in this one is as it should be.';
  const sections = firstRideSections(plan).flatMap(({ title, items }, index) => [
    '',
    ...say(`${index}. ${title}`).map(paint.bold),
    ...items.flatMap((item) => itemLines(item, options)),
  ]);
  return [...say(about), ...sections];
}

function itemLines({ kind, text }: PlanItem, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const lines = say(text, ' '.repeat(HEAD_WIDTH));
  const head = HEADS[kind].padEnd(HEAD_WIDTH);
  const [first = '', ...others] = lines;
  const all = [head + first.slice(HEAD_WIDTH), ...others];
  return kind === 'stop' ? all.map(paint.warn) : all;
}
