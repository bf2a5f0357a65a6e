import type FastCheck from 'fast-check';
import { createRequire } from 'node:module';
import { EXPLAINED } from './explained';
import { hold } from './held';
import { survivorsOf } from './survivors';

// The held tests require the library: that copy of it is not the one that an import gives.
const fc = createRequire(import.meta.url)('fast-check') as typeof FastCheck;

/** What was changed, how often, and what nobody noticed, in words; a change that is explained counts as such. */
export interface Report {
  readonly changes: number;
  readonly unnoticed: readonly string[];
  readonly explained: number;
  /** Explanations of these sources whose change a test notices after all, or that there is not. */
  readonly needless: readonly string[];
}

/** Changes each number and operator of some sources in turn, and runs these tests on it. */
export async function changesOf(
  sources: readonly string[],
  tests: readonly string[],
  mostMs: number,
  say: (unnoticed: string) => void = () => undefined,
): Promise<Report> {
  const before = fc.readConfigureGlobal();
  // A property draws the same cases at every run; one that fails is searched for its smallest case: here it has done its work.
  fc.configureGlobal({ ...before, seed: 1, endOnFailure: true });
  try {
    const { files, changes } = await hold(tests, (file) => sources.includes(file));
    const explains = (one: (typeof EXPLAINED)[number], { file, text, from, to }: (typeof changes)[number]) =>
      one.file === file && one.text === text && one.change === `${from} → ${to}`;
    const isOpen = (change: (typeof changes)[number]) => !EXPLAINED.some((one) => explains(one, change));
    const inWords = ({ file, line, from, to, text }: (typeof changes)[number]) =>
      `${file}:${line}  ${from} → ${to}  ${text}`;
    const survivors = await survivorsOf(files, changes, mostMs, (change) => {
      if (isOpen(change)) say(inWords(change));
    });
    const open = survivors.filter(isOpen);
    const needless = EXPLAINED.filter(
      (one) => sources.includes(one.file) && !survivors.some((change) => explains(one, change)),
    );
    return {
      changes: changes.length,
      unnoticed: open.map(inWords),
      explained: survivors.length - open.length,
      needless: needless.map(({ file, change, text }) => `${file}  ${change}  ${text}`),
    };
  } finally {
    fc.configureGlobal(before ?? {});
  }
}
