import { playedScene, type Scene } from '@leeway/chart';
import { distanceM, type HoleGround } from '@leeway/engine';
import { worstHoles } from './account.ts';
import { Painted } from './Painted.tsx';
import type { KeptLedger } from './kept.ts';
import type { LedgerState } from './state.ts';
import { countWords, holeWords, LEDGER, tenths } from './words.ts';

const WIDTH_PX = 64;
const MOST_PX = 236;
/** Ground shown beyond tee and flag together. */
const BEYOND_M = 64;
const scenes = new WeakMap<HoleGround, Map<string, Scene>>();

/** A hole's drawing is made once for each size and play of it. */
export function sceneOf(ground: HoleGround, ledger: KeptLedger, widthPx: number, heightPx: number): Scene {
  const from = ledger.shots.filter(({ hole }) => hole === ground.hole).map((shot) => shot.from);
  const key = JSON.stringify([widthPx, heightPx, from]);
  const made = scenes.get(ground) ?? new Map<string, Scene>();
  scenes.set(ground, made);
  const scene = made.get(key) ?? playedScene({ ground, from }, { widthPx, heightPx });
  made.set(key, scene);
  return scene;
}

/** The round as small charts, all to one scale, with scores and what choosing cost; under it what players count. */
export function Strip({ state, ledger }: { readonly state: LedgerState; readonly ledger: KeptLedger }) {
  const grounds = state.roundHoles.value;
  const worst = worstHoles(ledger);
  const played = ledger.holes.flatMap((hole) => {
    const ground = grounds.find((g) => g.hole === hole.hole);
    return ground === undefined ? [] : [{ ...hole, ground }];
  });
  const longest = Math.max(...played.map(({ ground }) => distanceM(ground.ball, ground.flag) + BEYOND_M));
  const [round] = ledger.rounds;
  return (
    <>
      <ol class="strip" aria-label={LEDGER.strip}>
        {played.map(({ hole, par, score, choice, ground }) => {
          const share = (distanceM(ground.ball, ground.flag) + BEYOND_M) / longest;
          const scene = sceneOf(ground, ledger, WIDTH_PX, Math.round(MOST_PX * share));
          return (
            <li key={hole}>
              <button
                type="button"
                aria-pressed={state.hole.value === hole}
                onClick={() => (state.hole.value = state.hole.value === hole ? undefined : hole)}
              >
                <span class="heads">
                  <b>{hole}</b> <span>{LEDGER.par(par)}</span>
                </span>
                <span class="ground">
                  <Painted scene={scene} name={holeWords(hole, score, choice)} />
                </span>
                <span class="scores" data-worst={worst.has(hole)}>
                  <b>{score}</b>
                  {choice >= 0.05 ? <span>{tenths(-choice)}</span> : undefined}
                </span>
              </button>
            </li>
          );
        })}
      </ol>
      {round === undefined ? undefined : (
        <dl class="counts">
          {countWords(round.counts).map(([words, figure]) => (
            <div key={words}>
              <dt>{words}</dt> <dd>{figure}</dd>
            </div>
          ))}
        </dl>
      )}
    </>
  );
}
