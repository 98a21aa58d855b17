export { answerAt, type Answerers, type Turn } from './desk.ts';
export { Asker } from './asker.ts';
export { Pool } from './pool.ts';
export { scopePort, workerPort } from './browser.ts';
export type { Port } from './port.ts';
export type { Questions } from './questions.ts';
