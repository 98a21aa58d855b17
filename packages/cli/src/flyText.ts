import type { FlyDocument } from '@leeway/contract';
import { FOOT_M, YARD_M } from '@leeway/engine';
import type { Units } from './quantities.ts';

/** Mile = 1.609344 km, exactly. */
const MPH_MPS = 0.44704;

const GROUND_WORDS: { readonly [S in FlyDocument['surface']]: string } = {
  fairway: 'on fairway',
  tee: 'on a tee',
  green: 'on a green',
  rough: 'in rough',
  recovery: 'among trees',
  out: 'out of bounds',
  bunker: 'in sand',
  penalty: 'in water',
};

/** A flown ball in words, four lines. */
export function flyText(d: FlyDocument, units: Units): string {
  const yards = units === 'yd';
  const length = (m: number): string => (yards ? `${(m / YARD_M).toFixed(1)} yd` : `${m.toFixed(1)} m`);
  const height = (m: number): string => (yards ? `${(m / FOOT_M).toFixed(0)} ft` : `${m.toFixed(1)} m`);
  const speed = yards ? `${(d.landingSpeedMps / MPH_MPS).toFixed(0)} mph` : `${d.landingSpeedMps.toFixed(1)} m/s`;
  const side = Math.abs(d.sideM) < 0.05 ? 'on line' : `${length(Math.abs(d.sideM))} ${d.sideM < 0 ? 'left' : 'right'}`;
  return [
    `Carries ${length(d.carryM)}, ${side}.`,
    `Apex ${height(d.apexM)} at ${length(d.apexAtM)}; ${d.timeS.toFixed(1)} s in the air.`,
    `Comes down at ${d.descentDeg.toFixed(0)} degrees, ${speed}, ${d.landingSpinRpm.toFixed(0)} rpm.`,
    runWords(d, length),
    '',
  ].join('\n');
}

function runWords(d: FlyDocument, length: (m: number) => string): string {
  if (d.surface === 'bunker' || d.surface === 'penalty') return `Stays ${GROUND_WORDS[d.surface]}.`;
  const assumed = d.assumed.length === 0 ? '' : ` Assumed: ${d.assumed.map((a) => ASSUMED_WORDS[a]).join(', ')}.`;
  const way = d.runM < 0 ? 'Comes back' : 'Runs';
  return `${way} ${length(Math.abs(d.runM))} ${GROUND_WORDS[d.surface]}, give or take two fifths.${assumed}`;
}

const ASSUMED_WORDS: { readonly [A in FlyDocument['assumed'][number]]: string } = {
  firmness: 'normal firmness',
  'green speed': 'a usual green',
  surface: 'a fairway',
};
