export { DEMO } from './demoPath.ts';
