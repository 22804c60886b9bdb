/**
 * Forces of the road on the tyre: a spring and damper that can only push, and a tread that shears
 * until grip is used up.
 *
 *   pen   squash, m                      pen = (h_c + r - z) / s,  s = sqrt(1 + h_c'^2)
 *   N     wheel load, N                  N = max(0, k_t pen - c_t v_n) while pen > 0
 *   v_s   tread sliding speed, m/s       v_s = r psi' - v_t
 *   T     force on the tread, N          T = clamp(k_x u + c_x v_s, +-mu N), positive drives forward
 */
import { readGround, type Ground } from './ground.js';
import type { Plant } from './plant.js';
import { GRIP, RATE, ROAD_HEIGHT, ROAD_SLOPE, TREAD, TREAD_FORCE, WHEEL, WHEEL_LOAD, X, Z } from './state.js';

/** Writes wheel load and tread force, the road under the axle and the rate of the tread shear into `out`. */
export function tyreForces(
  plant: Plant,
  ground: Ground,
  inputs: Float64Array,
  state: Float64Array,
  out: Float64Array,
): void {
  readGround(ground, state[X]!, out);
  const slope = out[ROAD_SLOPE]!;
  const s = Math.sqrt(1 + slope * slope);
  const xRate = state[X + RATE]!;
  const zRate = state[Z + RATE]!;
  const alongSpeed = (xRate + slope * zRate) / s;
  const slide = plant.wheelRadiusM * state[WHEEL + RATE]! - alongSpeed;
  const squash = (out[ROAD_HEIGHT]! + plant.wheelRadiusM - state[Z]!) / s;
  out[TREAD] = slide;
  if (squash <= 0) {
    out[WHEEL_LOAD] = 0;
    out[TREAD_FORCE] = 0;
    return;
  }
  const awaySpeed = (zRate - slope * xRate) / s;
  const load = Math.max(0, plant.verticalStiffnessNPerM * squash - plant.verticalDampingNSPerM * awaySpeed);
  const most = inputs[GRIP]! * load;
  const shear = plant.treadStiffnessNPerM * state[TREAD]! + plant.treadDampingNSPerM * slide;
  out[WHEEL_LOAD] = load;
  out[TREAD_FORCE] = Math.max(-most, Math.min(most, shear));
}

/**
 * Brings the tread shear of `state` back to what grip can hold under the wheel load in `rates`, which `derive` filled; to
 * be called after every accepted step. True when it had to.
 */
export function releaseTread(
  plant: Plant,
  inputs: Float64Array,
  rates: Float64Array,
  state: Float64Array,
): boolean {
  const most = (inputs[GRIP]! * rates[WHEEL_LOAD]!) / plant.treadStiffnessNPerM;
  const shear = state[TREAD]!;
  if (shear >= -most && shear <= most) return false;
  state[TREAD] = shear > 0 ? most : -most;
  return true;
}
