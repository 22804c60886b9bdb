/**
 * How is a property held up to chance? Every one prints its seed and its number of runs as it begins, so that any
 * failure can be called again. The seed is a fixed one, so that the same source passes or fails the same everywhere;
 * PROPERTY_SEED sets another, `PROPERTY_SEED=new` draws one, to go hunting. PROPERTY_RUNS sets the number of runs (1,000
 * in CI, else 100). A failure shows the counter-example that fast-check found, made as small as it could.
 */
import fc from 'fast-check';
import { it } from 'vitest';

const USUAL_SEED = 20_261_125;
const RUNS_IN_CI = 1000;
const RUNS_BY_HAND = 100;

/** Long enough for 1,000 runs on a slow machine, ms; half of it ends the shrinking of a counter-example. */
const PATIENCE_MS = 600_000;

function wholeFrom(name: string): number | undefined {
  const word = process.env[name];
  if (word === undefined || word === '') return undefined;
  const value = Number(word);
  if (!Number.isSafeInteger(value)) throw new Error(`${name} is a whole number, not '${word}'`);
  return value;
}

function seedWanted(): number {
  if (process.env['PROPERTY_SEED'] === 'new') return Math.trunc(Math.random() * 2 ** 31);
  return wholeFrom('PROPERTY_SEED') ?? USUAL_SEED;
}

/** A test that holds a property, plain or asynchronous, up to chance; with a `share` of the usual runs where each takes long. */
export function holds<T>(name: string, property: fc.IRawProperty<T>, { share = 1 } = {}): void {
  it(
    name,
    async () => {
      const seed = seedWanted();
      const wanted = wholeFrom('PROPERTY_RUNS') ?? (process.env['CI'] ? RUNS_IN_CI : RUNS_BY_HAND);
      const numRuns = Math.ceil(share * wanted);
      process.stdout.write(`PROPERTY_SEED=${seed} PROPERTY_RUNS=${numRuns} ${name}\n`);
      await fc.assert(property, {
        seed,
        numRuns,
        interruptAfterTimeLimit: PATIENCE_MS / 2,
        markInterruptAsFailure: true,
      });
    },
    PATIENCE_MS,
  );
}
