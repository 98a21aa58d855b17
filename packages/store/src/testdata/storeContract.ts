import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { HOUSE, type Read, wordFault } from '@leeway/contract';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { backUp, KEY_FILE } from '../backup.ts';
import { changesAfter } from '../changes.ts';
import { erasePlayer } from '../erase.ts';
import { readKeyCopy } from '../keyCopies.ts';
import { migrate, MIGRATIONS } from '../migrate.ts';
import { exportPlayer, importPlayer } from '../playerFile.ts';
import { playerList } from '../playerList.ts';
import { noteProgress, progressOf } from '../progress.ts';
import { put, type Receipt } from '../put.ts';
import { current, get, history, list, players } from '../read.ts';
import { restore } from '../restore.ts';
import type { Store } from '../store.ts';
import { filesHolding } from './grepBytes.ts';
import { MADE_AT, newId, noteOf, planOf, profileOf, sessionOf, shotOf, withdrawalOf } from './records.ts';
import { temporaryFolder } from './temporary.ts';

/** What every store does, on whatever database. `openEmpty` opens a new, empty one each time. */
export function storeContract(database: string, openEmpty: () => Promise<Store>): void {
  describe(`a store on ${database}`, () => {
    let store: Store;
    beforeAll(async () => {
      store = await openEmpty();
    }, 60_000);
    afterAll(() => store.close());

    const stored = async (...inputs: readonly unknown[]): Promise<readonly Receipt[]> => {
      const { value, faults } = await put(store, inputs);
      if (value === undefined) throw new Error(faults.map(wordFault).join('\n'));
      return value;
    };
    const codes = ({ faults }: Read<unknown>): readonly string[] => faults.map(({ code }) => code);

    test('gives back what was put in, in the order in which it was', async () => {
      const owner = newId();
      const session = sessionOf(owner);
      const shots = Array.from({ length: 30 }, (_, i) => shotOf(owner, session.id, { carryM: 100 + i }));
      const receipts = await stored(session, ...shots);
      expect(receipts.map(({ outcome }) => outcome)).toEqual(Array(31).fill('stored'));
      const seqs = receipts.map(({ seq }) => seq);
      expect(seqs).toEqual(seqs.toSorted((a, b) => a - b));
      const back = await list(store, { owner, kind: 'shot' });
      expect(back).toEqual(shots.map((shot, i) => ({ ...shot, seq: seqs[i + 1] })));
      expect(await get(store, owner, session.id)).toEqual({ ...session, seq: seqs[0] });
      expect(await get(store, owner, newId())).toBeUndefined();
      const two = await list(store, { owner, kind: 'shot', after: seqs[10] ?? 0, most: 2 });
      expect(two.map(({ body }) => body.carryM)).toEqual([110, 111]);
    });

    test('takes the same record again without harm, however its keys are ordered', async () => {
      const owner = newId();
      const profile = profileOf(owner);
      const [first] = await stored(profile);
      const turned = Object.fromEntries(Object.entries(profile).toReversed());
      expect(await stored(profile, turned)).toEqual([
        { ...first, outcome: 'already' },
        { ...first, outcome: 'already' },
      ]);
      expect(await list(store, { owner, kind: 'profile' })).toHaveLength(1);
    });

    test('refuses other content under an id that is taken, and stores nothing of that call', async () => {
      const owner = newId();
      const note = noteOf(owner, 'Stands too close.');
      await stored(note);
      const fresh = noteOf(owner, 'New.');
      const refused = await put(store, [fresh, noteOf(owner, 'Stands too far.', undefined, note.id)]);
      expect(refused.value).toBeUndefined();
      expect(refused.faults).toMatchObject([{ code: 'taken', at: note.id }]);
      expect(await get(store, owner, fresh.id)).toBeUndefined();
      expect(await get(store, owner, note.id)).toMatchObject({ body: { text: 'Stands too close.' } });
      const inOneCall = noteOf(owner, 'One.');
      expect(codes(await put(store, [inOneCall, { ...inOneCall, madeAt: '2026-05-15T00:00:00Z' }]))).toEqual(['taken']);
    });

    test('scopes ids to their player', async () => {
      const [one, other] = [newId(), newId()];
      const id = newId();
      await stored(noteOf(one, 'Of one.', undefined, id), noteOf(other, 'Of the other.', undefined, id));
      expect(await get(store, one, id)).toMatchObject({ body: { text: 'Of one.' } });
      expect(await get(store, other, id)).toMatchObject({ body: { text: 'Of the other.' } });
    });

    test('keeps what was corrected, and shows what stands', async () => {
      const owner = newId();
      const first = noteOf(owner, 'Hooks.');
      const second = noteOf(owner, 'Draws.', first.id);
      const third = noteOf(owner, 'Draws a little.', second.id);
      const beside = noteOf(owner, 'Hooks, says the phone.', first.id);
      await stored(first, second, third, beside);
      const texts = (records: readonly { readonly body: unknown }[]) =>
        records.map(({ body }) => (body as { readonly text: string }).text);
      expect(texts(await current(store, { owner, kind: 'note' }))).toEqual([
        'Draws a little.',
        'Hooks, says the phone.',
      ]);
      const whole = ['Hooks.', 'Draws.', 'Draws a little.', 'Hooks, says the phone.'];
      expect(texts(await history(store, owner, second.id))).toEqual(whole);
      expect(texts(await list(store, { owner, kind: 'note' }))).toEqual(whole);
      await stored(withdrawalOf(owner, third.id));
      expect(texts(await current(store, { owner, kind: 'note' }))).toEqual(['Hooks, says the phone.']);
    });

    test('refuses a correction of nothing, of another kind, of a plan or of a withdrawal', async () => {
      const owner = newId();
      const [note, plan] = [noteOf(owner, 'A note.'), planOf(owner)];
      const withdrawal = withdrawalOf(owner, note.id);
      await stored(note, plan, withdrawal);
      expect(codes(await put(store, [noteOf(owner, 'B', newId())]))).toEqual(['not-there']);
      expect(codes(await put(store, [{ ...sessionOf(owner), supersedes: note.id }]))).toEqual(['other-kind']);
      expect(codes(await put(store, [planOf(owner, plan.id)]))).toEqual(['frozen']);
      expect(codes(await put(store, [withdrawalOf(owner, withdrawal.id)]))).toEqual(['frozen']);
      expect(codes(await put(store, [noteOf(newId(), 'B', note.id)]))).toEqual(['not-there']);
    });

    test('lets a plan be taken away, though never corrected', async () => {
      const owner = newId();
      const [plan, other] = [planOf(owner), planOf(owner)];
      await stored(plan, other);
      await stored(withdrawalOf(owner, plan.id));
      expect((await current(store, { owner, kind: 'plan' })).map(({ id }) => id)).toEqual([other.id]);
    });

    test('refuses what does not have the shape it says it has', async () => {
      const owner = newId();
      const profile = profileOf(owner);
      expect(codes(await put(store, [{ ...profile, kind: 'diary' }]))).toEqual(['unknown-value']);
      expect(codes(await put(store, [{ ...profile, version: 99 }]))).toEqual(['version']);
      expect(codes(await put(store, [{ ...profile, id: 'tilda-brook-1' }]))).toEqual(['unreadable']);
      expect(codes(await put(store, [profileOf(owner, { handicapIndex: 99 })]))).toEqual(['out-of-range']);
      expect(codes(await put(store, [profileOf(HOUSE)]))).toEqual(['record']);
      expect(codes(await put(store, ['nothing']))).toEqual(['wrong-type']);
      expect(await list(store, { owner, kind: 'profile' })).toEqual([]);
    });

    test('lets nothing in the table be changed', async () => {
      await stored(profileOf(newId()));
      await expect(store.database.query('UPDATE leeway.record SET version = 2')).rejects.toThrow('never changed');
    });

    test('lists players with what is newest of theirs', async () => {
      const [one, other] = [newId(), newId()];
      const [first, session, none] = [profileOf(one), sessionOf(one), profileOf(other)];
      const again = { ...profileOf(one, { name: 'Tilda Brook-Ashby' }), supersedes: first.id };
      const receipts = await stored(first, none, session, shotOf(one, session.id), again);
      const listed = (await playerList(store)).filter(({ profile }) => [one, other].includes(profile.owner));
      expect(listed.map(({ profile, latest }) => [profile.body.name, latest.map(({ kind }) => kind)])).toEqual([
        ['Tilda Brook', ['profile']],
        ['Tilda Brook-Ashby', ['profile', 'shot', 'session']],
      ]);
      expect(listed[1]?.latest.map(({ seq }) => seq)).toEqual([4, 3, 2].map((i) => receipts[i]?.seq));
    });

    test('notes how far work has come, and forgets it with its player', async () => {
      const [owner, job] = [newId(), newId()];
      await stored(profileOf(owner));
      expect(await progressOf(store, job)).toBeUndefined();
      await noteProgress(store, job, owner, { done: 1, total: 18 });
      await noteProgress(store, job, owner, { done: 2, total: 18 });
      expect(await progressOf(store, job)).toEqual({ done: 2, total: 18 });
      await erasePlayer(store, owner);
      await noteProgress(store, job, owner, { done: 3, total: 18 });
      expect(await progressOf(store, job)).toBeUndefined();
    });

    test('takes one record from twenty hands once', async () => {
      const owner = newId();
      const profile = profileOf(owner);
      const receipts = (await Promise.all(Array.from({ length: 20 }, () => stored(profile)))).flat();
      expect(receipts.filter(({ outcome }) => outcome === 'stored')).toHaveLength(1);
      expect(new Set(receipts.map(({ seq }) => seq)).size).toBe(1);
    });

    test('is ordered by nothing but the order of storing when clocks jump', async () => {
      const owner = newId();
      const texts = ['first', 'second', 'third'];
      try {
        for (const [i, text] of texts.entries()) {
          vi.useFakeTimers({ now: new Date(`${2036 - 10 * i}-01-01`), toFake: ['Date'] });
          await stored({ ...noteOf(owner, text), madeAt: new Date().toISOString() });
        }
      } finally {
        vi.useRealTimers();
      }
      const notes = await list(store, { owner, kind: 'note' });
      expect(notes.map(({ body }) => body.text)).toEqual(texts);
      expect((await changesAfter(store, notes[0]?.seq ?? 0, [owner])).records.map(({ id }) => id)).toEqual(
        notes.slice(1).map(({ id }) => id),
      );
    });

    test('tells a phone what is new, a part at a time, and whom to forget', async () => {
      const [mine, other] = [newId(), newId()];
      const start = (await stored(profileOf(mine)))[0]?.seq ?? 0;
      await stored(noteOf(mine, 'One.'), profileOf(other), noteOf(mine, 'Two.'));
      await erasePlayer(store, other);
      const part = await changesAfter(store, start, [mine], 1);
      expect(part).toMatchObject({ records: [{ body: { text: 'One.' } }], erased: [], more: true });
      const rest = await changesAfter(store, part.upTo, [mine]);
      expect(rest).toMatchObject({ records: [{ body: { text: 'Two.' } }], erased: [other], more: false });
      expect(await changesAfter(store, rest.upTo, [mine])).toEqual({
        records: [],
        erased: [],
        upTo: rest.upTo,
        more: false,
      });
    });

    test('lists the players as they stand', async () => {
      const owner = newId();
      const profile = profileOf(owner, { name: 'Ottoline Reed' });
      await stored(profile, { ...profileOf(owner, { name: 'Ottoline Reed', minor: true }), supersedes: profile.id });
      const found = (await players(store)).filter((player) => player.owner === owner);
      expect(found).toMatchObject([{ body: { name: 'Ottoline Reed', minor: true } }]);
    });

    test('erases a player for good: rows, corrections, key, every byte, and later sendings', async () => {
      const name = 'Quirina Vandersnoot';
      const backups = temporaryFolder();
      const owner = newId();
      const note = noteOf(owner, `${name} slices.`);
      await stored(profileOf(owner, { name }), note, noteOf(owner, `${name} fades.`, note.id));
      await backUp(store, join(backups, 'monday.backup'));
      const lent = join(temporaryFolder(), 'stick');
      await backUp(store, join(lent, 'monday.backup'));
      rmSync(lent, { recursive: true });
      const erased = await erasePlayer(store, owner);
      expect(erased.value).toEqual({ records: 3, jobs: 0, unreached: [join(lent, KEY_FILE)] });
      expect(await list(store, { owner, kind: 'note' })).toEqual([]);
      expect(store.keys.sealFor(owner)).toBeUndefined();
      expect(store.keys.keys().has(owner)).toBe(false);
      expect(filesHolding(backups, owner)).not.toEqual([]);
      expect(filesHolding(backups, name)).toEqual([]);
      if (existsSync(store.database.place)) expect(filesHolding(store.database.place, name)).toEqual([]);
      expect(codes(await put(store, [note]))).toEqual(['erased']);
      expect((await erasePlayer(store, owner)).value).toMatchObject({ records: 0 });
      expect(readKeyCopy(join(backups, KEY_FILE)).value?.keys.has(owner)).toBe(false);
      expect(codes(await erasePlayer(store, HOUSE))).toEqual(['house']);
    });

    test('comes back whole from a backup, without those erased since', async () => {
      const folder = temporaryFolder();
      const [kept, gone, later] = [newId(), newId(), newId()];
      await stored(profileOf(kept), profileOf(gone), noteOf(HOUSE, 'The ninth green is slow.'));
      const path = join(folder, 'one.backup');
      const backup = await backUp(store, path);
      expect(codes(await backUp(store, path))).toEqual(['exists']);
      await erasePlayer(store, gone);
      await stored(profileOf(later), noteOf(later, 'Came later.'));

      const second = await openEmpty();
      try {
        const keyPath = join(folder, KEY_FILE);
        const restored = await restore(second, path, keyPath);
        expect(restored.value).toEqual({ records: (backup.value?.records ?? 0) - 1, leftOut: 1 });
        expect(await exportPlayer(second, kept)).toBe(await exportPlayer(store, kept));
        expect(await list(second, { owner: HOUSE, kind: 'note' })).toEqual(
          await list(store, { owner: HOUSE, kind: 'note' }),
        );
        expect(await exportPlayer(second, gone)).toBeUndefined();
        expect(codes(await put(second, [profileOf(gone)]))).toEqual(['erased']);
        expect(codes(await restore(second, path, keyPath))).toEqual(['backup']);

        const file = (await exportPlayer(store, later)) ?? '';
        expect((await importPlayer(second, file, 'later.json')).value).toHaveLength(2);
        expect(await exportPlayer(second, later)).toBe(file);
        expect((await importPlayer(second, file, 'later.json')).value).toMatchObject([
          { outcome: 'already' },
          { outcome: 'already' },
        ]);
        expect(codes(await importPlayer(second, file.replace(later, kept), 'x'))).toEqual(['player-record']);
        expect(codes(await importPlayer(second, '{}', 'x'))).toEqual(['player-record']);

        // A new step of the database's shape, then a program that does not know it.
        const step = { number: MIGRATIONS.length + 1, name: 'next.sql', text: 'CREATE TABLE leeway.next (x int)' };
        expect(await migrate(second.database, [...MIGRATIONS, step])).toEqual([]);
        expect(await exportPlayer(second, later)).toBe(file);
        expect((await migrate(second.database)).map(({ code }) => code)).toEqual(['newer-store']);
        const changed = MIGRATIONS.map((known, i) => (i === 0 ? { ...known, text: `${known.text} ` } : known));
        expect((await migrate(second.database, [...changed, step])).map(({ code }) => code)).toEqual(['other-store']);
      } finally {
        await second.close();
      }
    });

    test('has a time of making that is only what its maker said', async () => {
      const owner = newId();
      await stored(profileOf(owner));
      expect((await list(store, { owner, kind: 'profile' }))[0]?.madeAt).toBe(MADE_AT);
    });
  });
}
