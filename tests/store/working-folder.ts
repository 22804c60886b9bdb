/**
 * A working folder with one valid file of each kind, for tests.
 */
import { stringify } from 'yaml';
import { validBoard, validProfile, validRider, validScenario } from '../quantity/valid-values.js';
import { putFile, tempFolder } from './temp-folder.js';

/** Makes the folder; it is removed when the running test is finished. Answers its absolute path. */
export function workingFolder(): string {
  const folder = tempFolder();
  putFile(folder, 'profiles/boards/pebble.yaml', stringify(validBoard()));
  putFile(folder, 'profiles/riders/kim.yaml', stringify(validRider()));
  putFile(folder, 'profiles/gains/slate.yaml', stringify(validProfile()));
  putFile(folder, 'scenarios/kerb.yaml', stringify(validScenario()));
  return folder;
}
