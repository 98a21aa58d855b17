import { barScene } from '@leeway/chart';
import type { Account, Row } from './account.ts';
import { Painted } from './Painted.tsx';
import type { LedgerState } from './state.ts';
import { barWords, betweenWords, LEDGER, ROW_WORDS, tenths } from './words.ts';

const SIZE = { widthPx: 280, heightPx: 30 };

/** The account as a table and a picture: what choosing cost, and apart from it what the day did. Every row opens the shots behind it. */
export function AccountTable(props: {
  readonly state: LedgerState;
  readonly account: Account;
  readonly others: number;
}) {
  const { state, account, others } = props;
  const { choice, usual, choiceTotal, usualTotal } = account;
  const line = (row: Row) => <Line key={row.name} state={state} row={row} account={account} others={others} />;
  const ticks = [];
  for (let at = account.scale.from; at <= account.scale.to; at += 0.5) ticks.push(at);
  const place = (at: number): string =>
    `${(100 * (at - account.scale.from)) / (account.scale.to - account.scale.from)}%`;
  return (
    <div class="scrolls" role="region" aria-label={LEDGER.table} tabIndex={0}>
      <table class="account">
        <thead>
          <tr>
            <th scope="col">{LEDGER.table}</th>
            <th scope="col" class="n">
              {LEDGER.lost}
            </th>
            <td class="bar">
              {ticks.map((at) => (
                <span key={at} style={{ left: place(at) }}>
                  {at === 0 ? '0' : tenths(at)}
                </span>
              ))}
            </td>
            {others === 0 ? undefined : (
              <th scope="col" class="n">
                {LEDGER.before(others)}
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          <Heading words={LEDGER.byChoice} others={others} />
          {choice.map(line)}
          <Sum total={choiceTotal} words={betweenWords(choiceTotal.lo80, choiceTotal.hi80)} others={others} />
        </tbody>
        <tbody>
          <Heading words={LEDGER.usual} why={LEDGER.usualWhy} others={others} />
          {usual.map(line)}
          <Sum total={usualTotal} words={LEDGER.apart} others={others} />
        </tbody>
      </table>
    </div>
  );
}

const Heading = ({
  words,
  why,
  others,
}: {
  readonly words: string;
  readonly why?: string;
  readonly others: number;
}) => (
  <tr class="part">
    <th scope="rowgroup" colSpan={others === 0 ? 3 : 4}>
      <i>{words}</i> {why === undefined ? undefined : <span>{why}</span>}
    </th>
  </tr>
);

function Line(props: {
  readonly state: LedgerState;
  readonly row: Row;
  readonly account: Account;
  readonly others: number;
}) {
  const { state, row, account, others } = props;
  const [name, means] = ROW_WORDS[row.name];
  const words = barWords(row.name, row.mean, row.lo80, row.hi80);
  return (
    <tr>
      <th scope="row">
        <button
          type="button"
          class="link"
          aria-pressed={state.row.value === row.name}
          onClick={() => (state.row.value = state.row.value === row.name ? undefined : row.name)}
        >
          {name}
        </button>{' '}
        <span>{means}</span>
      </th>
      <td class="n strong">{tenths(row.mean)}</td>
      <td class="bar">
        <Painted scene={barScene(row, account.scale, SIZE, words)} name={words} />
      </td>
      {others === 0 ? undefined : <td class="n">{row.before === undefined ? '' : tenths(row.before)}</td>}
    </tr>
  );
}

const Sum = (props: { readonly total: Account['choiceTotal']; readonly words: string; readonly others: number }) => (
  <tr class="sum-line">
    <th scope="row">{LEDGER.total}</th>
    <td class="n strong">{tenths(props.total.mean)}</td>
    <td class="bar small">{props.words}</td>
    {props.others === 0 ? undefined : (
      <td class="n">{props.total.before === undefined ? '' : tenths(props.total.before)}</td>
    )}
  </tr>
);
