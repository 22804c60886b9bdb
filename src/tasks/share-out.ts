/**
 * Work shared out over threads: those of a crew, so that the main thread stays free for a screen, or the main thread and others
 * that are opened for the occasion. What a thread fails at is tried once more; what fails again is told by name, once all that
 * was in hand is done.
 */
import type { ProfileFile } from '../quantity/profile-file.js';
import { openCrew, type Crew } from './crew.js';

/** Who computes: a count of threads, the main one among them; or a crew that is open already. */
export type Labour = number | Crew;

/**
 * How pieces of work are to be done; `onDone` hears of each as it ends, in no fixed order. After `signal` has come no further one
 * is begun, and none is told of.
 */
export interface ShareOptions<Answer> {
  threads: Labour;
  signal?: AbortSignal | undefined;
  onDone: (index: number, answer: Answer) => void;
}

/** A kind of work: how a piece of it is done here, with a breath after each long part in which signals are heard, and by a crew. */
export interface Craft<Piece, Answer> {
  here: (piece: Piece) => Promise<Answer>;
  byCrew: (crew: Crew, piece: Piece) => Promise<Answer>;
}

/** What could not be computed: where, with which profile, and what came in its place. */
export class WorkFailed extends Error {
  // Private, so that whoever prints the error does not print a whole profile with it.
  readonly #profile: ProfileFile;

  constructor(where: string, profile: ProfileFile, reason: unknown) {
    const said = reason instanceof Error ? reason.message : String(reason);
    super(`${where}: ${said}`, { cause: reason });
    this.#profile = profile;
  }

  get profile(): ProfileFile {
    return this.#profile;
  }
}

/**
 * Does all pieces, begun in their order. Throws the reason of a signal that comes before the end, what the craft throws for a
 * piece that could not be done, or what `onDone` threw.
 */
export async function shareOut<Piece, Answer>(
  pieces: readonly Piece[],
  { here, byCrew }: Craft<Piece, Answer>,
  options: ShareOptions<Answer>,
): Promise<void> {
  const { threads, signal } = options;
  const waiting = waitingList(pieces, options);
  const handOver = (crew: Crew) => {
    const keepBusy = () => workThrough(waiting, (piece) => byCrew(crew, piece));
    return allEnded(Array.from({ length: crew.size }, keepBusy));
  };
  if (typeof threads !== 'number') {
    await handOver(threads);
  } else {
    const others = Math.min(threads, pieces.length) - 1;
    const crew = others > 0 ? await openCrew(others) : undefined;
    try {
      await allEnded([workThrough(waiting, here), ...(crew === undefined ? [] : [handOver(crew)])]);
    } finally {
      await crew?.close();
    }
  }
  signal?.throwIfAborted();
}

/** What is left to do: `next` takes a piece out, `done` hands in its answer, `end` leaves the rest undone. */
interface WaitingList<Piece, Answer> {
  next: () => { index: number; piece: Piece } | undefined;
  done: (index: number, answer: Answer) => void;
  end: () => void;
}

function waitingList<Piece, Answer>(
  pieces: readonly Piece[],
  { signal, onDone }: ShareOptions<Answer>,
): WaitingList<Piece, Answer> {
  let index = -1;
  return {
    next: () => {
      if (signal?.aborted) return undefined;
      index += 1;
      const piece = pieces[index];
      return piece === undefined ? undefined : { index, piece };
    },
    done: (at, answer) => {
      if (!signal?.aborted) onDone(at, answer);
    },
    end: () => (index = pieces.length),
  };
}

/** Takes pieces out until none is left; a failure ends the list for all who take from it. */
async function workThrough<Piece, Answer>(
  waiting: WaitingList<Piece, Answer>,
  compute: (piece: Piece) => Promise<Answer>,
): Promise<void> {
  try {
    for (let next = waiting.next(); next !== undefined; next = waiting.next()) {
      waiting.done(next.index, await compute(next.piece));
    }
  } catch (error) {
    waiting.end();
    throw error;
  }
}

/** Waits for all, then throws what the first of them that failed threw. */
async function allEnded(works: readonly Promise<void>[]): Promise<void> {
  const ends = await Promise.allSettled(works);
  for (const end of ends) if (end.status === 'rejected') throw end.reason;
}
