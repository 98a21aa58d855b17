import fs from 'node:fs';
import type { PGlite } from '@electric-sql/pglite';
import { NodeFS } from '@electric-sql/pglite/nodefs';

type EngineOptions = Parameters<NodeFS['init']>[1];

/** The part of the engine's file layer that is put in order here. */
interface NodeFiles {
  readonly stream_ops: { fsync?: (stream: { readonly nfd: number }) => number };
}

/**
 * A folder on disk as the engine's file system, with the sync that the engine asks for really done. The engine's file layer offers a hook for it
 * and leaves it empty; without it a commit returns while its journal is still in memory.
 */
export class SyncedFiles extends NodeFS {
  /** How many syncs the engine has asked for. */
  syncs = 0;
  /** Why the engine was cut off, once it was. */
  failure: Error | undefined;
  /** What the engine's driver calls, again and again until a message is answered. */
  private calls: object | undefined;

  override async init(engine: PGlite, options: EngineOptions): ReturnType<NodeFS['init']> {
    const made = await super.init(engine, options);
    const connectSync: NonNullable<EngineOptions['preRun']>[number] = (mod) => {
      this.calls = mod;
      const files = mod.NODEFS as unknown as NodeFiles;
      files.stream_ops.fsync = ({ nfd }) => this.sync(nfd);
    };
    return { emscriptenOpts: { ...made.emscriptenOpts, preRun: [...(made.emscriptenOpts.preRun ?? []), connectSync] } };
  }

  /**
   * What was written before a sync that failed may be lost, though a later one succeeds. So the engine must not go on, as it would by itself.
   */
  private sync(handle: number): number {
    this.syncs++;
    try {
      fs.fsyncSync(handle);
      return 0;
    } catch (error) {
      this.cutOff(error instanceof Error ? error : new Error(String(error)));
      throw error;
    }
  }

  /**
   * Lets whatever the engine is asked from now on fail with an error. Its driver catches what the engine throws and asks again, with a stopped engine
   * for ever; what it calls after catching is where the loop can be left.
   */
  cutOff(failure: Error): void {
    this.failure ??= failure;
    const leave = (): never => {
      throw failure;
    };
    const nothing = (): void => undefined;
    Object.assign(this.calls ?? {}, {
      _PostgresMainLoopOnce: leave,
      stackRestore: leave,
      _PostgresSendReadyForQueryIfNecessary: nothing,
      _pgl_pq_flush: nothing,
    });
  }
}
