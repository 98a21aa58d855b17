import type { Fault, GroundFilePreview, HoleNumbers, SentHole } from '@leeway/contract';
import { batch, computed, signal } from '@preact/signals';
import type { Done } from '../parts/Says.tsx';
import { got, newRecord, Refused, sent } from '../shell/api.ts';
import { units } from '../shell/remembered.ts';
import { emptyHole, nextNumber, numbersOf, type TypedHole, typedOf } from './typed.ts';
import { GROUND } from './words.ts';

interface Course {
  readonly id: string;
  readonly name: string;
  readonly attribution?: string;
  readonly file: string;
}
interface Read {
  readonly faults: readonly Fault[];
  readonly last?: SentHole;
  readonly kept?: string;
}

const STILL_MS = 250;

/** What the Ground page shows: courses that are kept, the hole that is being typed, and a map file that is being looked at. */
export class GroundState {
  readonly courses = signal<readonly Course[] | undefined>(undefined);
  readonly fault = signal<string | undefined>(undefined);
  readonly done = signal<Done | undefined>(undefined);
  readonly noStore = signal(false);

  /** The course that the hole joins, its other holes, and the hole itself. */
  readonly course = signal<Course | undefined>(undefined);
  readonly name = signal('');
  readonly others = signal<readonly HoleNumbers[]>([]);
  readonly typed = signal<TypedHole>(emptyHole('1', units.peek()));
  readonly seen = signal<Read | undefined>(undefined);
  readonly numbers = computed(() => numbersOf(this.typed.value, units.value));

  readonly file = signal<File | undefined>(undefined);
  readonly preview = signal<GroundFilePreview | undefined>(undefined);
  readonly fileFaults = signal<readonly Fault[]>([]);

  private asks = 0;
  private still: ReturnType<typeof setTimeout> | undefined;

  async load(): Promise<void> {
    await this.trying(async () => {
      this.courses.value = (await got<{ courses: readonly Course[] }>('/api/courses')).courses;
    });
  }

  set(change: Partial<TypedHole>): void {
    this.typed.value = { ...this.typed.peek(), ...change };
    clearTimeout(this.still);
    this.still = setTimeout(() => void this.look(), STILL_MS);
  }

  /** Begins another hole of the same course. */
  another(): void {
    this.typed.value = emptyHole(nextNumber(this.others.value), units.value);
    this.seen.value = undefined;
  }

  /** Takes up a hole of the course that was typed before. */
  takeUp(hole: HoleNumbers): void {
    this.typed.value = typedOf(hole, units.value);
    void this.look();
  }

  /** Opens a typed course to add to. False when it was not typed. */
  async openCourse(course: Course): Promise<void> {
    await this.trying(async () => {
      const { holes } = await got<{ holes: readonly HoleNumbers[] }>(`/api/courses/${course.id}/numbers`);
      batch(() => {
        this.course.value = course;
        this.name.value = course.name;
        this.others.value = holes;
      });
      this.another();
    });
  }

  /** Has the hole read as it stands, to be drawn. */
  async look(): Promise<void> {
    const numbers = this.numbers.value;
    if (numbers === undefined) return;
    const ask = ++this.asks;
    const read = await this.send([numbers], false).catch((error: unknown) => failed(error));
    if (ask === this.asks) this.seen.value = read;
  }

  /** Keeps the hole with the others of its course; the id of the course as it now stands, and the hole's number. */
  async keep(): Promise<{ readonly course: string; readonly hole: string } | undefined> {
    const numbers = this.numbers.value;
    if (numbers === undefined) return undefined;
    this.asks++;
    const holes = [...this.others.value.filter(({ hole }) => hole !== numbers.hole), numbers];
    const read = await this.send(holes, true).catch((error: unknown) => failed(error));
    this.seen.value = read;
    const { kept } = read;
    if (kept === undefined) return undefined;
    await this.load();
    batch(() => {
      this.others.value = holes;
      this.course.value = this.courses.value?.find(({ id }) => id === kept);
      this.done.value = { words: GROUND.kept };
    });
    return { course: kept, hole: numbers.hole };
  }

  private send(holes: readonly HoleNumbers[], keep: boolean): Promise<Read> {
    const course = this.course.value === undefined ? {} : { course: this.course.value.id };
    return sent<Read>('/api/courses/numbers', {
      name: this.name.value.trim() || GROUND.unnamed,
      ...(keep ? course : {}),
      holes,
      keep,
    });
  }

  /** Takes a course out of the list; undo stores it anew. */
  async putAway(course: Course): Promise<void> {
    await this.trying(async () => {
      const { records } = await got<{ records: readonly { id: string; body: object }[] }>(
        `/api/house/courses/${course.id}`,
      );
      const body = records.find(({ id }) => id === course.id)?.body;
      await sent('/api/house/withdrawals', { records: [newRecord({}, course.id)] });
      const again = async (): Promise<void> => {
        if (body !== undefined) await sent('/api/house/courses', { records: [newRecord(body)] });
        this.done.value = { words: GROUND.kept };
        await this.load();
      };
      this.done.value = { words: GROUND.removed, undo: { words: GROUND.undo, act: () => void again() } };
      if (this.course.value?.id === course.id) this.course.value = undefined;
      await this.load();
    });
  }

  async offer(file: File): Promise<void> {
    this.file.value = file;
    this.preview.value = undefined;
    this.fileFaults.value = [];
    await this.readFile(file);
  }

  async keepFile(): Promise<void> {
    const [file, shown] = [this.file.value, this.preview.value];
    if (file === undefined || shown === undefined || !(await this.readFile(file, shown.seen))) return;
    this.file.value = undefined;
    this.done.value = { words: GROUND.kept };
    await this.load();
  }

  private async readFile(file: File, approve?: string): Promise<boolean> {
    const query = new URLSearchParams({ name: file.name, ...(approve === undefined ? {} : { approve }) });
    try {
      this.preview.value = await sent<GroundFilePreview>(`/api/courses/files?${query.toString()}`, file);
      return true;
    } catch (error) {
      this.fileFaults.value = failed(error).faults;
      return false;
    }
  }

  private async trying(act: () => Promise<void>): Promise<void> {
    this.fault.value = undefined;
    try {
      await act();
    } catch (error) {
      this.noStore.value = error instanceof Refused && error.faults.some(({ code }) => code === 'no-store');
      if (!this.noStore.value) this.fault.value = error instanceof Error ? error.message : String(error);
    }
  }
}

/** What was refused, as a reading without a hole. */
function failed(error: unknown): Read {
  if (error instanceof Refused) return { faults: error.faults };
  throw error;
}
