import type { ShotDocument } from '@leeway/contract';
import type { Units, Wind } from '@leeway/engine';
import { windAlong } from '../day/words.ts';
import { sumOf, WORDS } from '../words.ts';

/** Today's number as a pencilled sum. */
export function TodaysNumber({
  shot,
  units,
  wind,
}: {
  readonly shot: ShotDocument;
  readonly units: Units;
  readonly wind: Wind;
}) {
  const { lines, total } = sumOf(shot, units, windAlong(shot, wind));
  return (
    <table class="sum">
      <caption>{WORDS.todaysNumber}</caption>
      <tbody>
        {lines.map(({ words, figure, between, nought }) => (
          <tr key={words} class={nought ? 'nought' : undefined}>
            <th scope="row">
              {words} {between !== undefined && <small>{between}</small>}
            </th>
            <td>{figure}</td>
          </tr>
        ))}
        <tr class="total">
          <th scope="row">{WORDS.plays}</th>
          <td>
            <svg viewBox="0 0 54 8" preserveAspectRatio="none" aria-hidden="true">
              <path class="sign-ink" stroke-width="1.5" d="M1 3.2C14 1.4 36 1.2 53 2.8" />
              <path class="sign-ink" stroke-width="0.9" opacity="0.4" d="M4 4.6C18 3.4 34 3 50 4.4" />
            </svg>
            {total}
          </td>
        </tr>
      </tbody>
    </table>
  );
}
