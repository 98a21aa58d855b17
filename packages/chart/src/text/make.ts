/** Writes `widths.ts` from the fonts. Run by `npm run make -w @leeway/chart`. */
import { writeFile } from 'node:fs/promises';
import { widthsFile } from './widthsFile.ts';

await writeFile(new URL('widths.ts', import.meta.url), await widthsFile());
