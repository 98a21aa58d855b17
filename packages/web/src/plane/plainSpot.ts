import { bearingRad, distanceM, placeAt, type PlanePoint } from '@leeway/engine';

/** From a flag nearer than this a spot is taken, else from this far up the line to it. */
const PLAIN_M = 200;

/** A place to take a spot from that tells nothing of the choice. */
export const plainSpot = (ball: PlanePoint, flag: PlanePoint): PlanePoint =>
  distanceM(ball, flag) < PLAIN_M ? flag : placeAt(ball, bearingRad(ball, flag), PLAIN_M);
