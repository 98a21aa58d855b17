import { aboveScene, type FromAbove, paint, PALETTES, type Scene } from '@leeway/chart';
import { useEffect, useRef, useState } from 'preact/hooks';
import { light } from '../shell/remembered.ts';

const FONTS = [`500 13px 'Barlow Semi Condensed'`, `600 13px 'Barlow Semi Condensed'`];

/** Balls from above, as large as its box. `tap` hears where it was touched, in metres from where the balls were hit. */
export function Painted({
  above,
  tap,
}: {
  readonly above: FromAbove;
  readonly tap?: (alongM: number, acrossM: number) => void;
}) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [size, setSize] = useState({ widthPx: 0, heightPx: 0 });
  const [scene, setScene] = useState<Scene | undefined>(undefined);
  const lit = light.value;
  useEffect(() => {
    const box = canvas.current?.parentElement;
    if (box === null || box === undefined) return;
    const watcher = new ResizeObserver(() => setSize({ widthPx: box.clientWidth, heightPx: box.clientHeight }));
    watcher.observe(box);
    return () => watcher.disconnect();
  }, []);
  useEffect(() => {
    const on = canvas.current;
    const { widthPx, heightPx } = size;
    if (on === null || widthPx < 80 || heightPx < 80) return;
    const next = aboveScene(above, size);
    setScene(next);
    let left = false;
    void Promise.all(FONTS.map((font) => document.fonts.load(font))).then(() => {
      const context = on.getContext('2d');
      if (left || context === null) return undefined;
      const pixelRatio = Math.max(2, devicePixelRatio);
      on.width = Math.round(widthPx * pixelRatio);
      on.height = Math.round(heightPx * pixelRatio);
      paint(context, next, { palette: PALETTES[lit], pixelRatio });
      on.dataset['drawn'] = 'true';
      return undefined;
    });
    return () => {
      left = true;
    };
  }, [above, size, lit]);
  const touched = (e: MouseEvent): void => {
    if (tap === undefined || scene === undefined || canvas.current === null) return;
    const box = canvas.current.getBoundingClientRect();
    const { origin, pxPerM } = scene.placing;
    tap((origin.y - (e.clientY - box.top)) / pxPerM, (e.clientX - box.left - origin.x) / pxPerM);
  };
  return (
    <canvas ref={canvas} class="painted" role="img" aria-label={scene?.description ?? above.title} onClick={touched} />
  );
}
