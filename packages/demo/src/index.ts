export { DEMO, DEMO_PLAYERS } from './demoPath.ts';
export * from './virtual/world.ts';
export * from './virtual/virtualBag.ts';
export * from './virtual/virtualBalls.ts';
export * from './virtual/virtualSessions.ts';
export * from './virtual/virtualApproaches.ts';
export * from './virtual/choosers.ts';
export * from './virtual/roundsOf.ts';
export * from './virtual/strikers.ts';
