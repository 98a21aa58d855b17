export * from './fault.ts';
export * from './ground.ts';
export * from './json.ts';
export * from './player.ts';
export * from './shots.ts';
export * from './plan.ts';
export * from './planDocument.ts';
export * from './shotWords.ts';
