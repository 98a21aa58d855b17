export { filesHolding } from './grepBytes.ts';
export { prepareFolder } from './preparedFolder.ts';
export { type RealServer, startRealServer } from './realServer.ts';
export { MADE_AT, newId, noteOf, planOf, profileOf, sessionOf, shotOf } from './records.ts';
export { newFolder, newMemoryFolder, removeFolder, temporaryFolder } from './temporary.ts';
