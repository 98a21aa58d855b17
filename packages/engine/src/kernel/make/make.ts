import { writeFileSync } from 'node:fs';
import { bytesPage } from './compile.ts';

/** `npm run make -w @leeway/engine`: compiles the kernel and writes it to `bytes.ts`. */
writeFileSync(new URL('../bytes.ts', import.meta.url), bytesPage());
