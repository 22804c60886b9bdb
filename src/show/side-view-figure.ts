/**
 * Where are board and rider at one moment, seen from the side? Points in metres, x forward and z up, in the
 * frame of the road; the signs are those of the model: pitch > 0 turns the nose down, lean > 0 is forward.
 */
import { CENTRE_ABOVE_ANKLE_RATIO } from '../model/rider-body.js';
import type { RigShape } from './trace-view.js';

/** A point seen from the side, m. */
export interface Point {
  x: number;
  z: number;
}

/** How a rig stands at one moment: metres and radians. */
export interface Posture {
  positionM: number;
  axleHeightM: number;
  pitchRad: number;
  leanRad: number;
  legLengthM: number;
}

/** Board and rider as points and radii, m. */
export interface Figure {
  axle: Point;
  wheelRadiusM: number;
  /** Where the spoke that turns with the wheel meets the rim. */
  spoke: Point;
  nose: Point;
  tail: Point;
  ankles: Point;
  frontFoot: Point;
  rearFoot: Point;
  /** The rider's centre of mass, at his hips. */
  centre: Point;
  shoulders: Point;
  head: Point;
  headRadiusM: number;
}

/**
 * Heights above the ankles as multiples of the height of the centre of mass, from shares of stature: shoulders
 * 0.818, chin 0.870, ankles 0.039 (D. A. Winter, Biomechanics and Motor Control of Human Movement).
 */
const ANKLE_SHARE = 0.039;
const CHIN_SHARE = 0.87;
const SHOULDERS = (0.818 - ANKLE_SHARE) / CENTRE_ABOVE_ANKLE_RATIO;
const HEAD = ((1 + CHIN_SHARE) / 2 - ANKLE_SHARE) / CENTRE_ABOVE_ANKLE_RATIO;
const HEAD_RADIUS = (1 - CHIN_SHARE) / 2 / CENTRE_ABOVE_ANKLE_RATIO;

/** Top of a rider's head above his ankles [m] when he stands upright. */
export function headTopM(rig: RigShape): number {
  return rig.legLengthM * (HEAD + HEAD_RADIUS);
}

/** A point `forwardM` along and `upM` up from another, both turned by an angle [rad, forward and down positive]. */
function turned(from: Point, angleRad: number, offset: { forwardM: number; upM: number }): Point {
  const [sine, cosine] = [Math.sin(angleRad), Math.cos(angleRad)];
  return {
    x: from.x + offset.forwardM * cosine + offset.upM * sine,
    z: from.z - offset.forwardM * sine + offset.upM * cosine,
  };
}

/** The figure of a rig in a posture; the spoke turns with the distance that the wheel has rolled. */
export function figureOf(rig: RigShape, posture: Posture): Figure {
  const { pitchRad, leanRad, legLengthM } = posture;
  const axle = { x: posture.positionM, z: posture.axleHeightM };
  const onDeck = (forwardM: number, upM: number) => turned(axle, pitchRad, { forwardM, upM });
  const ankles = onDeck(0, rig.ankleAboveAxleM);
  const onBody = (upM: number) => turned(ankles, leanRad, { forwardM: 0, upM });
  const aboveCentre = (share: number) => onBody(legLengthM + (share - 1) * rig.legLengthM);
  const rolledRad = posture.positionM / rig.wheelRadiusM;
  return {
    axle,
    wheelRadiusM: rig.wheelRadiusM,
    spoke: turned(axle, rolledRad, { forwardM: 0, upM: rig.wheelRadiusM }),
    nose: onDeck(rig.reachM, -rig.tipBelowAxleM),
    tail: onDeck(-rig.reachM, -rig.tipBelowAxleM),
    ankles,
    frontFoot: onDeck(rig.halfStanceM, rig.ankleAboveAxleM),
    rearFoot: onDeck(-rig.halfStanceM, rig.ankleAboveAxleM),
    centre: onBody(legLengthM),
    shoulders: aboveCentre(SHOULDERS),
    head: aboveCentre(HEAD),
    headRadiusM: rig.legLengthM * HEAD_RADIUS,
  };
}
