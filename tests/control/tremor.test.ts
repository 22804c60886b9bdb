/** The tremor of a rider: noise of a standard deviation and a memory, against the closed forms of such a process. */
import { describe, expect, it } from 'vitest';
import * as rider from '../../src/control/rider-feedback.js';
import { plantOf } from '../../src/model/plant.js';
import { boardWith, chance, riderWith } from '../rigs.js';

const TICK = 1 / 800;

/** Ticks of an upright rider at his speed, who trembles by 3 Nm; each gives the torque for a number of chance. */
function trembling(): (memory: Float64Array, restlessness: number) => number {
  const file = riderWith({ balance: { delayS: 0.14, frequencyRadPerS: 2, dampingRatio: 0.8, tremorNm: 3 } });
  const law = rider.riderLaw(file, plantOf(boardWith(), file), TICK);
  const sensed = new Float64Array(rider.SENSED_SIZE);
  return (memory, restlessness) => {
    sensed[rider.RESTLESSNESS] = restlessness;
    rider.riderStep(law, sensed, memory);
    return memory[rider.ACTIVE_TORQUE]!;
  };
}

describe('tremor', () => {
  it('pushes the way chance says, and dies away with 0.15 s: sqrt(1 - keep^2) of its deviation a kick', () => {
    const step = trembling();
    const memory = new Float64Array(rider.RIDER_SIZE);
    const keep = Math.exp(-TICK / 0.15);
    const kick = 3 * Math.sqrt(1 - keep ** 2);
    expect(step(memory, 1)).toBeCloseTo(kick, 12);
    expect(step(memory, 0)).toBeCloseTo(keep * kick, 12);
    expect(step(memory, -2)).toBeCloseTo(keep ** 2 * kick - 2 * kick, 12);
  });

  it('has its standard deviation and a correlation of 1/e after 0.15 s', () => {
    const next = chance(77);
    const normal = () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
    const step = trembling();
    const memory = new Float64Array(rider.RIDER_SIZE);
    const tremor = Float64Array.from({ length: 400_000 }, () => {
      step(memory, normal());
      return memory[rider.TREMOR]!;
    });
    const lag = 0.15 * 800;
    let square = 0;
    let together = 0;
    for (let tick = 2000; tick + lag < tremor.length; tick++) {
      square += tremor[tick]! ** 2;
      together += tremor[tick]! * tremor[tick + lag]!;
    }
    // 500 s of a process of 0.15 s: about 1,700 independent values, 2 % of standard error.
    expect(Math.sqrt(square / (tremor.length - 2000 - lag)) / 3).toBeCloseTo(1, 1);
    expect(Math.abs(together / square - Math.exp(-1))).toBeLessThan(0.06);
  });
});
