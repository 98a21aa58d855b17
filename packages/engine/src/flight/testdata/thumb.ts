/**
 * What each change of the day is worth to seven reference launches at 15 °C, sea level, 50 % humidity, calm, from an independent
 * implementation: printed figures, in yards unless said. Columns: drives of 171 and 134 mph; 5-iron 175, 7-iron 155, 9-iron 130, sand
 * wedge 90 and a slow player's 7-iron 120 yd, all calibrated from their carry.
 */
export interface ThumbRow {
  readonly what: string;
  readonly day?: { readonly temperatureC?: number; readonly altitudeM?: number; readonly stationHpa?: number; readonly humidityPercent?: number };
  /** The day that the change is measured from, when it is not the reference of the table. */
  readonly against?: ThumbRow['day'];
  readonly tailMph?: number;
  readonly rightMph?: number;
  readonly windHeightM?: number;
  readonly targetHeightM?: number;
  readonly speedMph?: number;
  readonly launchDeg?: number;
  readonly spin?: number;
  /** What is read: the change of carry (yards or percent of the carry), the drift, or the change of the apex (percent) or the descent. */
  readonly read: 'yards' | 'percent' | 'drift' | 'apex percent' | 'descent';
  readonly printed: readonly number[];
}

const percent = (what: string, day: NonNullable<ThumbRow['day']>, printed: readonly number[], against?: ThumbRow['day']): ThumbRow => ({
  what,
  day,
  read: 'percent',
  printed,
  ...(against === undefined ? {} : { against }),
});
const yards = (what: string, change: Omit<ThumbRow, 'what' | 'read' | 'printed'>, printed: readonly number[]): ThumbRow => ({
  what,
  ...change,
  read: 'yards',
  printed,
});

export const THUMB: readonly ThumbRow[] = [
  percent('5 °C', { temperatureC: 5 }, [-1.75, -1.12, -1.76, -1.96, -2.04, -1.46, -0.79]),
  percent('25 °C', { temperatureC: 25 }, [1.61, 0.95, 1.64, 1.87, 1.97, 1.44, 0.66]),
  percent('35 °C', { temperatureC: 35 }, [3.1, 1.75, 3.16, 3.68, 3.91, 2.87, 1.2]),
  percent('humidity from 0 to 100 % at 30 °C', { temperatureC: 30, humidityPercent: 100 }, [0.6, 0.36, 0.65, 0.76, 0.82, 0.61, 0.28], {
    temperatureC: 30,
    humidityPercent: 0,
  }),
  percent('20 hPa less', { stationHpa: 993.25 }, [0.85, 0.55, 0.91, 1.04, 1.09, 0.81, 0.44]),
  percent('500 m up', { altitudeM: 500 }, [2.5, 1.6, 2.7, 3.0, 3.2, 2.4, 1.2]),
  percent('1000 m up', { altitudeM: 1000 }, [4.7, 2.8, 5.1, 5.9, 6.4, 4.7, 2.2]),
  percent('1600 m up', { altitudeM: 1600 }, [7.0, 3.9, 7.6, 9.1, 10.0, 7.3, 3.1]),
  percent('2000 m up', { altitudeM: 2000 }, [8.3, 4.4, 9.0, 11.1, 12.3, 8.9, 3.5]),
  { what: 'apex 1000 m up', day: { altitudeM: 1000 }, read: 'apex percent', printed: [-6.8, -7.5, -6.4, -4.6, -2.9, -2.4, -5.3] },
  { what: 'descent 1000 m up', day: { altitudeM: 1000 }, read: 'descent', printed: [-3.8, -3.6, -3.6, -3.0, -2.2, -1.9, -2.8] },
  yards('head 5 mph', { tailMph: -5 }, [-8.8, -4.7, -6.8, -7.7, -8.1, -4.8, -2.3]),
  yards('head 10 mph', { tailMph: -10 }, [-18.8, -10.5, -15.1, -16.8, -17.6, -10.7, -5.5]),
  yards('head 20 mph', { tailMph: -20 }, [-42.9, -25.9, -36.3, -39.9, -41.4, -26.5, -15.1]),
  yards('tail 5 mph', { tailMph: 5 }, [7.5, 3.6, 5.4, 6.2, 6.7, 3.8, 1.5]),
  yards('tail 10 mph', { tailMph: 10 }, [13.9, 6.1, 9.5, 11.2, 12.1, 6.8, 2.3]),
  yards('tail 20 mph', { tailMph: 20 }, [23.1, 8.5, 14.3, 17.5, 19.5, 10.8, 2.2]),
  { what: 'cross 10 mph', rightMph: 10, read: 'drift', printed: [16.7, 11.3, 13.7, 14.2, 13.6, 8.4, 7.2] },
  { what: 'cross 20 mph', rightMph: 20, read: 'drift', printed: [33.6, 22.9, 27.8, 28.8, 27.9, 17.5, 14.7] },
  yards('head 10 mph at 2 m', { tailMph: -10, windHeightM: 2 }, [-27.3, -15.7, -22.4, -24.8, -25.9, -16.0, -8.6]),
  yards('tail 10 mph at 2 m', { tailMph: 10, windHeightM: 2 }, [17.9, 7.4, 11.9, 14.1, 15.4, 8.6, 2.5]),
  yards('target 10 m up', { targetHeightM: 10 }, [-15.4, -18.4, -13.1, -11.1, -9.9, -11.2, -17.9]),
  yards('target 5 m up', { targetHeightM: 5 }, [-7.3, -8.5, -6.1, -5.3, -4.7, -5.1, -7.8]),
  yards('target 5 m down', { targetHeightM: -5 }, [6.7, 7.5, 5.6, 4.9, 4.5, 4.6, 6.6]),
  yards('target 10 m down', { targetHeightM: -10 }, [12.9, 14.2, 10.8, 9.6, 8.7, 9.0, 12.6]),
  yards('target 20 m down', { targetHeightM: -20 }, [24.2, 26.2, 20.4, 18.3, 16.9, 17.1, 23.0]),
  yards('1 mph faster', { speedMph: 1 }, [1.92, 2.2, 1.81, 1.62, 1.39, 1.45, 2.11]),
  yards('launched 1 deg higher', { launchDeg: 1 }, [2.5, 2.3, 0.4, -0.2, -0.5, -0.3, 0.8]),
  yards('launched 1 deg lower', { launchDeg: -1 }, [-2.9, -2.7, -0.6, 0.1, 0.4, 0.2, -1.0]),
  yards('10 % more spin', { spin: 1.1 }, [-0.9, -0.5, -3.7, -3.8, -2.8, -1.0, -1.3]),
  yards('10 % less spin', { spin: 0.9 }, [0.2, -0.2, 3.4, 4.1, 3.3, 1.3, 1.0]),
  yards('30 % less spin', { spin: 0.7 }, [-2.0, -2.7, 8.4, 12.1, 11.7, 5.0, 2.0]),
];
