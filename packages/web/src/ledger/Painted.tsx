import { paint, PALETTES, type Scene } from '@leeway/chart';
import { useEffect, useRef } from 'preact/hooks';
import { light } from '../shell/remembered.ts';

/** A drawing of the size that it was made for. */
export function Painted({ scene, name }: { readonly scene: Scene; readonly name: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const palette = PALETTES[light.value];
  useEffect(() => {
    const on = canvas.current;
    const context = on?.getContext('2d');
    if (on === null || context === null || context === undefined) return;
    const pixelRatio = Math.max(2, window.devicePixelRatio);
    on.width = Math.round(scene.widthPx * pixelRatio);
    on.height = Math.round(scene.heightPx * pixelRatio);
    paint(context, scene, { palette, pixelRatio });
  }, [scene, palette]);
  return (
    <canvas
      ref={canvas}
      role="img"
      aria-label={name}
      style={{ width: `${scene.widthPx}px`, height: `${scene.heightPx}px` }}
    />
  );
}
