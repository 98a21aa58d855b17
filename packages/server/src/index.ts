export { buildWeb } from '@leeway/web';
export type { Served } from './app.ts';
export { demoFiles } from './demoFiles.ts';
export { serve, type Serving } from './serve.ts';
export { type NamedText, type ShelfFiles, type StockedShelf, stockShelf } from './shelf.ts';
