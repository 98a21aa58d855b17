import type { ReadonlySignal } from '@preact/signals';
import { useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Picture } from '../asks.ts';

/** A picture of the desk's on a canvas, told in words by its title and description. */
export function Bitmap({
  picture,
  id,
}: {
  readonly picture: ReadonlySignal<Picture | undefined>;
  readonly id: string;
}) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useSignalEffect(() => {
    const drawn = picture.value;
    const on = canvas.current;
    if (on === null) return;
    on.style.visibility = drawn === undefined ? 'hidden' : 'visible';
    // a bitmap that was shown once has given itself away and is 0 wide
    if (drawn === undefined || drawn.bitmap.width === 0) return;
    on.width = drawn.bitmap.width;
    on.height = drawn.bitmap.height;
    on.dataset['drawn'] = String(1 + Number(on.dataset['drawn'] ?? 0));
    on.getContext('bitmaprenderer')?.transferFromImageBitmap(drawn.bitmap);
  });
  const { title = '', description = '' } = picture.value ?? {};
  return (
    <>
      <canvas ref={canvas} role="img" aria-label={title} aria-describedby={id} hidden={title === ''} />
      <p class="unseen" id={id}>
        {description}
      </p>
    </>
  );
}
