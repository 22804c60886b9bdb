/** A store with a shortlist that is followed in a folder, with real runs on the thread of the test. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { createShelfReader } from '../../../src/tasks/shelf.js';
import { followPreview } from '../../../src/tui/app/preview-following.js';
import { doShortlistErrand } from '../../../src/tui/app/shortlist-errands.js';
import { followShortlist } from '../../../src/tui/app/shortlist-following.js';
import { isOfShortlist, shelved } from '../../../src/tui/bench/hear.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { createStore } from '../../../src/tui/bench/store.js';
import { putFile, tempFolder } from '../../store/temp-folder.js';
import { crewHere } from '../../tasks/crew-here.js';
import { putKept } from '../../tasks/kept-fixture.js';
import { provenKept } from '../../tasks/proven-kept.js';
import { afterKeys, afterTyping, rankedState } from '../bench/some-state.js';
import { SHEETS } from '../draw/drawn-shortlist.js';

/** A profile that was really proven, with its plan. */
export const proven = await provenKept();

/** A folder with the scenarios of the small plan, a sheet, and `kept` on the shortlist. */
export function someFolder(...kept: string[]): string {
  const folder = tempFolder();
  mkdirSync(join(folder, 'profiles'));
  for (const { name, value } of proven.plan.scenarios)
    putFile(folder, `scenarios/${name}.yaml`, stringify(value));
  putFile(folder, 'profiles/sheets/slab.yaml', stringify(SHEETS[0]!.value));
  for (const name of kept) putKept(folder, name, proven.kept.value);
  return folder;
}

/** A store that is followed in a folder, whose kept profiles and sheets it knows; and what waits for something to be so. */
export function followed(folder: string, gate?: () => Promise<void>) {
  const places = { workingFolder: folder, currentFolder: folder, isStarterSet: false };
  const onDisk = createShelfReader(places);
  const first = rankedState();
  const reader = {
    read: () => {
      const { kept, sheet, problems } = onDisk.read();
      return { ...first.files, kept, sheet, problems };
    },
  };
  const store = createStore(shelved(first, reader.read()));
  const crew = crewHere(1, gate);
  const faults: unknown[] = [];
  const parts = { store, crew, places, reader, onFault: (error: unknown) => faults.push(error) };
  const keeping = followShortlist(parts);
  const preview = followPreview(parts);
  store.subscribe(() => {
    keeping.follow();
    preview.follow();
    for (const errand of store.get().errands) {
      store.change((state) => ({ ...state, errands: [] }));
      if (isOfShortlist(errand)) doShortlistErrand(errand, parts).catch(parts.onFault);
    }
  });
  const until = (isSo: (state: BenchState) => boolean) =>
    new Promise<void>((resolve) => {
      const look = () => {
        if (isSo(store.get())) resolve();
      };
      store.subscribe(look);
      look();
    });
  const press = (keys: string) => store.change((state) => afterKeys(state, keys));
  const type = (text: string) => store.change((state) => afterTyping(state, text));
  const stop = () => {
    keeping.stop();
    preview.stop();
  };
  return { store, crew, places, faults, until, press, type, stop };
}

/** Waits until all news would have been told. */
export const afterNews = () => new Promise((resolve) => setTimeout(resolve, 250));
/** True once something is told. */
export const isTold = (said: RegExp) => (state: BenchState) => said.test(state.notice?.text ?? '');
/** Waits until something was asked of a crew. */
export async function isBegun({ asked }: { asked: readonly unknown[] }): Promise<void> {
  while (asked.length === 0) await new Promise((resolve) => setTimeout(resolve));
}

/** A gate that holds each piece of work until it is let through. */
export function shutGate() {
  const held: (() => void)[] = [];
  return { gate: () => new Promise<void>((resolve) => held.push(resolve)), held };
}
