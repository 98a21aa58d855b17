import { indexChart, paint, PALETTES } from '@leeway/chart';
import { receivedHole, type SentHole } from '@leeway/contract';
import { useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { light, units } from '../shell/remembered.ts';
import type { GroundState } from './state.ts';
import { GROUND } from './words.ts';

const SIZE = { widthPx: 260, heightPx: 470 };

/** The hole as it is typed, drawn small. */
export function Drawn({ state }: { readonly state: GroundState }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useSignalEffect(() => {
    const last = state.seen.value?.last;
    const [palette, unit] = [PALETTES[light.value], units.value];
    if (last !== undefined && canvas.current !== null) draw(canvas.current, last, palette, unit);
  });
  const there = state.seen.value?.last !== undefined;
  return <canvas ref={canvas} class="drawn" role="img" aria-label={GROUND.drawing} hidden={!there} />;
}

function draw(canvas: HTMLCanvasElement, sent: SentHole, palette: (typeof PALETTES)['paper'], unit: 'yd' | 'm'): void {
  const pixelRatio = window.devicePixelRatio;
  canvas.width = Math.round(SIZE.widthPx * pixelRatio);
  canvas.height = Math.round(SIZE.heightPx * pixelRatio);
  const context = canvas.getContext('2d');
  if (context === null) return;
  const ground = receivedHole(sent);
  const scene = indexChart({ ground, choices: [], strokesAtRest: () => 0 }, SIZE, unit);
  paint(context, scene, { palette, pixelRatio });
}
