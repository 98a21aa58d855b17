import { describe, expect, test } from 'vitest';
import { MEASURED } from './testdata/measured.ts';
import { type Figure, FIGURES, flight, modelled, totals } from './testdata/measuredErrors.ts';

/** How closely another implementation's errors are met; its launches are rounded as printed. */
const WITHIN: { readonly [F in Figure]: number } = { carryYd: 0.3, apexFt: 0.5, apexAtYd: 0.3, timeS: 0.03 };

describe('measured flights', () => {
  test.each(MEASURED)('group $group: the errors are as printed', (group) => {
    const model = modelled(group);
    for (const figure of FIGURES) {
      const seen = group[figure];
      if (seen === undefined) continue;
      const off = Math.abs(model[figure] - seen.observed - seen.error);
      expect({ figure, met: off < WITHIN[figure], off }).toMatchObject({ met: true });
    }
  });

  test.each(MEASURED)('group $group: denser air shortens it', (group) => {
    const carryM = (share: number): number => flight(group, 0, share * group.densityKgM3).carryM;
    for (const share of [0.85, 0.9, 0.95, 1, 1.05]) expect(carryM(share + 0.05)).toBeLessThan(carryM(share));
  });

  test('all together: carry within 3.2 yd, apex within 3.9 ft and time within .1 s, root mean square', () => {
    expect(totals('carryYd')).toMatchObject({ n: 15 });
    expect(totals('carryYd').bias).toBeCloseTo(1.2, 0);
    expect(totals('carryYd').rms).toBeCloseTo(3.2, 1);
    expect(totals('apexFt').bias).toBeLessThan(0.3);
    expect(totals('apexFt').rms).toBeCloseTo(3.9, 1);
    expect(totals('apexAtYd').rms).toBeCloseTo(1.7, 0);
    expect(totals('timeS')).toMatchObject({ n: 17 });
    expect(totals('timeS').rms).toBeCloseTo(0.1, 1);
  });
});
