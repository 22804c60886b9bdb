/**
 * Which values of a scenario must agree with one another? The road has no hole, the script runs
 * forwards and ends with the run, events have names of their own, and the measurement begins at
 * something that happens.
 */
import { figures, isGiven, listAt, numberAt, textAt, valueAt } from './raw-value.js';
import type { Complaint } from './problem.js';
import { quoted, receivedInWords } from './received.js';
import { keyPath } from './key-path.js';
import { suggestion } from './suggestion.js';

const START = 'start';
const ROUNDING_S = 1e-9;

interface NamedEvent {
  name: string;
  path: readonly PropertyKey[];
  atS: number | undefined;
}

function isHole(piece: unknown): boolean {
  if (piece === null || piece === undefined || piece === '') return true;
  return typeof piece === 'object' && Object.keys(piece).length === 0;
}

function roadWithHoles(raw: unknown): Complaint[] {
  return listAt(raw, ['road']).flatMap((piece, index) =>
    isHole(piece)
      ? [
          {
            path: ['road', index],
            expected: 'a road piece with lengthM in m',
            received: `${receivedInWords(piece)}: a road with a hole`,
          },
        ]
      : [],
  );
}

function backwardScript(raw: unknown): Complaint[] {
  const complaints: Complaint[] = [];
  let beforeS: number | undefined;
  listAt(raw, ['speeds']).forEach((point, index) => {
    const atS = numberAt(point, ['atS']);
    if (atS === undefined) return;
    if (beforeS !== undefined && atS <= beforeS) {
      complaints.push({
        path: ['speeds', index, 'atS'],
        expected: `a time after ${figures(beforeS)} s, that of the speed before`,
        received: `${figures(atS)} s: a script that runs backwards`,
      });
    }
    beforeS = atS;
  });
  return complaints;
}

/** A stretch of time at `path` that must lie within the run. */
function outsideRun(raw: unknown, path: readonly PropertyKey[]): Complaint[] {
  const durationS = numberAt(raw, ['durationS']);
  const atS = numberAt(raw, [...path, 'atS']);
  if (durationS === undefined || atS === undefined) return [];
  if (atS >= durationS) {
    const expected = `a time before ${figures(durationS)} s, the end of the run (durationS)`;
    return [{ path: [...path, 'atS'], expected, received: `${figures(atS)} s` }];
  }
  return lateEnd(raw, path, atS);
}

function lateEnd(raw: unknown, path: readonly PropertyKey[], atS: number): Complaint[] {
  const durationS = numberAt(raw, ['durationS']);
  const forS = numberAt(raw, [...path, 'forS']);
  if (durationS === undefined || forS === undefined || atS + forS <= durationS + ROUNDING_S) return [];
  const leftS = figures(Math.max(0, durationS - atS));
  const expected = `at most ${leftS} s, what is left of the run (durationS ${figures(durationS)} s)`;
  return [{ path: [...path, 'forS'], expected, received: `${figures(forS)} s` }];
}

function eventsOutsideRun(raw: unknown): Complaint[] {
  return ['shifts', 'shoves'].flatMap((key) =>
    listAt(raw, [key]).flatMap((_event, index) => outsideRun(raw, [key, index])),
  );
}

function namedEvents(raw: unknown): NamedEvent[] {
  return ['road', 'shifts', 'shoves'].flatMap((key) =>
    listAt(raw, [key]).flatMap((event, index) => {
      const name = textAt(event, ['name']);
      const atS = key === 'road' ? undefined : numberAt(event, ['atS']);
      return name === undefined ? [] : [{ name, path: [key, index, 'name'], atS }];
    }),
  );
}

function clashingNames(events: readonly NamedEvent[]): Complaint[] {
  const firstAt = new Map<string, string>();
  return events.flatMap(({ name, path }) => {
    if (name === START) {
      const expected = "a name other than 'start', which means the start of the run";
      return [{ path, expected, received: receivedInWords(name) }];
    }
    const first = firstAt.get(name);
    if (first === undefined) {
      firstAt.set(name, keyPath(path));
      return [];
    }
    return [{ path, expected: 'a name used once', received: `${quoted(name)}, used before at ${first}` }];
  });
}

function unknownStart(from: string, events: readonly NamedEvent[]): Complaint[] {
  const named = [...new Set(events.map((event) => event.name))].filter((name) => name !== START);
  const known = [START, ...named];
  if (known.includes(from)) return [];
  const near = suggestion(from, known);
  const expected =
    named.length === 0
      ? "'start' (no piece, shift or shove has a name)"
      : `'start' or the name of a piece, shift or shove: ${named.join(', ')}`;
  const complaint = { path: ['measure', 'from'], expected, received: receivedInWords(from) };
  return [near === undefined ? complaint : { ...complaint, suggestion: near }];
}

function measureWindow(raw: unknown, events: readonly NamedEvent[]): Complaint[] {
  if (isGiven(raw, ['measure', 'atS'])) return outsideRun(raw, ['measure']);
  const from = textAt(raw, ['measure', 'from']) ?? START;
  const startS = from === START ? 0 : events.find((event) => event.name === from)?.atS;
  return startS === undefined ? [] : lateEnd(raw, ['measure'], startS);
}

function measureStart(raw: unknown, events: readonly NamedEvent[]): Complaint[] {
  const from = textAt(raw, ['measure', 'from']);
  if (from === undefined) return [];
  if (from !== START && isGiven(raw, ['measure', 'atS'])) {
    const expected = 'either measure.from or measure.atS, not both';
    const received = `atS ${receivedInWords(valueAt(raw, ['measure', 'atS']))} and from ${quoted(from)}`;
    return [{ path: ['measure', 'atS'], expected, received }, ...unknownStart(from, events)];
  }
  return unknownStart(from, events);
}

function stepFromStart(raw: unknown): Complaint[] {
  if (valueAt(raw, ['measure', 'as']) !== 'step') return [];
  const complaints: Complaint[] = [];
  const why = 'because a step is pitch going from the start pitch to the set-point';
  if (!isGiven(raw, ['start', 'noseUpDeg'])) {
    const expected = `a start pitch in deg, ${why}`;
    complaints.push({ path: ['start', 'noseUpDeg'], expected, received: 'nothing' });
  }
  const from = textAt(raw, ['measure', 'from']) ?? START;
  if (from !== START) {
    const expected = `'start', ${why}`;
    complaints.push({ path: ['measure', 'from'], expected, received: receivedInWords(from) });
  }
  const atS = numberAt(raw, ['measure', 'atS']);
  if (atS !== undefined && atS !== 0) {
    const expected = `no atS, ${why}`;
    complaints.push({ path: ['measure', 'atS'], expected, received: `${figures(atS)} s` });
  }
  return complaints;
}

/** Complaints about values of a scenario that do not agree; runs on any value, faulty or not. */
export function crossCheckScenario(raw: unknown): Complaint[] {
  const events = namedEvents(raw);
  return [
    ...roadWithHoles(raw),
    ...backwardScript(raw),
    ...eventsOutsideRun(raw),
    ...clashingNames(events),
    ...measureStart(raw, events),
    ...measureWindow(raw, events),
    ...stepFromStart(raw),
  ];
}
