export { DEMO, DEMO_PLAYERS } from './demoPath.ts';
