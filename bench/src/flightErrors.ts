import { MEASURED, type MeasuredGroup } from '@leeway/engine/testdata/measured';
import { type Figure, FIGURES, modelled, totals } from '@leeway/engine/testdata/measuredErrors';

const HEADINGS: { readonly [F in Figure]: readonly [heading: string, decimals: number] } = {
  carryYd: ['carry yd', 1],
  apexFt: ['apex ft', 1],
  apexAtYd: ['apex at yd', 1],
  timeS: ['time s', 2],
};
const WIDE = 15;
const RIGHT = 7;

const signed = (value: number, decimals: number): string =>
  `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(decimals)}`;

function figure(group: MeasuredGroup, model: { readonly [F in Figure]: number }, name: Figure): string {
  const seen = group[name];
  if (seen === undefined) return '-'.padStart(WIDE);
  const [, decimals] = HEADINGS[name];
  const error = signed(model[name] - seen.observed, decimals);
  return `${seen.observed.toFixed(decimals)} ${error}${seen.weak ? '*' : ' '}`.padStart(WIDE);
}

/** The model's errors on every measured group, a line each, and their totals: observed, and model less observed. */
export function errorTable(): string {
  const heading = [
    'group'.padEnd(6),
    'shots'.padStart(5),
    'mph'.padStart(RIGHT),
    'deg'.padStart(6),
    'rpm'.padStart(6),
    'kg/m3'.padStart(RIGHT),
    ...FIGURES.map((name) => `${HEADINGS[name][0]} `.padStart(WIDE)),
  ].join('');
  const lines = MEASURED.map((group) => {
    const model = modelled(group);
    return [
      String(group.group).padEnd(6),
      String(group.shots).padStart(5),
      group.speedMph.toFixed(1).padStart(RIGHT),
      group.launchDeg.toFixed(1).padStart(6),
      String(group.spinRpm).padStart(6),
      group.densityKgM3.toFixed(3).padStart(RIGHT),
      ...FIGURES.map((name) => figure(group, model, name)),
    ]
      .join('')
      .trimEnd();
  });
  const sums = FIGURES.map((name) => {
    const { n, bias, rms } = totals(name);
    const [title, decimals] = HEADINGS[name];
    return `${title}: mean ${signed(bias, decimals)}, root mean square ${rms.toFixed(decimals)} (${n} groups)`;
  });
  return [heading.trimEnd(), ...lines, '', ...sums].join('\n');
}
