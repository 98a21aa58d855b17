import { bestKernel, type MakeKernel, Room } from '../../kernel/room.ts';
import { Blur } from '../blur.ts';
import { Pyramid, pyramidBytes, type PyramidShape } from '../pyramid.ts';

/** A pyramid in a room of its own. For tests only. */
export function pyramidAlone(shape: PyramidShape, make: MakeKernel = bestKernel): Pyramid {
  const room = new Room(pyramidBytes(shape) + Blur.bytes([shape.base]), make);
  return new Pyramid(shape, room, new Blur(room, [shape.base]));
}
