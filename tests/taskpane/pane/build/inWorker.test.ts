import { expect, it } from 'vitest';
import { renewInWorker } from '../../../../taskpane/pane/build/inWorker';
import type { ToWorker } from '../../../../taskpane/pane/build/worker';
import { fill } from '../../../../taskpane/pane/deeds/fill';
import { planInputs } from '../../../../taskpane/pane/deeds/plans';
import { MemoryHost } from '../../../../taskpane/memory/host';
import { STOPPED } from '../../../../taskpane/refusals';
import { valueOf } from '../../../value';
import { readList } from '../bench';

/** What a worker's script has of its surroundings, here the test's own. */
const scope = globalThis as unknown as {
  onmessage: (event: { data: unknown }) => void;
  postMessage: (message: unknown) => void;
};

/** A worker that a test speaks for. */
class StandIn {
  onmessage: ((event: { data: unknown }) => void) | null = null;
  asked: ToWorker | null = null;
  ended = false;
  postMessage(job: ToWorker): void {
    this.asked = structuredClone(job);
  }
  terminate(): void {
    this.ended = true;
  }
  says(data: unknown): void {
    this.onmessage?.({ data: structuredClone(data) });
  }
}

async function inputs() {
  const { bench, host } = await readList(
    new MemoryHost({
      List: [
        ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Casing'],
        ['W1', 1, 'quarter round', 49, null, 3.5],
      ],
    }),
  );
  await fill(bench, []);
  const takeoff = valueOf(await host.readSheet('Takeoff'))!;
  return { ...valueOf(await planInputs(bench, takeoff)).inputs, savings: true };
}

it('a search for other numbers of segments tells how far it is, step by step, before its result', async () => {
  const told: unknown[] = [];
  scope.postMessage = (message) => told.push(structuredClone(message));
  await import('../../../../taskpane/pane/build/worker');
  const worker = new StandIn();
  const heard: (readonly [number, number])[] = [];
  const renewed = renewInWorker(
    () => worker as unknown as Worker,
    await inputs(),
    new AbortController().signal,
    (done, of) => heard.push([done, of]),
  );
  scope.onmessage({ data: worker.asked });
  told.forEach((message) => worker.says(message));
  expect(heard.length).toBeGreaterThan(3);
  expect(heard.every(([done, of], at) => done <= of && (at === 0 || done >= heard[at - 1]![0]))).toBe(true);
  expect(valueOf(await renewed).savings!.changes).toMatchObject([{ marks: ['W1'] }]);
  expect(worker.ended).toBe(true);
});

it('a stop ends the worker at once, and nothing it says afterwards is heard', async () => {
  const worker = new StandIn();
  const heard: number[] = [];
  const control = new AbortController();
  const renewed = renewInWorker(
    () => worker as unknown as Worker,
    await inputs(),
    control.signal,
    (done) => heard.push(done),
  );
  worker.says({ done: 1, of: 9 });
  control.abort();
  expect(worker.ended).toBe(true);
  expect(await renewed).toEqual({ ok: false, message: STOPPED });
  expect(heard).toEqual([1]);
});

it('after a stop no worker is begun', async () => {
  const control = new AbortController();
  control.abort();
  let begun = 0;
  const start = () => {
    begun++;
    return new StandIn() as unknown as Worker;
  };
  expect(await renewInWorker(start, await inputs(), control.signal)).toEqual({ ok: false, message: STOPPED });
  expect(begun).toBe(0);
});
