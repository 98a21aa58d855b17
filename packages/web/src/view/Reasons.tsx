import type { PlanState } from '../state/plan.ts';
import { othersHeading, othersOf, reasonsOf, simplestOf, whyHeading, WORDS } from '../words.ts';

interface Of {
  readonly state: PlanState;
}

/** Why not the plain line. */
export function Why({ state }: Of) {
  const shot = state.shot.value;
  if (shot === undefined) return undefined;
  const reasons = reasonsOf(shot);
  return (
    <section class="why">
      {reasons.length === 0 ? undefined : <h3>{whyHeading(shot)}</h3>}
      {reasons.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
    </section>
  );
}

/** The second and third choice, with what they cost more; a plainer stroke that ties. */
export function Others({ state }: Of) {
  const { shot, units } = { shot: state.shot.value, units: state.units.value };
  if (shot === undefined) return undefined;
  const others = othersOf(shot, units);
  const simplest = simplestOf(shot, units);
  return (
    <section class="others">
      {others.length === 0 ? undefined : (
        <>
          <div class="others-head">
            <h3>{othersHeading(others.length)}</h3>
            <span class="small">{WORDS.costsMore}</span>
          </div>
          <ul>
            {others.map(({ what, why, costs }) => (
              <li key={what}>
                {what}
                <span class="figure">{costs}</span>
                <span class="small">{why}</span>
              </li>
            ))}
          </ul>
        </>
      )}
      {simplest === undefined ? undefined : <p class="plainer">{simplest}</p>}
    </section>
  );
}
