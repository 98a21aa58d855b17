import { distanceM } from '@leeway/engine';
import { holesRound } from '../state/holes.ts';
import type { PlanState } from '../state/plan.ts';
import { greenAlong } from '../plane/greenAlong.ts';
import {
  cautionsOf,
  clubWordsOf,
  driftWords,
  endsEarlyWords,
  type Figured,
  flagWords,
  holeAndPar,
  holeName,
  landsWords,
  lieWords,
  ownCostWords,
  ownOptionWords,
  plainLine,
  spotLine,
  startWords,
  strokesWords,
  WORDS,
} from '../words.ts';
import { Bitmap } from './Bitmap.tsx';
import { Finishes } from './Finishes.tsx';
import { SpotMark } from './Sign.tsx';
import { TodaysNumber } from './TodaysNumber.tsx';

/** The choice: club and swing, spot, start line, drift; its strokes beside the plain line's; how far; today's number; where it finishes. */
export function ShotWords({ state }: { readonly state: PlanState }) {
  const shot = state.shot.value;
  if (shot === undefined) return <NotYet state={state} />;
  const { value: units } = state.units;
  const { club, swing } = clubWordsOf(shot);
  const caution = cautionsOf(shot);
  const last = state.index.value === (state.plan.value?.shots.length ?? 0) - 1;
  const endsEarly = last ? state.plan.value?.endsEarly : undefined;
  return (
    <>
      <div class="advice">
        <div>
          <h2 data-figure="option">
            <span>{club},</span> <span>{swing}</span>
          </h2>
          <p class="spot">
            <SpotMark />
            <span data-figure="spot">{spotLine(shot, units)}</span>
          </p>
          <div class="start">
            {state.own.at.value === undefined ? (
              <>
                <p>{startWords(shot)}</p>
                <p class="drift">{driftWords(shot, units)}</p>
              </>
            ) : (
              <OwnSpot state={state} />
            )}
          </div>
        </div>
        <div class="index">
          <Bitmap picture={state.sheets.index} id="index-words" />
        </div>
      </div>
      <div class="sums">
        <Strokes state={state} />
        <Distances state={state} />
        <TodaysNumber shot={shot} units={units} wind={state.wind.value} />
      </div>
      <Finishes shot={shot} />
      {caution === undefined ? undefined : (
        <p class="caution">
          <b>{WORDS.caution}</b> {caution}
        </p>
      )}
      {endsEarly === undefined ? undefined : <p class="ends">{endsEarlyWords(endsEarly)}</p>}
    </>
  );
}

/** While a hole is worked out its name stands where the choice will, and the room is kept. */
function NotYet({ state }: { readonly state: PlanState }) {
  const { hole } = holesRound(state.open.value);
  return (
    <div class="not-yet">
      {hole === undefined ? undefined : (
        <>
          <h2>{holeName(hole)}</h2>
          <p>{holeAndPar(hole)}</p>
        </>
      )}
    </div>
  );
}

/** What a spot of the user's own is played with and costs, in the place of the start line. */
function OwnSpot({ state }: { readonly state: PlanState }) {
  const { at, cost } = { at: state.own.at.value, cost: state.own.cost.value };
  const ball = state.ball.value;
  const pastM = at && ball && cost ? distanceM(ball, cost.spot) - distanceM(ball, at) : 0;
  return (
    <>
      <p>{ownOptionWords(cost, pastM, state.units.value)}</p>
      <p class="own">
        {cost === undefined ? undefined : <b data-figure="costsMore">{ownCostWords(cost)}</b>}
        <button type="button" class="link" onClick={() => state.own.giveUp()}>
          {WORDS.giveUpSpot}
        </button>
      </p>
    </>
  );
}

function Strokes({ state }: { readonly state: PlanState }) {
  const shot = state.shot.value;
  if (shot === undefined) return undefined;
  const plain = plainLine(shot);
  return (
    <dl class="strokes">
      <div>
        <dt>
          <span class="wide">{WORDS.expected.wide}</span>
          {WORDS.expected.words}
        </dt>
        <dd data-figure="expected">{strokesWords(shot.expectedStrokes)}</dd>
      </div>
      {plain === undefined ? undefined : (
        <div class="plain">
          <dt>
            <span class="wide">{plain.wide}</span>
            {plain.words}
          </dt>
          <dd>{plain.strokes}</dd>
        </div>
      )}
    </dl>
  );
}

function Distances({ state }: { readonly state: PlanState }) {
  const { shot, ball, hole } = { shot: state.shot.value, ball: state.ball.value, hole: state.hole.value };
  const flag = state.flag.value;
  if (shot === undefined || ball === undefined || hole === undefined || flag === undefined) return undefined;
  const { value: units } = state.units;
  const lie = lieWords(shot);
  return (
    <div class="lands">
      <p>
        <Figures of={landsWords(shot, units)} />
      </p>
      <p>
        <Figures of={flagWords(shot, greenAlong(ball, flag, hole.green), units)} />
      </p>
      {lie === '' ? undefined : <p>{lie}</p>}
    </div>
  );
}

/** A sentence with its figures in the sans. */
const Figures = ({ of }: { readonly of: Figured }) => (
  <>
    {of.map(({ words, figure }, i) =>
      figure === undefined ? (
        words
      ) : (
        <b key={i} class="figure">
          {figure}
        </b>
      ),
    )}
  </>
);
