/**
 * Is a rider told when the files of the rig are no longer those that a profile was proven on, and only then?
 */
import { expect, it } from 'vitest';
import { stringify } from 'yaml';
import { findPlaces } from '../../src/store/places.js';
import { rigRemarks } from '../../src/tasks/kept-rig.js';
import { keptExample } from '../show/kept-example.js';
import { putFile, tempFolder } from '../store/temp-folder.js';

const value = keptExample();
const [first] = value.rig.riders;

function folderWith(board: object, rider: object): string {
  const folder = tempFolder();
  putFile(folder, `profiles/boards/${value.rig.boardName}.yaml`, stringify(board));
  putFile(folder, `profiles/riders/${first!.name}.yaml`, stringify(rider));
  return folder;
}

const remarks = (board: object, rider: object) =>
  rigRemarks(findPlaces(folderWith(board, rider)), { name: 'evening', value });

it('says nothing of files that are as they were, or that are not there', () => {
  expect(remarks(value.rig.board, first!.rider)).toEqual([]);
  expect(remarks({ ...value.rig.board, summary: 'Other words' }, first!.rider)).toEqual([]);
});

it('names the files that are others now', () => {
  const { board } = value.rig;
  const heavier = { ...first!.rider, body: { ...first!.rider.body, massKg: first!.rider.body.massKg + 5 } };
  const [remark, ...others] = remarks(
    { ...board, deck: { ...board.deck, massKg: board.deck.massKg + 1 } },
    heavier,
  );
  expect(others).toEqual([]);
  expect(remark).toContain(
    `the files of the board ${value.rig.boardName} and the rider ${first!.name} here say otherwise than what evening was proven on`,
  );
});
