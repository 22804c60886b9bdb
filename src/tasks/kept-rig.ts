/**
 * Is the rig that a profile was proven on still what the files of the folder say? What was kept stays as it was; whoever has measured
 * a board anew since then is told so before it is ridden.
 */
import { isDeepStrictEqual } from 'node:util';
import type { FileKind } from '../quantity/file-kind.js';
import { listed } from '../show/margin-view.js';
import { plainText } from '../show/plain-text.js';
import { load } from '../store/library.js';
import { PROGRAM_NAME, type Places } from '../store/places.js';
import type { LoadedKept } from './kept-check.js';

/** What stands in a file besides the words about it. */
function withoutSummary(value: object): object {
  return Object.fromEntries(Object.entries(value).filter(([key]) => key !== 'summary'));
}

/** Whether the folder has a whole file of this name that says otherwise. */
function isOtherNow(
  places: Places,
  kind: FileKind,
  { name, value }: { name: string; value: object },
): boolean {
  const now = load(places, kind, name);
  return now.ok && !isDeepStrictEqual(withoutSummary(now.value.value), withoutSummary(value));
}

/** A remark on the board, riders and profile whose files are others now than when it was kept; none where they are not. */
export function rigRemarks(places: Places, { name, value }: Pick<LoadedKept, 'name' | 'value'>): string[] {
  const { rig, origin, profile } = value;
  const others = [
    ...(isOtherNow(places, 'board', { name: rig.boardName, value: rig.board })
      ? [`the board ${rig.boardName}`]
      : []),
    ...rig.riders
      .filter((one) => isOtherNow(places, 'rider', { name: one.name, value: one.rider }))
      .map((one) => `the rider ${one.name}`),
    ...(isOtherNow(places, 'profile', { name: origin.from, value: profile })
      ? [`the profile ${origin.from}`]
      : []),
  ];
  if (others.length === 0) return [];
  return [
    plainText(
      `the files of ${listed(others)} here say otherwise than what ${name} was proven on: all of this is for what it was proven on; ` +
        `'${PROGRAM_NAME} shortlist add ${origin.from}' proves it on what they say now`,
    ),
  ];
}
