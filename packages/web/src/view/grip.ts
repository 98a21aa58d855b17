import type { Xy } from '@leeway/chart';
import type { PlanePoint } from '@leeway/engine';
import { toPaper, toPlane } from '../plane/placing.ts';
import type { Handle, PlanState } from '../state/plan.ts';
import type { Room } from '../state/sheets.ts';

/** A finger this near a sign takes hold of it. */
const REACH_PX = 30;
/** The middle of the flag's sign stands above its place. */
const FLAG_MIDDLE = { x: 5, y: -13 };
/** A spot stays this far inside the sheet's edge. */
const EDGE_PX = 26;

interface Held {
  readonly handle: Handle;
  readonly pointerId: number;
  /** From the finger to the place of the sign, so that it does not jump when it is taken. */
  readonly offset: Xy;
  readonly putBack: () => void;
}

/**
 * Drags flag and spot over the sheet, or places one by a tap. The nearer sign to the finger is taken. One finger drags at a time; its events
 * are those of the sheet.
 */
export class Grip {
  private readonly state: PlanState;
  private held: Held | undefined;

  constructor(state: PlanState) {
    this.state = state;
  }

  readonly down = (e: PointerEvent): void => {
    if (e.button !== 0 || this.held !== undefined) return;
    const { state } = this;
    const finger = fingerOn(e);
    const taking = state.placing.peek();
    // with the answer hidden every touch is for the spot
    const hidden = state.first.hidden.peek();
    const placed = taking ?? (hidden && !nearSpot(state, finger) ? 'spot' : undefined);
    const taken =
      placed === undefined
        ? nearest(state, finger, hidden ? ['spot'] : ['flag', 'spot'])
        : { handle: placed, offset: { x: 0, y: 0 } };
    if (taken === undefined) return;
    e.preventDefault();
    const sheet = e.currentTarget as HTMLElement;
    sheet.setPointerCapture(e.pointerId);
    // a finger sees what it holds
    sheet.dataset['by'] = 'finger';
    document.getElementById(`handle-${taken.handle}`)?.focus({ preventScroll: true });
    this.held = { ...taken, pointerId: e.pointerId, putBack: putBackOf(state, taken.handle) };
    if (placed === undefined) return;
    state.placing.value = undefined;
    this.drag(finger);
  };

  readonly move = (e: PointerEvent): void => {
    if (this.held?.pointerId === e.pointerId) this.drag(fingerOn(e));
  };

  readonly up = (e: PointerEvent): void => {
    if (this.held?.pointerId === e.pointerId) this.held = undefined;
  };

  readonly cancel = (e: PointerEvent): void => {
    if (this.held?.pointerId === e.pointerId) this.letGo();
  };

  /** Lets go of what is being dragged and puts it back; `false` when nothing was. */
  letGo(): boolean {
    const was = this.held;
    this.held = undefined;
    was?.putBack();
    return was !== undefined;
  }

  private drag(finger: Xy): void {
    const { held, state } = this;
    const placing = state.sheets.picture.peek()?.placing;
    const room = state.sheets.room.peek();
    if (held === undefined || placing === undefined || room === undefined) return;
    const to = { x: finger.x + held.offset.x, y: finger.y + held.offset.y };
    moveTo(state, held.handle, toPlane(placing, held.handle === 'flag' ? to : onSheet(to, room)));
  }
}

const fingerOn = (e: PointerEvent): Xy => {
  const box = (e.currentTarget as HTMLElement).getBoundingClientRect();
  return { x: e.clientX - box.left, y: e.clientY - box.top };
};

const onSheet = ({ x, y }: Xy, room: Room): Xy => ({
  x: Math.min(room.widthPx - EDGE_PX, Math.max(EDGE_PX, x)),
  y: Math.min(room.heightPx - EDGE_PX, Math.max(EDGE_PX, y)),
});

export function moveTo(state: PlanState, handle: Handle, to: PlanePoint): void {
  if (handle === 'flag') state.flagTo(to);
  else state.spotTo(to);
}

/** Where a handle's sign stands. */
export const placeOf = (state: PlanState, handle: Handle): PlanePoint | undefined =>
  handle === 'flag' ? state.flag.value : (state.own.at.value ?? state.spotFrom.value);

/** A way back to where a flag or spot stands now. */
export function putBackOf(state: PlanState, handle: Handle): () => void {
  const from = handle === 'flag' ? state.flag.peek() : state.own.at.peek();
  return () => {
    if (from !== undefined) moveTo(state, handle, from);
    else if (handle === 'spot') state.own.giveUp();
  };
}

/** Is the finger on a spot that was placed? */
const nearSpot = (state: PlanState, finger: Xy): boolean =>
  state.own.at.peek() !== undefined && nearest(state, finger, ['spot']) !== undefined;

function nearest(
  state: PlanState,
  finger: Xy,
  of: readonly Handle[],
): { readonly handle: Handle; readonly offset: Xy } | undefined {
  const placing = state.sheets.picture.peek()?.placing;
  if (placing === undefined) return undefined;
  const found = of.flatMap((handle) => {
    const place = placeOf(state, handle);
    if (place === undefined) return [];
    const sign = toPaper(placing, place);
    const middle = handle === 'flag' ? { x: sign.x + FLAG_MIDDLE.x, y: sign.y + FLAG_MIDDLE.y } : sign;
    const awayPx = Math.hypot(finger.x - middle.x, finger.y - middle.y);
    return [{ handle, awayPx, offset: { x: sign.x - finger.x, y: sign.y - finger.y } }];
  });
  const [first] = found.toSorted((a, b) => a.awayPx - b.awayPx);
  return first === undefined || first.awayPx > REACH_PX ? undefined : first;
}
