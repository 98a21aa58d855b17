import { ROW_WORDS, LEDGER, shotWith, tenths } from './words.ts';
import { lostIn, type RowName, shotsOf, CHOICE_ROWS, USUAL_ROWS } from './account.ts';
import { Painted } from './Painted.tsx';
import type { KeptLedger } from './kept.ts';
import type { LedgerState } from './state.ts';
import { sceneOf } from './Strip.tsx';
import { strokesWords } from '@leeway/engine';

/** The strokes behind a figure, dearest first. */
export function BehindRow({ state, ledger }: { readonly state: LedgerState; readonly ledger: KeptLedger }) {
  const row = state.row.value as RowName | undefined;
  if (row === undefined) return null;
  const shots = shotsOf(ledger, row);
  return (
    <section class="behind-row">
      <h2>{`${LEDGER.shots}: ${ROW_WORDS[row][0]}`}</h2>
      {shots.length === 0 ? (
        <p class="small">{LEDGER.noShots}</p>
      ) : (
        <Shots shots={shots.map((shot) => ({ ...shot, lost: strokesWords(shot.lost) }))} state={state} />
      )}
    </section>
  );
}

/** One hole larger, with its strokes and what each lost and by what. */
export function BehindHole({ state, ledger }: { readonly state: LedgerState; readonly ledger: KeptLedger }) {
  const ground = state.roundHoles.value.find(({ hole }) => hole === state.hole.value);
  if (ground === undefined) return null;
  const scene = sceneOf(ground, ledger, 150, 380);
  const shots = ledger.shots.filter(({ hole }) => hole === ground.hole);
  return (
    <section class="behind-hole">
      <h2>{LEDGER.hole(ground.hole)}</h2>
      <div>
        <Painted scene={scene} name={scene.description} />
        <Shots shots={shots.map((shot) => ({ ...shot, lost: most(shot) }))} state={state} />
      </div>
    </section>
  );
}

/** The loss, and the row that it is mostly of. */
function most(shot: KeptLedger['shots'][number]): string {
  const rows = [...CHOICE_ROWS, ...USUAL_ROWS].map((row) => ({ row, lost: lostIn(shot, row) }));
  const [first] = rows.toSorted((a, b) => Math.abs(b.lost) - Math.abs(a.lost));
  const words =
    first === undefined || Math.abs(first.lost) < 0.1
      ? ''
      : `, ${ROW_WORDS[first.row][0].toLowerCase()} ${tenths(first.lost)}`;
  return `${strokesWords(shot.loss)}${words}`;
}

type Told = Omit<KeptLedger['shots'][number], 'lost'> & { readonly lost: string };

const Shots = ({ shots, state }: { readonly shots: readonly Told[]; readonly state: LedgerState }) => (
  <table class="listing">
    <thead>
      <tr>
        <th scope="col">{LEDGER.shotColumns.hole}</th>
        <th scope="col">{LEDGER.shotColumns.shot}</th>
        <th scope="col">{LEDGER.shotColumns.with}</th>
        <th scope="col" class="n">
          {LEDGER.shotColumns.lost}
        </th>
      </tr>
    </thead>
    <tbody>
      {shots.map((shot) => (
        <tr key={`${shot.hole} ${shot.shot}`}>
          <td>
            <button type="button" class="link" onClick={() => (state.hole.value = shot.hole)}>
              {LEDGER.hole(shot.hole)}
            </button>
          </td>
          <td>{shot.shot}</td>
          <td>{shotWith(shot)}</td>
          <td class="n">{shot.lost}</td>
        </tr>
      ))}
    </tbody>
  </table>
);
