import type { ShotColumn, ShotFile } from '@leeway/contract';
import { wholeLength } from '@leeway/engine';
import { Choose, Field } from '../parts/Field.tsx';
import { Keys } from '../parts/Keys.tsx';
import { units } from '../shell/remembered.ts';
import type { OfferedFile } from './files.ts';
import type { CarriesState } from './state.ts';
import { CARRIES, COLUMN_WORDS, foundWords, meansWords, rowWords } from './words.ts';

const MEANINGS = Object.keys(COLUMN_WORDS) as ShotColumn[];

/** A file as it is read: what its headings mean, its first rows, its faults; kept when the coach says so. */
export function Offered({ state, offered }: { readonly state: CarriesState; readonly offered: OfferedFile }) {
  const shown = offered.preview.value;
  const faults = [...offered.faults.value, ...(shown?.faults ?? [])];
  return (
    <section class="offered" aria-label={offered.file.name} aria-busy={offered.busy.value}>
      <h2>{offered.file.name}</h2>
      {offered.failed.value === undefined ? undefined : <p role="alert">{offered.failed.value}</p>}
      {shown === undefined ? (
        <p class="small" role="status">
          {offered.busy.value ? CARRIES.reading : ''}
        </p>
      ) : (
        <Reading offered={offered} shown={shown} />
      )}
      <h3>{CARRIES.faults}</h3>
      {faults.length === 0 ? <p class="small">{shown === undefined ? '' : CARRIES.noFaults}</p> : undefined}
      <ul class="noticed tall">
        {faults.map((fault, i) => (
          <li key={i}>{rowWords(fault)}</li>
        ))}
      </ul>
      <p role="status">
        {shown === undefined ? '' : shown.sessions.length === 0 ? CARRIES.cannotKeep : foundWords(shown)}
      </p>
      <div class="row">
        <button
          type="button"
          class="act first"
          disabled={shown === undefined || shown.sessions.length === 0 || offered.busy.value}
          onClick={() => void state.keepFile(offered)}
        >
          {CARRIES.keep}
        </button>
        <button type="button" class="act" onClick={() => state.leave(offered)}>
          {CARRIES.leave}
        </button>
      </div>
    </section>
  );
}

function Reading({ offered, shown }: { readonly offered: OfferedFile; readonly shown: ShotFile }) {
  return (
    <>
      {shown.remembered ? <p class="small">{CARRIES.remembered}</p> : undefined}
      <div class="fields">
        <Keys
          name={`units-${offered.file.name}`}
          legend={CARRIES.unitsAsked}
          of={CARRIES.unitsOf}
          value={shown.reading.units}
          choose={(value) => void offered.unitsAre(value)}
        />
        <Field label={CARRIES.day} kind="date" value={offered.date.value} set={(date) => void offered.dayIs(date)} />
        {shown.players.length < 2 ? undefined : (
          <Choose
            label={CARRIES.whose}
            value={shown.reading.of ?? ''}
            options={[['', CARRIES.whoseAsk], ...shown.players.map((name) => [name, name] as const)]}
            set={(of) => void offered.shotsOf(of)}
          />
        )}
      </div>
      <div class="scrolls" role="region" aria-label={CARRIES.heading} tabIndex={0}>
        <table class="listing">
          <thead>
            <tr>
              <th scope="col">{CARRIES.heading}</th>
              <th scope="col">{CARRIES.means}</th>
              <th scope="col">{CARRIES.unit}</th>
            </tr>
          </thead>
          <tbody>
            {shown.headings.map(({ text, meaning, unitGiven }, i) => (
              <tr key={i}>
                <th scope="row">{text}</th>
                <td>
                  <select
                    class="plain"
                    aria-label={meansWords(text)}
                    value={meaning ?? ''}
                    onChange={(e) => void offered.means(i, (e.currentTarget.value || 'ignore') as ShotColumn)}
                  >
                    {meaning === null ? (
                      <option value="" selected>
                        {CARRIES.unknown}
                      </option>
                    ) : undefined}
                    <option value="ignore" selected={meaning === 'ignore'}>
                      {CARRIES.unread}
                    </option>
                    {MEANINGS.map((column) => (
                      <option key={column} value={column} selected={meaning === column}>
                        {COLUMN_WORDS[column]}
                      </option>
                    ))}
                  </select>
                </td>
                <td class="small">{unitWords(meaning, unitGiven)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <FirstRows shown={shown} />
    </>
  );
}

const LENGTHS: readonly (ShotColumn | 'ignore' | null)[] = ['carry', 'down the line', 'side', 'total'];

const unitWords = (meaning: ShotColumn | 'ignore' | null, given: boolean): string =>
  given ? CARRIES.saysUnit : LENGTHS.includes(meaning) ? CARRIES.proposedUnit : CARRIES.noUnit;

function FirstRows({ shown }: { readonly shown: ShotFile }) {
  const { rowColumns } = CARRIES;
  const unit = units.value;
  if (shown.first.length === 0) return undefined;
  return (
    <div class="scrolls" role="region" aria-label={CARRIES.asRead} tabIndex={0}>
      <table class="listing rows">
        <caption>{CARRIES.asRead}</caption>
        <thead>
          <tr>
            <th scope="col" class="n">
              {rowColumns.line}
            </th>
            {shown.headings.map(({ text }, i) => (
              <th key={i} scope="col">
                {text}
              </th>
            ))}
            <th scope="col">{rowColumns.club}</th>
            <th scope="col" class="n">
              {rowColumns.carry}, {unit}
            </th>
            <th scope="col" class="n">
              {rowColumns.side}, {unit}
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.first.slice(0, 6).map(({ line, cells, club, swing, carryM, sideM }) => (
            <tr key={line}>
              <td class="n">{line}</td>
              {shown.headings.map((_, i) => (
                <td key={i}>{cells[i] ?? ''}</td>
              ))}
              <td>
                <b>
                  {club}, {swing}
                </b>
              </td>
              <td class="n">
                <b>{wholeLength(carryM, unit)}</b>
              </td>
              <td class="n">
                <b>{sideM === undefined ? '' : wholeLength(sideM, unit)}</b>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
