/** A process that writes: `node writer.ts FOLDER OWNER [COUNT]`. It says `opened N` with how many notes it found, then `kept ID` for each that was acknowledged. */
import { put } from '../put.ts';
import { list } from '../read.ts';
import { openStore } from '../store.ts';
import { noteOf } from './records.ts';

const [, , folder = '', owner = '', count = Infinity] = process.argv;
const say = (line: string): void => void process.stdout.write(`${line}\n`);

const { value: store, faults } = await openStore({ folder });
if (store === undefined) {
  say(`refused ${faults.map(({ code }) => code).join()}`);
  process.exit(1);
}
say(`opened ${(await list(store, { owner, kind: 'note' })).length}`);
for (let i = 0; i < Number(count); i++) {
  const note = noteOf(owner, `Note ${i}. ${'And more words. '.repeat(i % 50)}`);
  const { value } = await put(store, [note]);
  if (value === undefined) break;
  say(`kept ${note.id}`);
  if (i % 100 === 50) await store.database.query('CHECKPOINT');
}
await store.close();
