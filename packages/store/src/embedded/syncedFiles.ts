import fs from 'node:fs';
import type { PGlite } from '@electric-sql/pglite';
import { NodeFS } from '@electric-sql/pglite/nodefs';

type EngineOptions = Parameters<NodeFS['init']>[1];

/** The parts of the engine's file layer that are put in order here. */
interface NodeFiles {
  readonly stream_ops: { fsync?: (stream: { readonly nfd: number }) => number };
  /** Runs a call of Node's and turns its error into the engine's own. */
  tryFSOperation(call: () => void): void;
}

/**
 * A folder on disk as the engine's file system, with the sync that the engine asks for really done. The engine's file layer offers a hook for it
 * and leaves it empty; without it a commit returns while its journal is still in memory.
 */
export class SyncedFiles extends NodeFS {
  /** How many syncs the engine has asked for. */
  syncs = 0;

  override async init(engine: PGlite, options: EngineOptions): ReturnType<NodeFS['init']> {
    const made = await super.init(engine, options);
    const connectSync: NonNullable<EngineOptions['preRun']>[number] = (mod) => {
      const files = mod.NODEFS as unknown as NodeFiles;
      files.stream_ops.fsync = ({ nfd }) => {
        this.syncs++;
        files.tryFSOperation(() => fs.fsyncSync(nfd));
        return 0;
      };
    };
    return { emscriptenOpts: { ...made.emscriptenOpts, preRun: [...(made.emscriptenOpts.preRun ?? []), connectSync] } };
  }
}
