/**
 * The linter's rules, and above all which way imports point. Packages and, inside the engine, folders are in the order below: each may
 * import itself and those before it. Type-only imports count, and tests keep the order too.
 */
const PACKAGES = ['engine', 'contract', 'chart', 'desk', 'formats', 'demo', 'web', 'store', 'server', 'cli'];
const FLOORS = [
  'quantity',
  'math',
  'stats',
  'geometry',
  'kernel',
  'flight',
  'ground',
  'day',
  'player',
  'reach',
  'value',
  'choice',
  'study',
  'plan',
  'ledger',
];

/** Packages that run in the browser too. */
const BROWSER_SAFE = ['engine', 'contract', 'chart', 'desk', 'formats', 'web'];

/** Their files that run in Node alone: print and fonts from files, the adapter for worker threads, and the build of the page. */
const NODE_ONLY = ['packages/chart/src/node/**/*.ts', 'packages/desk/src/threads.ts', 'packages/web/build/**/*.ts'];

/** Pure, typed libraries without dependencies of their own that the engine may import. */
const ENGINE_LIBRARIES = ['clipper2-ts'];

/** Tests, what only they read, and what makes committed data: they may use Node and the test libraries. */
const TESTS = ['*.test.ts', 'testdata/**/*.ts', 'make/**/*.ts'];

interface Ban {
  readonly regex?: string;
  readonly group?: readonly string[];
  readonly message: string;
}

const ban = (files: readonly string[], excludeFiles: readonly string[], patterns: readonly Ban[]) => ({
  files: [...files],
  excludeFiles: [...excludeFiles],
  rules: { 'no-restricted-imports': ['error', { patterns: [...patterns] }] },
});

/** What every file under a folder is barred from, and what only its shipped files are. A later override replaces an earlier one. */
const bars = (folder: string, always: readonly Ban[], shipped: readonly Ban[]) => {
  const free = [...TESTS.map((name) => `${folder}/**/${name}`), ...NODE_ONLY.filter((name) => name.startsWith(folder))];
  return [ban([`${folder}/**/*.ts`, `${folder}/**/*.tsx`], free, [...always, ...shipped]), ban(free, [], always)];
};

const anyOf = (names: readonly string[]): string => `(${names.join('|')})`;

const byItsFiles: Ban = {
  regex: `/${anyOf(PACKAGES)}/src(/|$)|^(\\.\\./)+packages/`,
  message: 'Import another package by its name, @leeway/…, not by its files.',
};

const laterPackages = (name: string): Ban => ({
  regex: `^@leeway/${anyOf(PACKAGES.slice(PACKAGES.indexOf(name)))}(/|$)`,
  message: `@leeway/${name} may import only the packages before it: ${PACKAGES.join(' < ')}.`,
});

const noPlatform: Ban = { regex: '^node:', message: 'This package runs in the browser too: no Node modules.' };

const noNodeFolder: Ban = {
  regex: '^\\.\\.?/(.*/)?node/',
  message: 'What is in node/ needs Node: only its own entries lead there.',
};

const onlyListed: Ban = {
  group: ['**', '!./**', '!../**', ...ENGINE_LIBRARIES.map((name) => `!${name}`)],
  message: 'The engine imports only the pure libraries that oxlint.config.ts lists.',
};

const noBarrel: Ban = { regex: '^\\.\\.?/(\\.\\./)*index\\.ts$', message: 'Inside a package, import the file itself.' };

const laterFloors = (floor: string): readonly Ban[] => {
  const later = FLOORS.slice(FLOORS.indexOf(floor) + 1);
  if (later.length === 0) return [];
  const message = `engine/src/${floor} may import only itself and the floors before it: ${FLOORS.join(' < ')}.`;
  return [{ regex: `^\\.\\./(\\.\\./)*${anyOf(later)}/`, message }];
};

const byPackage = (name: string) =>
  bars(
    `packages/${name}`,
    [byItsFiles, laterPackages(name), noBarrel],
    [...(BROWSER_SAFE.includes(name) ? [noPlatform, noNodeFolder] : []), ...(name === 'engine' ? [onlyListed] : [])],
  );

const byFloor = (floor: string) =>
  bars(
    `packages/engine/src/${floor}`,
    [byItsFiles, laterPackages('engine'), noBarrel, ...laterFloors(floor)],
    [noPlatform, onlyListed],
  );

export default {
  plugins: ['eslint', 'typescript', 'unicorn', 'oxc', 'import', 'promise', 'vitest'],
  categories: { correctness: 'error', suspicious: 'error' },
  options: { typeAware: true },
  ignorePatterns: [
    '**/node_modules/**',
    '**/test-results/**',
    '**/playwright-report/**',
    '**/.cache/**',
    'packages/engine/src/kernel/assembly/**',
  ],
  rules: {
    'import/no-cycle': ['error', { ignoreTypes: false }],
    'typescript/no-explicit-any': 'error',
    'typescript/no-floating-promises': 'error',
    'typescript/no-misused-promises': 'error',
    'typescript/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
    'typescript/consistent-type-imports': 'error',
    'typescript/ban-ts-comment': 'error',
    'no-unused-vars': 'error',
    'no-console': 'error',
    eqeqeq: 'error',
    // Published coefficients are copied whole.
    'no-loss-of-precision': 'off',
    // Foreign data is narrowed by hand where it comes in; a checked assertion there reads better than a second guard.
    'typescript/no-unsafe-type-assertion': 'off',
    'unicorn/consistent-function-scoping': 'off',
    'import/no-named-as-default-member': 'off',
    // The compiler sees these better.
    'typescript/consistent-return': 'off',
    'no-unmodified-loop-condition': 'off',
    // Each side of a case may expect its own.
    'vitest/no-conditional-expect': 'off',
    // Worker threads have no origins.
    'unicorn/require-post-message-target-origin': 'off',
    // Kernels sort what they own in place.
    'unicorn/no-array-sort': 'off',
  },
  overrides: [...PACKAGES.flatMap(byPackage), ...FLOORS.flatMap(byFloor)],
};
