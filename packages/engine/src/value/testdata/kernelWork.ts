import { REFERENCE } from '../../day/day.ts';
import type { MakeKernel } from '../../kernel/room.ts';
import { Field } from '../field.ts';
import { pyramidShape, WIDE_WIDTHS } from '../pyramid.ts';
import { FAIRWAY } from '../raster.ts';
import { PATIENCE } from '../solve.ts';
import { solveField } from '../sweep.ts';
import { referenceHole, referencePlayer } from './load.ts';
import { pyramidAlone } from './pyramidAlone.ts';

export { plainKernel } from '../../kernel/plainKernel.ts';
export { bestKernel, type MakeKernel } from '../../kernel/room.ts';

/** What the kernels do most of, on the reference par 4 between waters, for the bench to time. */
export interface KernelWork {
  readonly name: string;
  readonly run: () => void;
}

/** Aims of every stroke from the fairway, a hundredth of a turn apart. */
const AIMS = 100;

export function kernelWork(make: MakeKernel): readonly KernelWork[] {
  const ground = referenceHole('t1_symmetric');
  const player = referencePlayer('player_sym');
  const field = new Field(ground, player, REFERENCE, make);
  const { evaluator } = solveField(field, PATIENCE);
  const pyramid = pyramidAlone(pyramidShape(field.wide.grid, WIDE_WIDTHS), make);
  pyramid.cells.set(field.wide.strokes);
  const weapons = field.arsenal.get(FAIRWAY) ?? [];
  const sums = (rule: 'coarse' | 'fine') => (): void => {
    for (const w of weapons) {
      for (let k = 0; k < AIMS; k++) evaluator.always(w, w[rule], 5, -150, (2 * Math.PI * k) / AIMS, 3);
    }
  };
  const blur = (): void => {
    pyramid.changed();
    pyramid.refresh();
  };
  return [
    { name: 'all widths of a pyramid blurred', run: blur },
    { name: 'sums over clouds and drops, fine rule', run: sums('fine') },
    { name: 'sums over clouds and drops, coarse rule', run: sums('coarse') },
    { name: 'the whole hole solved', run: () => void solveField(new Field(ground, player, REFERENCE, make), PATIENCE) },
  ];
}
