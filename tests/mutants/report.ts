import fc from 'fast-check';
import { EXPLAINED } from './explained';
import { hold } from './held';
import { survivorsOf } from './survivors';

/** What was changed, how often, and what nobody noticed, in words; a change that is explained counts as such. */
export interface Report {
  readonly changes: number;
  readonly unnoticed: readonly string[];
  readonly explained: number;
}

/** Changes each number and operator of some sources in turn, and runs these tests on it. */
export async function changesOf(sources: readonly string[], tests: readonly string[], mostMs: number): Promise<Report> {
  const before = fc.readConfigureGlobal();
  // A property that fails is searched for its smallest case: here it has done its work.
  fc.configureGlobal({ ...before, endOnFailure: true });
  try {
    const { files, changes } = await hold(tests, (file) => sources.includes(file));
    const survivors = await survivorsOf(files, changes, mostMs);
    const isExplained = ({ text, from, to }: (typeof changes)[number]) =>
      EXPLAINED.some((one) => one.text === text && one.change === `${from} → ${to}`);
    const open = survivors.filter((change) => !isExplained(change));
    const unnoticed = open.map(({ file, line, from, to, text }) => `${file}:${line}  ${from} → ${to}  ${text}`);
    return { changes: changes.length, unnoticed, explained: survivors.length - open.length };
  } finally {
    fc.configureGlobal(before ?? {});
  }
}
