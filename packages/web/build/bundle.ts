import { join } from 'node:path';
import type { Plugin } from 'vite';
import { HOUSE } from './sources.ts';

/** Bundles the page and its worker into a folder, which is emptied first. Rejects with what the bundler found wrong. */
export async function bundle(outDir: string): Promise<void> {
  const { build } = await import('vite');
  await build({
    configFile: false,
    root: join(HOUSE, 'packages/web'),
    logLevel: 'error',
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    worker: { format: 'es', plugins: () => [withoutUnused()] },
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

/**
 * Parts of the clipper that the house does not use, but that its one object of all functions holds on to: they would be a tenth of the page's script.
 * Calling one of them fails by its name.
 */
const UNUSED: readonly (readonly [file: RegExp, names: readonly string[]])[] = [
  [/\/clipper2-ts\/dist\/Triangulation\.js$/, ['Delaunay', 'TriangulateResult']],
  [/\/clipper2-ts\/dist\/Minkowski\.js$/, ['Minkowski']],
  [/\/clipper2-ts\/dist\/RectClip\.js$/, ['OutPt2', 'RectClip64', 'RectClipLines64']],
];
/** The object itself, and the functions of it that the house calls: the others are not hung on it, and fall away. */
const OBJECT = /\/clipper2-ts\/dist\/Clipper\.js$/;
const CALLED = ['areaD', 'booleanOpDWithPolyTree', 'inflatePathsD', 'intersectD'];

const withoutUnused = (): Plugin => ({
  name: 'without-unused',
  load(id) {
    const names = UNUSED.find(([file]) => file.test(id))?.[1];
    return names?.map((name) => `export const ${name} = undefined;`).join('\n');
  },
  transform(code, id) {
    if (!OBJECT.test(id)) return undefined;
    return code.replace(/^ *Clipper\.(\w+) = \1;$/gm, (line, name: string) => (CALLED.includes(name) ? line : ''));
  },
});
