import { METADATA, type Answer, type FunctionMetadata } from './metadata';
import { RUNNERS } from './runners';

export interface WorksheetFunction {
  readonly name: string;
  readonly metadata: FunctionMetadata;
  /** Throws a worksheet error where an argument is refused. */
  readonly run: (...args: unknown[]) => Answer;
}

/** Every worksheet function, in the order of the reference page. */
export const FUNCTIONS: readonly WorksheetFunction[] = METADATA.map((metadata) => ({
  name: metadata.name,
  metadata,
  run: RUNNERS[metadata.name]!,
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
