import { ladderScene, paint, PALETTES } from '@leeway/chart';
import { useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { light, units } from '../shell/remembered.ts';
import { drawnLadder } from './drawnLadder.ts';
import { modelOf } from './modelOf.ts';
import type { CarriesState } from './state.ts';
import { CARRIES } from './words.ts';

/** The page has the heading of the drawing as its own, so the drawing begins below it, px of its sheet. */
const HEADING_PX = 100;
const FONTS = [
  `400 17px 'Libre Caslon Text'`,
  `italic 400 15px 'Libre Caslon Text'`,
  `500 13px 'Barlow Semi Condensed'`,
];

/** The ladder drawn; the table below it says the same in figures. */
export function LadderChart({ state }: { readonly state: CarriesState }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useSignalEffect(() => {
    const [file, ladder, unit] = [state.file.value, state.ladder.value, units.value];
    const palette = PALETTES[light.value];
    const fitted = ladder?.fitted?.ladder;
    const on = canvas.current;
    if (on === null) return;
    on.hidden = file === undefined || fitted === undefined;
    if (file === undefined || fitted === undefined || ladder === undefined) return;
    const scene = ladderScene(drawnLadder(file.name, fitted, ladder.balls, modelOf(file), unit));
    void Promise.all(FONTS.map((font) => document.fonts.load(font))).then(() => {
      const pixelRatio = Math.max(2, window.devicePixelRatio);
      on.width = Math.round(scene.widthPx * pixelRatio);
      on.height = Math.round((scene.heightPx - HEADING_PX) * pixelRatio);
      on.setAttribute('aria-label', scene.description);
      const context = on.getContext('2d');
      if (context === null) return undefined;
      context.translate(0, -HEADING_PX * pixelRatio);
      paint(context, scene, { palette, pixelRatio });
      on.dataset['drawn'] = 'true';
      return undefined;
    });
  });
  return (
    <div class="scrolls" role="region" aria-label={CARRIES.chart} tabIndex={0}>
      <canvas ref={canvas} class="ladder-chart" role="img" aria-label={CARRIES.chart} />
    </div>
  );
}
