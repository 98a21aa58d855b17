import { defineConfig } from '@playwright/test';

export default defineConfig({ testDir: 'src', workers: 1, forbidOnly: true });
