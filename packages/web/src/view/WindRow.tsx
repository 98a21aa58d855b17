import { FORECAST_HEIGHT_M } from '@leeway/engine';
import type { PlanState } from '../state/plan.ts';
import { windSpeed } from '../day/words.ts';
import { WORDS } from '../words.ts';
import { OneOf } from './OneOf.tsx';

/** Height at which a wind is felt, metres. */
const FELT_HEIGHT_M = 2;
const UNIT_MPS = { yd: 0.44704, m: 0.5 };
const MOST = { yd: 40, m: 36 };

/** How strong the wind is, and whether that was forecast (at 10 m) or felt (at head height). */
export function WindRow({ state }: { readonly state: PlanState }) {
  if (state.hole.value === undefined) return undefined;
  const units = state.units.value;
  const { speedMps, heightM } = state.wind.value;
  return (
    <div class="wind-row">
      <label>
        {WORDS.wind}
        <input
          type="range"
          min={0}
          max={MOST[units]}
          value={Math.round(speedMps / UNIT_MPS[units])}
          aria-valuetext={windSpeed(speedMps, units)}
          onInput={(e) => state.windTo({ speedMps: Number(e.currentTarget.value) * UNIT_MPS[units] })}
        />
        <output class="figure">{windSpeed(speedMps, units)}</output>
      </label>
      <OneOf
        name="known"
        legend={WORDS.windKnown}
        of={WORDS.knownNames}
        value={heightM === FORECAST_HEIGHT_M ? 'forecast' : 'felt'}
        choose={(known) => state.windTo({ heightM: known === 'felt' ? FELT_HEIGHT_M : FORECAST_HEIGHT_M })}
      />
    </div>
  );
}
