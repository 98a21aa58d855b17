/** Writes the demo's files from the code that makes them. */
import { writeFileSync } from 'node:fs';
import { committedFiles } from './committed.ts';
import { demoPath } from './demoPath.ts';

for (const [path, text] of Object.entries(committedFiles())) writeFileSync(demoPath(path), text);
