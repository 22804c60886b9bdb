/**
 * A kept profile made by hand, whole and sealed, for tests that need none that was proven.
 */
import { stringify } from 'yaml';
import { checkValue } from '../../src/quantity/check.js';
import type { KeptFile } from '../../src/quantity/kept-file.js';
import { numbersHash, sealOf } from '../../src/store/short-hash.js';
import { validBoard, validProfile, validRider } from '../quantity/valid-values.js';
import { putFile } from '../store/temp-folder.js';

function parsed(value: unknown): KeptFile {
  const checked = checkValue('kept', value);
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults));
  return checked.value;
}

const AT = { rider: 'kim', speedKmPerH: 12 };
const CELL_OF_EDGE = { ...AT, chargePercent: 80 };
const CELL = { scenario: 'kerb', rider: 'kim', chargePercent: 80, seed: 1 };

/** What was proven, before it is sealed. */
function content() {
  return {
    numbers: '0000-0000',
    seal: '0000-0000',
    origin: { from: 'slate', on: '2026-05-31T18:20:00Z', underfoot: '0.0.1', scales: 1 },
    profile: validProfile(),
    rig: { boardName: 'pebble', board: validBoard(), riders: [{ name: 'kim', rider: validRider() }] },
    cells: {
      scenarios: ['kerb'],
      chargesPercent: [null, 20],
      seeds: [1, 2],
      count: 4,
      scenarioHash: '0000-0000',
    },
    figures: {
      failures: 1,
      score: 0.7312,
      overshootPercent: 18.2,
      settlingTimeS: 1.04,
      notSettled: 0,
      saturationPercent: 2.5,
      notFor: ['kim'],
    },
    margins: {
      disk: { value: 0.55, ...AT },
      gainUpRatio: { value: 2.13, ...AT },
      gainDownRatio: { value: null, ...AT },
      phaseDeg: { value: 31.4, ...AT },
      delayMs: { value: 6.25, ...AT },
    },
    feel: { rider: 'kim', words: ['composed'] },
    limits: [
      {
        ...CELL_OF_EDGE,
        what: 'bump',
        unit: 'mm',
        survived: 61,
        failed: 62,
        ending: 'nose strike',
      },
      {
        rider: 'kim',
        speedKmPerH: null,
        chargePercent: 20,
        what: 'speed',
        unit: 'km/h',
        survived: 60,
        failed: null,
        ending: null,
      },
    ],
    weakest: [{ says: 'kerb with kim, pack at 80 %: it swings for 1.9 s', ...CELL }],
    slips: [
      slip('rateAPerDegPerS', 'a tenth of it', { value: 0.12, failures: 4, moreFailures: 3, soonestS: 0.8 }),
      slip('rateAPerDegPerS', 'a tenth less', { value: 1.08, failures: 2, moreFailures: 1, soonestS: 2.1 }),
      slip('proportionalAPerDeg', 'the other sign', {
        value: -20,
        failures: 4,
        moreFailures: 3,
        soonestS: 0.31,
      }),
      slip('proportionalAPerDeg', 'a tenth more', {
        value: 22,
        failures: 1,
        moreFailures: 0,
        soonestS: null,
      }),
    ],
  };
}

interface SlipNumbers {
  value: number;
  failures: number;
  moreFailures: number;
  soonestS: number | null;
}

function slip(key: string, how: KeptFile['slips'][number]['slip'], numbers: SlipNumbers) {
  const ending = numbers.soonestS === null ? null : 'nose strike';
  return { key, slip: how, runs: 4, scoreRatio: numbers.moreFailures > 0 ? 3.2 : 1.02, ending, ...numbers };
}

/** A kept profile, sealed after the changes. */
export function keptFixture(changes: Partial<KeptFile> = {}): KeptFile {
  const kept = { ...parsed(content()), ...changes };
  const whole = { ...kept, numbers: numbersHash(kept.profile) };
  return { ...whole, seal: sealOf(whole) };
}

/** Puts a kept profile into the shortlist of a folder, laid out otherwise than the program does; answers its path. */
export function putKept(folder: string, name: string, kept: KeptFile = keptFixture()): string {
  return putFile(folder, `shortlist/${name}.yaml`, `# by hand\n${stringify(kept)}`);
}
