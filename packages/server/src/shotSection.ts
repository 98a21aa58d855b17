import {
  DRIFT_M,
  evidenceWords,
  finishWords,
  fromWords,
  shotTitle,
  TIE_STROKES,
  type HoleDocument,
  type ShotDocument,
} from '@leeway/contract';
import { capital, cautionWords, lengthWords, optionWords, spotWords, strokesWords, wholeLength } from '@leeway/engine';
import { html, type Html } from './html.ts';

const SPOT_MARK = html`<svg viewBox="0 0 25 22" aria-hidden="true">
  <path d="M12.5 2 23.5 20.5H1.5Z" fill="none" stroke="#bf3a08" stroke-width="2.3" />
  <circle cx="12.5" cy="14" r="2.6" fill="#bf3a08" />
</svg>`;

/** One shot: club and swing, spot, start; what it costs beside the plain line, how far, the chances, why, what else, how sure. */
export function shotSection(shot: ShotDocument, index: number): Html {
  return html`<section class="shot">
    <p class="which">
      ${shotTitle(index)}: ${lengthWords(shot.toFlagM, 'yd')} to the
      flag${fromWords(shot.lie)}${shot.dropped === true ? ', after a drop' : ''}
    </p>
    <h2>${capital(optionWords(shot.option))}</h2>
    <p class="spot">${SPOT_MARK}<span>Spot ${spotWords(shot.spot, 'yd')}.</span></p>
    ${shot.startLine === undefined ? undefined : html`<p class="start">Start line: ${shot.startLine}.</p>`}
    ${drift(shot)}
    <div class="sums">
      <div>${strokes(shot)}${distances(shot)}</div>
      ${todaysNumber(shot)}
    </div>
    ${caution(shot)}
    <h3>Where it finishes, of 100 balls</h3>
    <ul class="chances">
      ${finishWords(shot.chances).map(([name, balls]) => html`<li>${name} <b>${balls}</b></li>`)}
    </ul>
    ${shot.reasons.length === 0 ? undefined : html`<h3>Why</h3>`}
    ${shot.reasons.map((reason) => html`<p>${reason}</p>`)} ${alternatives(shot)}
    <h3>How sure</h3>
    <p>${capital(evidenceWords(shot))}${sureWords(shot.expectedStrokes, shot.doubt)}.</p>
  </section>`;
}

function drift(shot: ShotDocument): Html | undefined {
  const driftM = shot.aim.rightOfFlagM - shot.spot.rightOfFlagM;
  if (Math.abs(driftM) < DRIFT_M) return undefined;
  const [start, back] = driftM < 0 ? ['left', 'right'] : ['right', 'left'];
  const by = lengthWords(Math.abs(driftM), 'yd');
  return html`<p class="drift">Start it ${by} ${start} of the spot; good strikes finish that much ${back}.</p>`;
}

function strokes(shot: ShotDocument): Html {
  const plain = shot.atFlag ?? shot.middleOfFairway;
  const where = shot.atFlag === undefined ? 'middle of the fairway' : 'straight at the flag';
  const other = plain && optionWords(plain.option) !== optionWords(shot.option) ? `, ${optionWords(plain.option)}` : '';
  return html`<dl class="strokes">
    <div>
      <dt>strokes expected</dt>
      <dd>${strokesWords(shot.expectedStrokes)}</dd>
    </div>
    ${
      plain === undefined
        ? undefined
        : html`<div class="plain">
            <dt>${where}${other}</dt>
            <dd>${strokesWords(plain.expectedStrokes)}</dd>
          </div>`
    }
  </dl>`;
}

function distances(shot: ShotDocument): Html {
  const verb = shot.lie === 'tee' ? 'Carries' : 'Lands';
  const leftM = Math.hypot(shot.spot.beyondFlagM, shot.spot.rightOfFlagM);
  const leaves = shot.atFlag === undefined ? `, leaves ${lengthWords(leftM, 'yd')}` : ' yd';
  return html`<p class="figure">
    ${verb} ${wholeLength(shot.landsM, 'yd')}, finishes ${wholeLength(shot.finishesM, 'yd')}${leaves}.
  </p>`;
}

/** The sum that a caddie writes. Parts are rounded, then summed, so that they add up as printed; a part that is nought is left out. */
function todaysNumber({ todaysNumber: number, lie }: ShotDocument): Html {
  const lands = wholeLength(number.toLandingM, 'yd');
  const parts = (
    [
      ['wind', number.windM],
      ['slope', number.slopeM],
      ['air', number.airM],
      ['lie', number.lieM],
    ] as const
  )
    .map(([name, m]) => [name, wholeLength(m, 'yd')] as const)
    .filter(([, yards]) => yards !== 0);
  const plays = parts.reduce((sum, [, yards]) => sum + yards, lands);
  const row = (name: string, figure: string): Html =>
    html`<tr>
      <th scope="row">${name}</th>
      <td>${figure}</td>
    </tr>`;
  return html`<table class="number">
    <caption>
      today’s number
    </caption>
    <tbody>
      ${row(lie === 'tee' ? 'carries' : 'lands', String(lands))}
      ${parts.map(([name, yards]) => row(name, `${yards < 0 ? '−' : '+'}${Math.abs(yards)}`))}
      ${row('plays', `${plays}`)}
    </tbody>
  </table>`;
}

function caution(shot: ShotDocument): Html | undefined {
  if (shot.flagged === undefined) return undefined;
  const names = shot.flagged.map(({ kind, name }) => cautionWords(name === undefined ? { kind } : { kind, name }));
  return html`<p class="caution">
    Caution: balls of this pattern reach ${[...new Set(names)].join(', ')}. Be sure that nobody is there before you
    play.
  </p>`;
}

function alternatives(shot: ShotDocument): Html | undefined {
  if (shot.alternatives.length === 0) return undefined;
  return html`<table class="else">
    <caption>
      What else, and what it costs more
    </caption>
    <tbody>
      ${shot.alternatives.map(
        (other) =>
          html`<tr>
            <th scope="row">
              ${capital(optionWords(other.option))}, spot ${spotWords(other.spot, 'yd')}
              ${other.costsMore < TIE_STROKES ? undefined : html`<br /><span class="small">${other.why}</span>`}
            </th>
            <td>${other.costsMore < TIE_STROKES ? 'a tie' : strokesWords(other.costsMore)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** `, sure to ±0.04`, four times in five; nothing where no doubt is known. */
export const sureWords = (expected: number, doubt: HoleDocument['doubt']): string =>
  doubt.se > 0 ? `, sure to ±${strokesWords(doubt.hi80 - expected)}, four times in five` : '';
