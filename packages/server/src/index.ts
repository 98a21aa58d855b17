export { buildWeb } from '@leeway/web';
export type { Served } from './app.ts';
export { demoFiles } from './demoFiles.ts';
export { withOpeningHole } from './openingHole.ts';
export { serve, type Serving, tryPort } from './serve.ts';
export { type NamedText, type ShelfFiles, type StockedShelf, stockShelf } from './shelf.ts';
