import type { PlanePoint } from '@leeway/engine';
import { batch, signal } from '@preact/signals';
import type { DrawAsk, Picture, PlanDesk } from '../asks.ts';
import { FRAME_PX, toPaper } from '../plane/placing.ts';
import { Latest } from './latest.ts';

/** The small chart of the hole. */
const INDEX = { widthPx: 104, heightPx: 188 };

/** How large the sheet is on the page, and whether the page is a phone's. */
export interface Room {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pixelRatio: number;
  readonly phone: boolean;
}

/** A sheet to be drawn, and the shot that it shows, be it on the whole hole. */
interface SheetAsk {
  readonly sheet: DrawAsk;
  readonly shot: number;
}

/** The pictures that the desk has drawn. */
export class Sheets {
  readonly room = signal<Room | undefined>(undefined);
  readonly picture = signal<Picture | undefined>(undefined);
  /** The shot that the picture shows, and how large it was drawn. */
  readonly shot = signal<number | undefined>(undefined);
  readonly size = signal({ widthPx: 0, heightPx: 0 });
  readonly index = signal<Picture | undefined>(undefined);
  private readonly draws: Latest<SheetAsk, Picture>;
  private readonly indexDraws: Latest<DrawAsk, Picture>;

  /** `drawn` hears of every new sheet. */
  constructor(desk: Pick<PlanDesk, 'draw' | 'drawIndex'>, drawn: () => void, failed: (error: unknown) => void) {
    const passedOver = ({ bitmap }: Picture): void => bitmap.close();
    this.draws = new Latest(({ sheet }) => desk.draw(sheet), {
      got: (picture, { shot, sheet: { widthPx, heightPx } }) => {
        batch(() => {
          this.picture.value = picture;
          this.shot.value = shot;
          this.size.value = { widthPx, heightPx };
        });
        drawn();
      },
      failed,
      passedOver,
    });
    this.indexDraws = new Latest((ask) => desk.drawIndex(ask), {
      got: (picture) => (this.index.value = picture),
      failed,
      passedOver,
    });
  }

  draw(sheet: DrawAsk, shot: number): void {
    this.draws.put({ sheet, shot });
  }

  drawIndex(ask: Pick<DrawAsk, 'light' | 'units' | 'wind' | 'pixelRatio'> & { readonly shot: number }): void {
    this.indexDraws.put({ ...ask, ...INDEX, phone: false });
  }

  clear(): void {
    this.draws.drop();
    this.indexDraws.drop();
    this.picture.value = undefined;
    this.shot.value = undefined;
    this.index.value = undefined;
  }

  /** Is a place inside the frame of the sheet that is shown? */
  shows(place: PlanePoint | undefined): boolean {
    const placing = this.picture.value?.placing;
    const { widthPx, heightPx } = this.size.value;
    if (place === undefined || placing === undefined) return false;
    const { x, y } = toPaper(placing, place);
    return x > FRAME_PX && y > FRAME_PX && x < widthPx - FRAME_PX && y < heightPx - FRAME_PX;
  }
}
