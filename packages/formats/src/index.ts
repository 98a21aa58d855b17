export * from './ground/readGround.ts';
export * from './ground/describeGround.ts';
export * from './ground/givenFlag.ts';
export * from './ground/mapFile.ts';
export * from './ground/feature.ts';
export * from './ground/faultBook.ts';
export * from './shots/readShots.ts';
export * from './shots/sessions.ts';
