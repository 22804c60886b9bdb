/**
 * The linear view of a ride: responses at any frequency, with the rider's delayed feedback closed or left out, and the pitch
 * loop closed or broken at the request.
 */
import { minus, over, plus, real, times, turned, type Complex } from './complex.js';
import { riderMap, riderResponse, type RiderMap } from './rider-map.js';
import { solveComplex, type RankOne } from './solve.js';
import type { SteadyRide } from './steady-ride.js';
import { INPUTS, OUTPUTS, tickMap, type InputName, type OutputName, type TickMap } from './tick-map.js';

/** The parts of the linear view of a ride. */
export interface LoopView {
  map: TickMap;
  rider: RiderMap;
  /** Highest frequency that the sampled loop knows, rad/s. */
  nyquistRadPerS: number;
}

/** Which loops are closed. */
export interface Closed {
  request: boolean;
  rider: boolean;
}

/** Linearises a ride. */
export function loopView(ride: SteadyRide): LoopView {
  const map = tickMap(ride);
  return { map, rider: riderMap(ride), nyquistRadPerS: Math.PI / map.tickS };
}

/** The terms by which closed loops add to A, at z. */
export function closingTerms({ map, rider }: LoopView, z: Complex, closed: Closed): RankOne[] {
  const output = (name: OutputName) => map.C.getRow(OUTPUTS.indexOf(name));
  const column = (name: InputName) => map.B.getColumn(INPUTS.indexOf(name));
  const terms: RankOne[] = [];
  if (closed.request) terms.push({ column: column('request'), row: output('asked').map(real) });
  if (closed.rider) {
    const answers = riderResponse(rider, z);
    const sensed = (['lean', 'leanRate', 'speed'] as const).map(output);
    const row = map.states.map((_, place) =>
      sensed.reduce((sum, values, index) => plus(sum, times(real(values[place]!), answers[index]!)), real(0)),
    );
    terms.push({ column: column('riderTorque'), row });
  }
  return terms;
}

/**
 * The response of an output to an input at a frequency [rad/s], units of output over units of input. With the request
 * closed, what the gyro gets wrong also comes in through the law at once.
 */
export function responseAt(
  view: LoopView,
  path: { from: InputName; to: OutputName },
  at: { radPerS: number; closed: Closed },
): Complex {
  const { map } = view;
  const z = turned(at.radPerS * map.tickS);
  const input = INPUTS.indexOf(path.from);
  const output = OUTPUTS.indexOf(path.to);
  const asked = OUTPUTS.indexOf('asked');
  let B = map.B.getColumnVector(input);
  const direct = map.D.get(asked, input);
  if (at.closed.request && direct !== 0) {
    B = B.clone().add(map.B.getColumnVector(INPUTS.indexOf('request')).mul(direct));
  }
  const x = solveComplex(map.A, z, B, closingTerms(view, z, at.closed));
  return x.reduce(
    (sum, [value], row) => plus(sum, times(real(map.C.get(output, row)), value!)),
    real(map.D.get(output, input)),
  );
}

/** The gain of the pitch loop broken at the request, negative feedback: what a request of 1 A comes back as, turned round. */
export function loopGain(view: LoopView, radPerS: number, { rider }: Pick<Closed, 'rider'>): Complex {
  const back = responseAt(
    view,
    { from: 'request', to: 'asked' },
    { radPerS, closed: { request: false, rider } },
  );
  return minus(real(0), back);
}

/** 1 / (1 + L): what is left of a disturbance of the request. */
export function sensitivity(loop: Complex): Complex {
  return over(real(1), plus(real(1), loop));
}
