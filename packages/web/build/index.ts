export { buildWeb } from './buildWeb.ts';
