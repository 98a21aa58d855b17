/** Writes `text/widths.ts` from the fonts. Run by `npm run make -w @leeway/chart`. */
import { writeFile } from 'node:fs/promises';
import { widthsFile } from './widthsFile.ts';

await writeFile(new URL('../text/widths.ts', import.meta.url), await widthsFile());
