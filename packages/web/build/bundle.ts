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
    plugins: [planAtOnce()],
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

/** What headings are set in. */
const FIRST_FONTS = [/libre-caslon-text-latin-400-normal-.*woff2$/, /barlow-semi-condensed-latin-600-normal-.*woff2$/];

/**
 * The Plan page is what a session opens with: its code with all that is imported, and the fonts that it waits for, are fetched beside the first script
 * rather than after it.
 */
const planAtOnce = (): Plugin => ({
  name: 'plan-at-once',
  transformIndexHtml: {
    order: 'post',
    handler: (_html, { bundle: built }) => {
      const chunks = Object.values(built ?? {}).filter((file) => file.type === 'chunk');
      const byName = new Map(chunks.map((chunk) => [chunk.fileName, chunk]));
      const found = new Set<string>();
      const take = (fileName: string): void => {
        const chunk = byName.get(fileName);
        if (chunk === undefined || chunk.isEntry || found.has(fileName)) return;
        found.add(fileName);
        chunk.imports.forEach(take);
      };
      const plan = chunks.find((chunk) => chunk.facadeModuleId?.endsWith('/src/startPage.tsx') === true);
      if (plan === undefined) throw new Error('the Plan page has no chunk of its own');
      take(plan.fileName);
      const fonts = Object.keys(built ?? {}).filter((name) => FIRST_FONTS.some((font) => font.test(name)));
      const links = [
        ...fonts.map((name) => ({ rel: 'preload', as: 'font', type: 'font/woff2', href: `/${name}` })),
        ...[...found].map((name) => ({ rel: 'modulepreload', href: `/${name}` })),
      ];
      return links.map((attrs) => ({ tag: 'link', attrs: { crossorigin: true, ...attrs }, injectTo: 'head' as const }));
    },
  },
});

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
