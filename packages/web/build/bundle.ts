import { join } from 'node:path';
import { HOUSE } from './sources.ts';

/** Bundles the page and its worker into a folder, which is emptied first. Rejects with what the bundler found wrong. */
export async function bundle(outDir: string): Promise<void> {
  const { build } = await import('vite');
  await build({
    configFile: false,
    root: join(HOUSE, 'packages/web'),
    logLevel: 'error',
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    worker: { format: 'es' },
    build: {
      outDir,
      emptyOutDir: true,
      target: 'es2024',
      // the page's policy lets no data: addresses in
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      reportCompressedSize: false,
    },
  });
}
