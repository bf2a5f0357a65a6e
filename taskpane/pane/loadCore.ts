import { ok, refuse } from '../../src/result';
import { STOPPED } from '../refusals';
import type { Core } from './core';

/**
 * The core behind the pane. Readers and the workbook are fetched when they are first needed. A worker reads long lists and
 * builds the workbook beside the page; where there are none, that is done in the page.
 */
export function coreWith(startWorker: (() => Worker) | null): Core {
  return {
    async readTables(name, bytes) {
      const { readTables } = await import('../../src/schedule/readTables');
      return readTables(name, bytes);
    },

    async readSchedule(table, standards, choices, answers = {}, ours = false) {
      const { readList, LONG_LIST } = await import('./build/readList');
      const job = { table, standards, choices, answers, ours };
      if (startWorker === null || table.rows.length <= LONG_LIST) return readList(job);
      const { readInWorker } = await import('./build/inWorker');
      return readInWorker(startWorker, job);
    },

    async typed(openings, at, field, text, unit) {
      const { keptAnswer } = await import('./fix');
      return keptAnswer(openings, at, field, text, unit);
    },

    async workbook(job, signal, onStep) {
      if (startWorker) {
        const { buildInWorker } = await import('./build/inWorker');
        return buildInWorker(startWorker, job, signal, onStep);
      }
      const { build } = await import('./build/job');
      return signal.aborted ? refuse(STOPPED) : ok(build(job, onStep));
    },

    async renewPlan(inputs, signal, onStep) {
      if (startWorker) {
        const { renewInWorker } = await import('./build/inWorker');
        return renewInWorker(startWorker, inputs, signal, onStep);
      }
      const { renewPlan } = await import('../../src/workbook/renewPlan');
      return signal.aborted ? refuse(STOPPED) : renewPlan(inputs, onStep);
    },

    async alone(job, signal) {
      if (startWorker) {
        const { aloneInWorker } = await import('./build/inWorker');
        return aloneInWorker(startWorker, job, signal);
      }
      const { aloneAndWithout } = await import('../../src/takeoff/alone');
      return signal.aborted ? refuse(STOPPED) : ok(aloneAndWithout(job));
    },

    async plan(order, deadlineMs, onProgress, signal) {
      if (startWorker) {
        const { planInWorker } = await import('./build/inWorker');
        return planInWorker(startWorker, order, deadlineMs, onProgress, signal);
      }
      const { planStock } = await import('../../src/stock/plan');
      return planStock({ ...order, deadlineMs, onProgress });
    },
  };
}
