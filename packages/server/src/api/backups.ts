import { basename, join } from 'node:path';
import { backupSchema } from '@leeway/contract';
import { backUp } from '@leeway/store';
import { orRefuse, type Keeping } from './kept.ts';
import type { Api } from './route.ts';

/** Backups of everything. */
export function backupRoutes(api: Api, { store, backups }: Keeping): void {
  api.post(
    '/api/backups',
    {
      schema: {
        tags: ['backups'],
        summary: 'Write a backup into the folder of backups',
        response: { 200: backupSchema },
      },
    },
    async () => {
      const path = join(backups, `${new Date().toISOString().replaceAll(':', '')}.backup`);
      const { records } = orRefuse(await backUp(store, path));
      return { file: basename(path), records };
    },
  );
}
