/** A worker thread that solves the demo and hands back its plan, so that the server goes on answering meanwhile. */
import { parentPort } from 'node:worker_threads';
import { demoPlan } from './demoPlan.ts';

parentPort?.postMessage(demoPlan());
