import type { ListedPlayer, Note, Profile, StoredRecord } from '@leeway/contract';
import { computed, signal } from '@preact/signals';
import type { Done } from '../parts/Says.tsx';
import { got, newRecord, Refused, sent, today } from '../shell/api.ts';
import { go, hrefOf } from '../shell/place.ts';
import { PLAYERS } from './words.ts';

type KeptNote = StoredRecord<'note'>;

/** What the Players page shows, and what is done on it. Everything is kept by the server before the page shows it. */
export class PlayersState {
  /** `undefined` until the server has answered. */
  readonly players = signal<readonly ListedPlayer[] | undefined>(undefined);
  readonly fault = signal<string | undefined>(undefined);
  readonly done = signal<Done | undefined>(undefined);
  readonly chosenId = signal<string | undefined>(undefined);
  readonly notes = signal<readonly KeptNote[]>([]);
  /** The form: of a new player, or of the chosen one. */
  readonly form = signal<'new' | 'edit' | undefined>(undefined);
  readonly erasing = signal(false);
  readonly withArchived = signal(false);
  readonly noStore = signal(false);

  readonly shown = computed(() =>
    (this.players.value ?? []).filter(({ profile }) => this.withArchived.value || profile.body.archived !== true),
  );
  readonly archivedCount = computed(
    () => (this.players.value ?? []).filter(({ profile }) => profile.body.archived === true).length,
  );
  readonly chosen = computed(() => this.players.value?.find(({ profile }) => profile.owner === this.chosenId.value));

  async load(): Promise<void> {
    await this.trying(async () => {
      this.players.value = (await got<{ players: readonly ListedPlayer[] }>('/api/players')).players;
    });
  }

  async choose(id: string | undefined): Promise<void> {
    this.chosenId.value = id;
    this.form.value = undefined;
    this.erasing.value = false;
    this.notes.value = [];
    if (id === undefined || this.chosen.value === undefined) return;
    await this.trying(async () => {
      const { records } = await got<{ records: readonly KeptNote[] }>(`/api/players/${id}/notes`);
      if (this.chosenId.value === id)
        this.notes.value = records.toSorted((a, b) => (a.body.date < b.body.date ? 1 : -1));
    });
  }

  /** Keeps the form: a new player, or new details of the chosen one. */
  async keep(body: Profile): Promise<void> {
    await this.trying(async () => {
      const before = this.form.value === 'edit' ? this.chosen.value?.profile : undefined;
      const owner = before?.owner ?? crypto.randomUUID();
      await this.putProfile(owner, body, before?.id);
      this.form.value = undefined;
      this.done.value = { words: PLAYERS.kept };
      await this.load();
      await this.choose(owner);
      go(hrefOf('players', owner), 'replace');
    });
  }

  /** Changes something of the chosen player; undo puts the profile back as it was. */
  async change(change: (body: Profile) => Profile, words: string): Promise<void> {
    const before = this.chosen.value?.profile;
    if (before === undefined) return;
    await this.trying(async () => {
      await this.putProfile(before.owner, change(before.body), before.id);
      await this.load();
      const undo = (): void => void this.change(() => before.body, PLAYERS.kept);
      this.done.value = { words, undo: { words: PLAYERS.undo, act: undo } };
    });
  }

  async addNote(note: Note): Promise<void> {
    const owner = this.chosenId.value;
    if (owner === undefined) return;
    await this.trying(async () => {
      await sent(`/api/players/${owner}/notes`, { records: [newRecord(note)] });
      this.done.value = { words: PLAYERS.kept };
      await this.load();
      await this.choose(owner);
    });
  }

  /** A note that was taken back is written again by undo. */
  async takeBack(note: KeptNote): Promise<void> {
    await this.trying(async () => {
      await sent(`/api/players/${note.owner}/withdrawals`, { records: [newRecord({}, note.id)] });
      await this.choose(note.owner);
      this.done.value = {
        words: PLAYERS.takenBack,
        undo: { words: PLAYERS.undo, act: () => void this.addNote(note.body) },
      };
    });
  }

  async erase(name: string): Promise<void> {
    const owner = this.chosenId.value;
    if (owner === undefined) return;
    await this.trying(async () => {
      await sent(`/api/players/${owner}/erasure`, { name });
      this.done.value = { words: PLAYERS.erased };
      await this.choose(undefined);
      await this.load();
    });
  }

  private async putProfile(owner: string, body: Profile, supersedes: string | undefined): Promise<void> {
    await sent(`/api/players/${owner}/profiles`, { records: [newRecord(body, supersedes)] });
  }

  private async trying(act: () => Promise<void>): Promise<void> {
    this.fault.value = undefined;
    try {
      await act();
    } catch (error) {
      this.noStore.value = error instanceof Refused && error.faults.some(({ code }) => code === 'no-store');
      const otherName = error instanceof Refused && error.faults.some(({ code }) => code === 'other-name');
      if (!this.noStore.value)
        this.fault.value = otherName ? PLAYERS.otherName : error instanceof Error ? error.message : String(error);
    }
  }
}

/** The profile spared from today on, or no longer. */
export function spared(profile: Profile, on: boolean): Profile {
  const { sparedSince: _, ...body } = profile;
  return on ? { ...body, sparedSince: today() } : body;
}

export function archived(profile: Profile, on: boolean): Profile {
  const { archived: _, ...body } = profile;
  return on ? { ...body, archived: true } : body;
}
