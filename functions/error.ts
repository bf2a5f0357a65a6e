import type { Result } from '../src/result';

/** A refused argument where Excel's own error class is not at hand: in Node and in the workbench. */
export class WorksheetError extends Error {
  readonly code = '#VALUE!';
}

/** The error a cell shows: only Excel's own class carries a sentence into a cell, and only with #VALUE! and #N/A. */
export function worksheetError(message: string): Error {
  if (typeof CustomFunctions !== 'undefined' && typeof CustomFunctions.Error === 'function') {
    return new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidValue, message) as unknown as Error;
  }
  return new WorksheetError(message);
}

/** The sentence of a refusal that `worksheetError` made; null for any other thrown thing, which is a fault of ours. */
export function refusalMessage(thrown: unknown): string | null {
  if (thrown instanceof WorksheetError) return thrown.message;
  if (typeof CustomFunctions !== 'undefined' && typeof CustomFunctions.Error === 'function') {
    if (thrown instanceof CustomFunctions.Error) return thrown.message ?? '';
  }
  return null;
}

/** The value of a core result, or its refusal as a worksheet error. A cell never shows NaN or an infinity. */
export function give<T>(result: Result<T>): T {
  if (!result.ok) throw worksheetError(withBlankHint(result.message));
  if (!fitsACell(result.value)) {
    throw worksheetError('the arguments are too far apart in size: the answer is too large for a number');
  }
  return result.value;
}

function fitsACell(value: unknown): boolean {
  if (Array.isArray(value)) return value.every(fitsACell);
  return typeof value !== 'number' || Number.isFinite(value);
}

/** Excel on the desktop hands a blank cell over as 0, which must not puzzle the reader. */
function withBlankHint(message: string): string {
  return message.endsWith('; got 0') ? `${message} (a blank cell counts as 0)` : message;
}
