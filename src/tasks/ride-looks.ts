/**
 * What does the linear view say of many steady rides? Each takes a tenth of a second or two, so they are shared out over threads.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import { rideLook, type RideLook } from '../linear/ride-report.js';
import type { RidePoint } from '../linear/steady-ride.js';
import type { Crew } from './crew.js';
import { shareOut, WorkFailed, type ShareOptions } from './share-out.js';

/** How rides are to be looked at; `onReport` hears how many of them are done. */
export interface RideOptions extends Pick<ShareOptions<unknown>, 'threads' | 'signal'> {
  onReport?: (done: number) => void;
}

/**
 * The reports of rides, in the order of these, no margin tried; null where a ceiling cuts the ride. Throws the reason of a signal
 * that comes before the end, or a WorkFailed for a ride that could not be looked at.
 */
export async function lookAtRides(
  points: readonly RidePoint[],
  { threads, signal, onReport }: RideOptions,
): Promise<(RideLook | null)[]> {
  const reports = new Array<RideLook | null>(points.length);
  let done = 0;
  await shareOut<RidePoint, RideLook | null>(
    points,
    { here: rideHere, byCrew: rideByCrew },
    {
      threads,
      signal,
      onDone: (index, report) => {
        reports[index] = report;
        onReport?.(++done);
      },
    },
  );
  return reports;
}

async function rideHere(point: RidePoint): Promise<RideLook | null> {
  let report: RideLook | null;
  try {
    report = rideLook(point);
  } catch (error) {
    throw failed(point, error);
  }
  await breathe();
  return report;
}

async function rideByCrew(crew: Crew, point: RidePoint): Promise<RideLook | null> {
  try {
    return await crew.ride(point);
  } catch {
    try {
      return await crew.ride(point);
    } catch (error) {
      throw failed(point, error);
    }
  }
}

function failed({ profile, rider, speedKmPerH }: RidePoint, reason: unknown): WorkFailed {
  return new WorkFailed(
    `steady ride at ${speedKmPerH} km/h, rider of ${rider.body.massKg} kg`,
    profile,
    reason,
  );
}
