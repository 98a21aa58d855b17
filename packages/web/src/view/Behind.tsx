import type { Units } from '@leeway/engine';
import type { Behind as Answer } from '../asks.ts';
import { ballsDrawn } from '../plane/ballsDrawn.ts';
import type { PlanState } from '../state/plan.ts';
import { behindWords, dateWords, sideWords, wholeLength, WORDS } from '../words.ts';
import { sureLong } from '../sure/words.ts';

interface Shown {
  readonly balls: Answer['balls'];
  readonly units: Units;
}

/** The balls behind the answer: how sure in full, a drawing of them, the same in words, and each ball by its day. */
export function Behind({ state }: { readonly state: PlanState }) {
  const { behind, shot, units } = { behind: state.behind.value, shot: state.shot.value, units: state.units.value };
  return (
    <div id="behind">
      {behind === undefined || shot === undefined ? undefined : (
        <section class="behind">
          <h3>{WORDS.howSure}</h3>
          <p>{sureLong(shot)}</p>
          {behind === 'asked' ? <p role="status">{WORDS.fetching}</p> : <Balls balls={behind.balls} units={units} />}
        </section>
      )}
    </div>
  );
}

function Balls({ balls, units }: Shown) {
  return (
    <>
      <figure>
        {balls.length === 0 ? undefined : <Drawing balls={balls} units={units} />}
        <figcaption>{behindWords(balls, units)}</figcaption>
      </figure>
      {balls.length === 0 ? undefined : <BallByBall balls={balls} units={units} />}
    </>
  );
}

/** Carry along the sheet, side across it; a mishit is a ring. */
function Drawing({ balls, units }: Shown) {
  const { widthPx: w, heightPx: h, middleY, dots, rule } = ballsDrawn(balls, units);
  return (
    <svg viewBox={`0 0 ${w} ${h}`} aria-hidden="true">
      <rect
        x="1.1"
        y="1.1"
        width={w - 2.2}
        height={h - 2.2}
        fill="var(--sheet)"
        stroke="var(--ink)"
        stroke-width="2.2"
      />
      <rect x="12" y="12" width={w - 24} height={h - 24} fill="none" stroke="var(--ink)" stroke-width="0.9" />
      {rule.map(({ x, widthPx, inked, figure, figureX }) => (
        <g key={x}>
          {inked ? <rect x={x} y={h - 12} width={widthPx} height="7" fill="var(--ink)" /> : undefined}
          {figure === undefined ? undefined : (
            <text class="rule-figure" x={figureX} y={h - 18}>
              {figure}
            </text>
          )}
        </g>
      ))}
      <rect x="5" y="5" width={w - 10} height={h - 10} fill="none" stroke="var(--ink)" stroke-width="0.9" />
      <path d={`M12 ${middleY}H${w - 12}`} class="sign-ink" stroke-width="1.1" stroke-dasharray="0.01 4" />
      {dots.map(({ x, y, mishit }, i) =>
        mishit ? (
          <circle key={i} cx={x} cy={y} r="2.4" fill="var(--sheet)" stroke="var(--ink)" stroke-width="1" />
        ) : (
          <circle key={i} cx={x} cy={y} r="1.9" fill="var(--ink)" />
        ),
      )}
    </svg>
  );
}

const BallByBall = ({ balls, units }: Shown) => (
  <details>
    <summary>{WORDS.ballByBall}</summary>
    <div class="table" tabIndex={0} role="region" aria-label={WORDS.ballByBall}>
      <table>
        <thead>
          <tr>
            <th scope="col">{WORDS.ballColumns.date}</th>
            <th scope="col">
              {WORDS.ballColumns.carry}, {units}
            </th>
            <th scope="col">{WORDS.ballColumns.side}</th>
            <th scope="col">{WORDS.ballColumns.strike}</th>
          </tr>
        </thead>
        <tbody>
          {balls.map((ball, i) => (
            <tr key={i}>
              <td>{ball.date === undefined ? WORDS.noDate : dateWords(ball.date)}</td>
              <td>{wholeLength(ball.carryM, units)}</td>
              <td>{sideWords(ball.sideM, units)}</td>
              <td>{ball.mishit ? WORDS.mishit : WORDS.goodStrike}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  </details>
);
