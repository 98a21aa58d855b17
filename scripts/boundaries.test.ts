import { execFile } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

/** Files that break one rule each, and the rule that must fire on them. */
const PLANTED: readonly (readonly [what: string, path: string, text: string, rule: string])[] = [
  ['a later floor', 'engine/src/value/a.ts', `export * from '../choice/x.ts';`, 'no-restricted-imports'],
  ['a type of a later floor', 'engine/src/math/a.ts', `export type * from '../plan/x.ts';`, 'no-restricted-imports'],
  ['the solver under reach', 'engine/src/reach/a.ts', `export * from '../value/x.ts';`, 'no-restricted-imports'],
  ['reach under the player', 'engine/src/player/a.ts', `export * from '../reach/x.ts';`, 'no-restricted-imports'],
  ['a later floor, deep', 'engine/src/ground/in/a.ts', `export * from '../../player/x.ts';`, 'no-restricted-imports'],
  ['a later floor in a test', 'engine/src/stats/a.test.ts', `export * from '../value/x.ts';`, 'no-restricted-imports'],
  ['Node in the engine', 'engine/src/math/b.ts', `export * from 'node:fs';`, 'no-restricted-imports'],
  ['a bare Node module in the engine', 'engine/src/math/c.ts', `export * from 'fs';`, 'no-restricted-imports'],
  ['an unlisted library in the engine', 'engine/src/plan/a.ts', `export * from 'zod';`, 'no-restricted-imports'],
  ['an unlisted scoped library', 'engine/src/plan/b.ts', `export * from '@some/thing';`, 'no-restricted-imports'],
  ['a package in the engine', 'engine/src/a.ts', `export * from '@leeway/contract';`, 'no-restricted-imports'],
  ['the engine in itself', 'engine/src/b.ts', `export * from '@leeway/engine';`, 'no-restricted-imports'],
  ['a barrel in its package', 'engine/src/value/c.ts', `export * from '../index.ts';`, 'no-restricted-imports'],
  ['another package by its files', 'cli/src/a.ts', `export * from '../../engine/src/x.ts';`, 'no-restricted-imports'],
  ['formats in contract', 'contract/src/a.ts', `export * from '@leeway/formats';`, 'no-restricted-imports'],
  ['Node in contract', 'contract/src/b.ts', `export * from 'node:fs';`, 'no-restricted-imports'],
  ['formats in the chart', 'chart/src/a.ts', `export * from '@leeway/formats';`, 'no-restricted-imports'],
  ['Node in the chart', 'chart/src/b.ts', `export * from 'node:fs';`, 'no-restricted-imports'],
  ['Node by its own folder', 'chart/src/c.ts', `export * from './node/x.ts';`, 'no-restricted-imports'],
  ['an entry of a later package', 'engine/src/c.ts', `export * from '@leeway/chart/pdf';`, 'no-restricted-imports'],
  ['the server in formats', 'formats/src/a.ts', `export * from '@leeway/server';`, 'no-restricted-imports'],
  ['Node in formats', 'formats/src/b.ts', `export * from 'node:path';`, 'no-restricted-imports'],
  ['Node in the desk', 'desk/src/a.ts', `export * from 'node:fs';`, 'no-restricted-imports'],
  ['formats in the desk', 'desk/src/threads.ts', `export * from '@leeway/formats';`, 'no-restricted-imports'],
  ['Node in the page', 'web/src/a.tsx', `export * from 'node:fs';`, 'no-restricted-imports'],
  ['the server in the build of the page', 'web/build/a.ts', `export * from '@leeway/server';`, 'no-restricted-imports'],
  ['the store in the web page', 'web/src/a.ts', `export * from '@leeway/store';`, 'no-restricted-imports'],
  ['the server in the store', 'store/src/a.ts', `export * from '@leeway/server';`, 'no-restricted-imports'],
  ['the server in the demo', 'demo/src/a.ts', `export * from '@leeway/server';`, 'no-restricted-imports'],
  ['the command line in the server', 'server/src/a.ts', `export * from '@leeway/cli';`, 'no-restricted-imports'],
  ['a cycle', 'cli/src/one.ts', `import { two } from './two.ts';\nexport const one = (): number => two();`, 'no-cycle'],
  [
    'a cycle of types',
    'cli/src/three.ts',
    `import type { Four } from './four.ts';\nexport interface Three {\n  readonly four?: Four;\n}`,
    'no-cycle',
  ],
  ['an any', 'cli/src/b.ts', `export const f = (x: any): unknown => x;`, 'no-explicit-any'],
  [
    'a floating promise',
    'cli/src/c.ts',
    `export function f(): void {\n  Promise.resolve(1);\n}`,
    'no-floating-promises',
  ],
  ['an unused variable', 'cli/src/d.ts', `const unused = 1;\nexport const used = 2;`, 'no-unused-vars'],
  ['a silenced compiler', 'cli/src/e.ts', `// @ts-ignore\nexport const x: number = 'a';`, 'ban-ts-comment'],
];

/** Files that keep the rules: the linter must have nothing to say on them. */
const SOUND: readonly (readonly [path: string, text: string])[] = [
  [
    'engine/src/choice/ok.ts',
    `export * from '../value/x.ts';\nexport * from './x.ts';\nexport * from 'clipper2-ts';\nexport type * from '../math/x.ts';`,
  ],
  [
    'engine/src/value/ok.test.ts',
    `import { readFileSync } from 'node:fs';\nimport { test } from 'vitest';\nexport const both = [readFileSync, test];`,
  ],
  ['chart/src/node/ok.ts', `export * from 'node:fs';\nexport * from 'pdfkit';\nexport * from '../x.ts';`],
  ['engine/src/index.ts', `export * from './plan/x.ts';`],
  [
    'formats/src/ok.ts',
    `export * from '@leeway/contract';\nexport * from '@leeway/engine';\nexport * from 'csv-parse';`,
  ],
  ['web/build/ok.ts', `export * from 'node:fs';\nexport * from 'vite';`],
  ['server/src/ok.ts', `export * from '@leeway/demo';\nexport * from 'node:fs';\nexport * from 'fastify';`],
];

interface Diagnostic {
  readonly code: string;
  readonly filename: string;
}

const root = fileURLToPath(new URL('..', import.meta.url));
let folder = '';
let found: readonly Diagnostic[] = [];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'leeway-boundaries-'));
  await copyFile(join(root, 'oxlint.config.ts'), join(folder, 'oxlint.config.ts'));
  const compilerOptions = { strict: true, module: 'nodenext', types: [], noEmit: true };
  await writeFile(join(folder, 'tsconfig.json'), JSON.stringify({ compilerOptions, include: ['packages'] }));
  const partners = [
    ['cli/src/two.ts', `import { one } from './one.ts';\nexport const two = (): number => one();`],
    [
      'cli/src/four.ts',
      `import type { Three } from './three.ts';\nexport interface Four {\n  readonly three?: Three;\n}`,
    ],
  ] as const;
  for (const [path, text] of [...PLANTED.map((planted) => [planted[1], planted[2]] as const), ...SOUND, ...partners]) {
    await mkdir(dirname(join(folder, 'packages', path)), { recursive: true });
    await writeFile(join(folder, 'packages', path), `${text}\n`);
  }
  found = await lint();
}, 60_000);

afterAll(() => rm(folder, { recursive: true, force: true }));

function lint(): Promise<readonly Diagnostic[]> {
  const oxlint = join(root, 'node_modules', '.bin', 'oxlint');
  return new Promise((resolve, reject) => {
    execFile(oxlint, ['--type-aware', '-f', 'json'], { cwd: folder, maxBuffer: 1e7 }, (_, stdout, stderr) => {
      try {
        resolve((JSON.parse(stdout) as { diagnostics: readonly Diagnostic[] }).diagnostics);
      } catch {
        reject(new Error(`the linter gave no report: ${stdout}${stderr}`));
      }
    });
  });
}

const rulesOn = (path: string): readonly string[] =>
  found.filter((d) => d.filename === `packages/${path}`).map((d) => /\(([^)]+)\)/.exec(d.code)?.[1] ?? d.code);

describe('the linter refuses', () => {
  test.each(PLANTED)('%s', (_what, path, _text, rule) => {
    expect(rulesOn(path)).toContain(rule);
  });
});

describe('the linter lets pass', () => {
  test.each(SOUND)('%s', (path) => {
    expect(rulesOn(path)).toEqual([]);
  });
});
