export * from './quantity/units.ts';
export * from './quantity/points.ts';
export * from './quantity/lies.ts';
export * from './ground/hole.ts';
export * from './player/option.ts';
export * from './value/solution.ts';
