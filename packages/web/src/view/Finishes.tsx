import type { ShotDocument } from '@leeway/contract';
import type { ComponentChildren } from 'preact';
import { finishesOf, type Ground, WORDS } from '../words.ts';

const HIGH_PX = 26;

/** Where a hundred balls finish: a bar in the chart's tints and hatches, and its key in words and figures. */
export function Finishes({ shot }: { readonly shot: ShotDocument }) {
  const found = finishesOf(shot);
  const total = found.reduce((sum, { balls }) => sum + balls, 0) || 1;
  let x = 0;
  return (
    <section class="finishes">
      <h3>{WORDS.finishes}</h3>
      <svg class="bar" aria-hidden="true">
        {found.map(({ ground, balls, place }) => {
          const from = x;
          x += (100 * balls) / total;
          return <Piece key={place} ground={ground} x={`${from}%`} width={`${x - from}%`} height={HIGH_PX - 1} />;
        })}
      </svg>
      <ul class={found.length > 4 ? 'bar-key spread' : 'bar-key'}>
        {found.map(({ ground, place, balls }) => (
          <li key={place}>
            <svg aria-hidden="true">
              <Piece ground={ground} x="0.5" width="12" height={10} />
            </svg>
            {place} {balls}
          </li>
        ))}
      </ul>
    </section>
  );
}

const TINTS: { readonly [G in Ground]: string } = {
  green: 'var(--green)',
  fairway: 'var(--sheet)',
  rough: 'var(--rough)',
  sand: 'var(--sand)',
  trees: 'var(--scrub)',
  water: 'var(--sea)',
  out: 'var(--sheet)',
  unmapped: 'var(--paper)',
};

function Piece(p: { readonly ground: Ground; readonly x: string; readonly width: string; readonly height: number }) {
  const box = { x: p.x, y: 0.5, width: p.width, height: p.height };
  return (
    <>
      <rect {...box} fill={TINTS[p.ground]} />
      {p.ground === 'green' ? undefined : <rect {...box} fill={`url(#hatch-${p.ground})`} />}
      <rect {...box} fill="none" stroke="var(--ink)" stroke-width="1" />
    </>
  );
}

/** The hatches of the ground, once a page. */
export const Hatches = () => (
  <svg class="hatches" width="0" height="0" aria-hidden="true">
    <defs>
      <Hatch ground="fairway" width={9} height={6}>
        <path d="M1 3H6" stroke="var(--ink-2)" stroke-width="0.8" />
      </Hatch>
      <Hatch ground="rough" width={7} height={7}>
        <circle cx="1.8" cy="1.8" r="0.75" fill="var(--ink)" />
        <circle cx="5.3" cy="5.3" r="0.75" fill="var(--ink)" />
      </Hatch>
      <Hatch ground="sand" width={3.4} height={3.4}>
        <circle cx="0.9" cy="0.9" r="0.62" fill="var(--ink)" />
        <circle cx="2.6" cy="2.6" r="0.62" fill="var(--ink)" />
      </Hatch>
      <Hatch ground="trees" width={8} height={8}>
        <path d="M4 6.8V2.4M4 6.8 1.8 3.6M4 6.8 6.2 3.6" stroke="var(--whins)" stroke-width="0.9" fill="none" />
      </Hatch>
      <Hatch ground="water" width={6} height={3}>
        <path d="M0 1.5H6" stroke="var(--shore)" stroke-width="1" />
      </Hatch>
      <Hatch ground="out" width={5} height={5}>
        <path d="M-1 6 6-1M-1 1 1-1M4 6 6 4" stroke="var(--ink)" stroke-width="0.9" />
      </Hatch>
      <Hatch ground="unmapped" width={6} height={6}>
        <path d="M0 3H6M3 0V6" stroke="var(--ink-2)" stroke-width="0.5" stroke-dasharray="1 2" />
      </Hatch>
    </defs>
  </svg>
);

const Hatch = (p: {
  readonly ground: Ground;
  readonly width: number;
  readonly height: number;
  readonly children: ComponentChildren;
}) => (
  <pattern id={`hatch-${p.ground}`} width={p.width} height={p.height} patternUnits="userSpaceOnUse">
    {p.children}
  </pattern>
);
