import type { Fault, ShotColumn, ShotFile, ShotFileReading } from '@leeway/contract';
import { batch, signal } from '@preact/signals';
import { Refused, sent, today } from '../shell/api.ts';
import { units } from '../shell/remembered.ts';

/** A file of shots that is being looked at: how it reads now, and what the coach says it means. Nothing is kept before it is approved. */
export class OfferedFile {
  readonly file: File;
  readonly preview = signal<ShotFile | undefined>(undefined);
  /** Why it cannot be read at all. */
  readonly faults = signal<readonly Fault[]>([]);
  readonly failed = signal<string | undefined>(undefined);
  readonly busy = signal(false);
  readonly date = signal(today());
  private readonly owner: string;
  private reading: ShotFileReading | undefined;
  private asks = 0;

  constructor(owner: string, file: File) {
    this.owner = owner;
    this.file = file;
  }

  /** Reads it as the coach has said so far. */
  async look(): Promise<void> {
    await this.ask();
  }

  async dayIs(date: string): Promise<void> {
    this.date.value = date;
    await this.ask();
  }

  async unitsAre(yardsOrMetres: 'yd' | 'm'): Promise<void> {
    await this.say({ units: yardsOrMetres });
  }

  async shotsOf(of: string): Promise<void> {
    await this.say({ of });
  }

  async means(heading: number, meaning: ShotColumn | 'ignore'): Promise<void> {
    await this.say({ meanings: this.meaningsNow().with(heading, meaning) });
  }

  /** Keeps what is shown. True when it is kept. */
  async keep(): Promise<boolean> {
    const shown = this.preview.value;
    if (shown === undefined || shown.sessions.length === 0) return false;
    this.reading = { ...shown.reading, meanings: [...this.meaningsNow()] };
    // the headings that were left unread are said to be so, and what is kept is what that reads as
    const looked = await this.ask();
    return looked !== undefined && (await this.ask(looked.seen))?.kept !== undefined;
  }

  private meaningsNow(): readonly (ShotColumn | 'ignore')[] {
    return (this.preview.value?.headings ?? []).map(({ meaning }) => meaning ?? 'ignore');
  }

  private async say(more: Partial<ShotFileReading>): Promise<void> {
    const before = this.reading ?? this.preview.value?.reading ?? { units: units.peek() };
    this.reading = { ...before, ...more };
    await this.ask();
  }

  private async ask(approve?: string): Promise<ShotFile | undefined> {
    const ask = ++this.asks;
    const query = new URLSearchParams({ name: this.file.name, date: this.date.value, units: units.peek() });
    if (this.reading !== undefined) query.set('reading', JSON.stringify(this.reading));
    if (approve !== undefined) query.set('approve', approve);
    this.busy.value = true;
    try {
      const read = await sent<ShotFile>(`/api/players/${this.owner}/shot-files?${query.toString()}`, this.file);
      if (ask !== this.asks) return undefined;
      batch(() => {
        this.preview.value = read;
        this.faults.value = [];
        this.failed.value = undefined;
      });
      return read;
    } catch (error) {
      if (ask !== this.asks) return undefined;
      if (error instanceof Refused) this.faults.value = error.faults;
      else this.failed.value = error instanceof Error ? error.message : String(error);
      return undefined;
    } finally {
      if (ask === this.asks) this.busy.value = false;
    }
  }
}
