import type { Shelf } from '@leeway/contract';
import { render } from 'preact';
import type { HoleAnswer, Picture } from './asks.ts';
import { openDesk } from './openDesk.ts';

const desk = openDesk();

async function open(page: HTMLElement): Promise<void> {
  const shelf = (await (await fetch('/api/shelf')).json()) as Shelf;
  const { hole } = shelf.opening;
  const ground = shelf.grounds.find(({ id }) => id === shelf.opening.ground);
  const player = shelf.players.find(({ id }) => id === shelf.opening.player);
  if (ground === undefined || player === undefined) return;
  const answer = await desk.open({ ground, player, hole, units: 'yd' });
  if (answer === undefined) return;
  const size = { widthPx: Math.min(690, page.clientWidth), heightPx: 768, pixelRatio: window.devicePixelRatio };
  const picture = await desk.draw({ shot: 0, ...size, light: 'paper', units: 'yd', phone: false });
  render(<Plan answer={answer} picture={picture} />, page);
}

function Plan({ answer, picture }: { readonly answer: HoleAnswer; readonly picture: Picture | undefined }) {
  const put = (canvas: HTMLCanvasElement | null): void => {
    if (canvas === null || picture === undefined) return;
    canvas.width = picture.bitmap.width;
    canvas.height = picture.bitmap.height;
    canvas.getContext('bitmaprenderer')?.transferFromImageBitmap(picture.bitmap);
  };
  return (
    <main data-answer="settled">
      <h1>{answer.plan.name}</h1>
      <p data-figure="expected">{answer.plan.expectedStrokes.toFixed(2)}</p>
      <canvas data-drawn={1} ref={put} role="img" aria-label={picture?.title} />
    </main>
  );
}

const page = document.getElementById('page');
if (page !== null) void open(page);
