/**
 * Which tests are run against mutants of the physics: those of the mutated rooms alone, so that each room is seen to be
 * proved by its own. Every mutant runs all tests that reach it, hence none here that simulates a whole ride.
 */
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: { include: ['tests/{model,control,measure}/*.test.ts'], testTimeout: 120_000 },
});
