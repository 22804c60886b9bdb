/**
 * Where does the pack's energy go? At every tick of any ride what its chemistry gives is what the motor turns into
 * work, what its winding and what the pack itself turn into heat: U I = K_t i w + i^2 R_m + I^2 R. And what flows out
 * of the pack is what its charge loses. Kirchhoff's laws, no other source.
 *
 * The balance has one hole, on purpose: a motor that is already at a current takes on what it has, though a pack can
 * give no more than U^2 / 4 R. Where it takes more than that, the pack stands at its most.
 *
 * Tolerances: 1e-13 of the largest power, be it met in the ride or just what the pack can give (its current comes from a
 * root, I = (U - sqrt(U^2 - 4 R P)) / 2 R, which rounds like U / R), and 1e-14 of a full charge.
 */
import fc from 'fast-check';
import { describe } from 'vitest';
import type { Plant } from '../../src/model/plant.js';
import type { Tape } from '../../src/simulate/tape.js';
import { prepareTrial } from '../../src/simulate/trial.js';
import { profiles } from './drawn-rig.js';
import { anyRoad, circumstancesIn, scenariosOn } from './drawn-scenario.js';
import { holds } from './properties.js';
import { ride } from './ride.js';

const TOLERANCE_RATIO = 1e-13;
const CHARGE_TOLERANCE = 1e-14;

/** Voltage of the pack with nothing drawn, by straight lines through its table. */
function openV({ pack }: Plant, chargeShare: number): number {
  const table = pack.cellOpenCircuitV;
  const place = chargeShare * (table.length - 1);
  const left = Math.min(Math.floor(place), table.length - 2);
  return pack.seriesCells * (table[left]! * (left + 1 - place) + table[left + 1]! * (place - left));
}

/** What a row of a tape says of power, W: what the pack gives in all, at its terminals, what motor and pack take. */
function powersAt(plant: Plant, { columns }: Tape, tick: number) {
  const { torqueConstantNmPerA, resistanceOhm } = plant.motor;
  const [current, packCurrent] = [columns.currentA[tick]!, columns.packCurrentA[tick]!];
  const spin = columns.wheelRateRadPerS[tick]! - columns.pitchRateRadPerS[tick]!;
  const open = openV(plant, columns.chargeShare[tick]!);
  return {
    chemical: open * packCurrent,
    terminal: columns.packV[tick]! * packCurrent,
    motor: torqueConstantNmPerA * current * spin,
    winding: current * current * resistanceOhm,
    own: packCurrent * packCurrent * plant.pack.resistanceOhm,
    most: (open * open) / (4 * plant.pack.resistanceOhm),
  };
}

describe('the pack', () => {
  holds(
    'gives what motor, winding and its own resistance take, at every tick',
    fc.property(circumstancesIn(scenariosOn(anyRoad)), profiles, (circumstances, profile) => {
      const trial = prepareTrial(circumstances);
      const { tape } = ride(trial, profile);
      let [peak, gap] = [0, 0];
      for (let tick = 0; tick < tape.length; tick++) {
        const { chemical, terminal, motor, winding, own, most } = powersAt(trial.plant, tape, tick);
        const taken = Math.min(motor + winding, most);
        peak = Math.max(peak, Math.abs(chemical), Math.abs(motor), winding, own, most);
        gap = Math.max(gap, Math.abs(terminal - taken), Math.abs(chemical - taken - own));
      }
      if (!(gap <= TOLERANCE_RATIO * peak)) throw new Error(`off by ${gap} W where the largest is ${peak} W`);
    }),
  );

  holds(
    'loses just the charge that flows out of it, from tick to tick',
    fc.property(circumstancesIn(scenariosOn(anyRoad)), profiles, (circumstances, profile) => {
      const trial = prepareTrial(circumstances);
      const { columns, length } = ride(trial, profile).tape;
      let gap = 0;
      for (let tick = 1; tick < length; tick++) {
        const flown = columns.packCurrentA[tick - 1]! * trial.tickS;
        const left = columns.chargeShare[tick - 1]! - flown / trial.plant.pack.capacityC;
        gap = Math.max(gap, Math.abs(columns.chargeShare[tick]! - Math.max(0, Math.min(1, left))));
      }
      if (!(gap <= CHARGE_TOLERANCE)) throw new Error(`off by ${gap} of a full charge`);
    }),
  );
});
