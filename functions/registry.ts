import * as arc from './arc';
import * as blank from './blank';
import * as head from './head';
import * as machine from './machine';
import { METADATA, type Answer, type FunctionMetadata } from './metadata';
import * as stock from './stock';
import * as text from './text';

export interface WorksheetFunction {
  readonly name: string;
  readonly metadata: FunctionMetadata;
  /** Throws a worksheet error where an argument is refused. */
  readonly run: (...args: unknown[]) => Answer;
}

const RUNNERS: Readonly<Record<string, (...args: never[]) => Answer>> = {
  ...arc,
  ...head,
  ...blank,
  ...machine,
  ...stock,
  ...text,
};

/** Every worksheet function, in the order of the reference page. */
export const FUNCTIONS: readonly WorksheetFunction[] = METADATA.map((metadata) => ({
  name: metadata.name,
  metadata,
  run: RUNNERS[metadata.name] as WorksheetFunction['run'],
}));

const BY_NAME = new Map(FUNCTIONS.map((one) => [one.name, one]));

/** Finds `RADIUS` by `RADIUS`, `radius` or `ARCH.RADIUS`. */
export function findFunction(name: string): WorksheetFunction | undefined {
  return BY_NAME.get(
    name
      .trim()
      .toUpperCase()
      .replace(/^ARCH\./, ''),
  );
}
