export { buildWeb } from './buildWeb.ts';
export { prepareHole } from './prepareHole.ts';
