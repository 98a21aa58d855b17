export * from './fault.ts';
