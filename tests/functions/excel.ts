import { METADATA } from '../../functions/metadata';

/** What a cell shows for a refused argument. */
export interface CellError {
  readonly code: string;
  readonly message: string;
}

export interface ExcelRuntime {
  readonly CustomFunctions: object;
  /** Functions by the id they were associated with. */
  readonly functions: ReadonlyMap<string, (...args: unknown[]) => unknown>;
  /** Calls as Excel does: null for arguments left out, ranges as rows, the invocation last. */
  cell(name: string, args: readonly unknown[]): unknown;
}

/** As much of Excel's custom functions runtime as a function meets: `associate`, its error class, and a call. */
export function excelRuntime(): ExcelRuntime {
  const functions = new Map<string, (...args: unknown[]) => unknown>();
  class ExcelError {
    constructor(
      readonly code: string,
      readonly message?: string,
    ) {}
  }
  const CustomFunctions = {
    Error: ExcelError,
    ErrorCode: { invalidValue: '#VALUE!', notAvailable: '#N/A' },
    associate: (id: string, run: (...args: unknown[]) => unknown) => void functions.set(id, run),
  };
  return {
    CustomFunctions,
    functions,
    cell(name, args) {
      const { parameters } = METADATA.find((one) => one.name === name)!;
      const given = parameters.map((parameter, at) => {
        const arg = args[at] ?? null;
        return parameter.range && arg !== null && !Array.isArray(arg) ? [[arg]] : arg;
      });
      try {
        return functions.get(name)!(...given, { functionName: name });
      } catch (thrown) {
        if (thrown instanceof ExcelError) return { code: thrown.code, message: thrown.message };
        throw thrown;
      }
    },
  };
}
