import { Says, Wrong } from '../parts/Says.tsx';
import { Head } from '../shell/Head.tsx';
import { hrefOf } from '../shell/place.ts';
import { dateWords } from '../shell/words.ts';
import { accountOf } from './account.ts';
import { AccountTable } from './AccountTable.tsx';
import { BehindHole, BehindRow } from './Behind.tsx';
import { Enter } from './Enter.tsx';
import type { KeptLedger } from './kept.ts';
import type { LedgerState } from './state.ts';
import { Strip } from './Strip.tsx';
import {
  betweenWords,
  comesTo,
  finishesWords,
  LEDGER,
  playedWords,
  predictedWords,
  ROW_WORDS,
  roundWords,
  savedWords,
  tenths,
} from './words.ts';

/** One player's rounds: the one that is looked at with its account, and a form for another. */
export function LedgerPage({ state }: { readonly state: LedgerState }) {
  const { rounds, entering, working, profile } = state;
  return (
    <>
      <Head>{profile.value?.body.name}</Head>
      <main class="page ledger">
        <Wrong fault={state.fault} />
        <Says done={state.done} />
        <p class={working.value === undefined ? 'unseen' : 'said'} role="status">
          {working.value}
        </p>
        {entering.value ? (
          <>
            <h1>{LEDGER.enter}</h1>
            <Enter state={state} />
          </>
        ) : (
          <>
            <Round state={state} />
            {rounds.value === undefined ? <p class="small">{LEDGER.fetching}</p> : <Rounds state={state} />}
          </>
        )}
      </main>
    </>
  );
}

function Round({ state }: { readonly state: LedgerState }) {
  const round = state.round.value;
  if (round === undefined) return <h1>{LEDGER.title}</h1>;
  const ledger = state.ledger.value;
  const course = state.grounds.value.find(({ id }) => id === round.body.course)?.course ?? '';
  const title = roundWords(course, round.body.date);
  if (ledger === undefined)
    return (
      <>
        <h1>{title}</h1>
        <div class="nothing">
          <p>{LEDGER.notYet}</p>
          <div class="row">
            <button
              type="button"
              class="act first"
              disabled={state.working.value !== undefined}
              onClick={() => void state.account()}
            >
              {LEDGER.account}
            </button>
          </div>
        </div>
      </>
    );
  return <Accounted state={state} ledger={ledger} title={title} />;
}

function Accounted(props: { readonly state: LedgerState; readonly ledger: KeptLedger; readonly title: string }) {
  const { state, ledger, title } = props;
  const others = othersOf(state);
  const account = accountOf(ledger, others);
  const score = ledger.rounds[0]?.score ?? 0;
  const par = ledger.holes.reduce((sum, hole) => sum + hole.par, 0);
  const [before, saved, after] = savedWords(score, tenths(Math.max(0, account.choiceTotal.mean)));
  const finishes = finishesWords(ledger);
  return (
    <>
      <div class="headline">
        <h1>
          {title} <span>{playedWords(score, par, ledger.holes.length)}</span>
        </h1>
        <p>
          {before}
          <b>{saved}</b>
          {after}
        </p>
      </div>
      <Strip state={state} ledger={ledger} />
      <BehindHole state={state} ledger={ledger} />
      <div class="accounts">
        <section>
          <AccountTable state={state} account={account} others={others.length} />
          <p class="small">{LEDGER.foot}</p>
          {ledger.shots.some(({ choice, aimNoted }) => choice !== undefined && !aimNoted) ? (
            <p class="small">{LEDGER.aims}</p>
          ) : undefined}
          <BehindRow state={state} ledger={ledger} />
        </section>
        <section class="comes">
          <h2>{LEDGER.comes}</h2>
          <ol>
            {comesTo(ledger, account.choiceTotal.mean, account.usualTotal.mean).map(([bold, rest]) => (
              <li key={bold}>
                <p>
                  <b>{bold}</b> {rest}
                </p>
              </li>
            ))}
          </ol>
          <Habits ledger={ledger} />
          <h3>{LEDGER.expected}</h3>
          <p>{predictedWords(ledger)}</p>
          {finishes === '' ? undefined : <p>{finishes}</p>}
        </section>
      </div>
    </>
  );
}

/** The accounts of the other rounds, the last seven. */
const othersOf = (state: LedgerState): readonly KeptLedger[] =>
  (state.rounds.value ?? [])
    .filter(({ id }) => id !== state.chosen.value)
    .flatMap(({ id }) => state.ledgerOf(id) ?? [])
    .slice(0, 7);

/** Habits of execution, each against what is usual at the player's index. */
function Habits({ ledger }: { readonly ledger: KeptLedger }) {
  const habits = ledger.habits.filter(({ against }) => against.startsWith('usual'));
  const [first] = habits;
  if (first === undefined) return null;
  const unmeasured = ledger.unmeasured.map((habit) => ROW_WORDS[habit][0].toLowerCase()).join(', ');
  return (
    <>
      <h3>{LEDGER.habits}</h3>
      <p class="small">{LEDGER.habitsLead(first.against)}</p>
      <table class="listing">
        <tbody>
          {habits.map(({ habit, strokesPerRound: { mean, lo80, hi80 } }) => (
            <tr key={habit}>
              <th scope="row">{ROW_WORDS[habit as keyof typeof ROW_WORDS][0]}</th>
              <td class="n">
                <b>{tenths(mean)}</b>
              </td>
              <td class="n">{betweenWords(lo80, hi80)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {unmeasured === '' ? undefined : <p class="small">{LEDGER.unmeasured(unmeasured)}</p>}
    </>
  );
}

function Rounds({ state }: { readonly state: LedgerState }) {
  const rounds = state.rounds.value ?? [];
  return (
    <section class="rounds">
      <h2>{LEDGER.rounds}</h2>
      {rounds.length === 0 ? (
        <div class="nothing">
          <p>{LEDGER.none}</p>
          <p>{LEDGER.noneWhy}</p>
        </div>
      ) : (
        <ul class="notes">
          {rounds.map(({ id, body }) => (
            <li key={id}>
              <p>
                <button
                  type="button"
                  class="link"
                  aria-pressed={id === state.chosen.value}
                  onClick={() => state.choose(id)}
                >
                  {dateWords(body.date)}
                </button>
              </p>
              <p class="small">{state.ledgerOf(id)?.rounds[0]?.score ?? LEDGER.notYet}</p>
            </li>
          ))}
        </ul>
      )}
      <div class="row">
        <button type="button" class="act first" onClick={() => (state.entering.value = true)}>
          {LEDGER.enter}
        </button>
        {state.ledger.value === undefined ? undefined : (
          <button
            type="button"
            class="act"
            disabled={state.working.value !== undefined}
            onClick={() => void state.account()}
          >
            {LEDGER.again}
          </button>
        )}
      </div>
    </section>
  );
}

/** The page without a player: it says what to do first. */
export const NobodysLedger = () => (
  <>
    <Head />
    <main class="page">
      <h1>{LEDGER.title}</h1>
      <div class="nothing">
        <p>{LEDGER.nobody}</p>
        <p>{LEDGER.nobodyWhy}</p>
        <div class="row">
          <a class="act first" href={hrefOf('players', undefined)}>
            {LEDGER.toPlayers}
          </a>
        </div>
      </div>
    </main>
  </>
);
