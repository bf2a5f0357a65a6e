import { ok, refuse, type Result } from '../../src/result';
import { sentenceFor } from './words';

/** Thrown inside a session to leave it with a sentence of our own. */
export class Refused extends Error {}

/** Does this Excel know the API set, such as '1.20'? */
function excelKnows(version: string): boolean {
  return Office.context.requirements.isSetSupported('ExcelApi', version);
}

/**
 * One visit to the workbook. Whatever fails in it comes back as a sentence; where Excel can, all its changes are one step
 * of undo.
 */
export async function inExcel<T>(
  doing: string,
  visit: (context: Excel.RequestContext) => Promise<T>,
): Promise<Result<T>> {
  try {
    const value = excelKnows('1.20') ? await Excel.run({ mergeUndoGroup: true }, visit) : await Excel.run(visit);
    return ok(value);
  } catch (thrown) {
    return refuse(thrown instanceof Refused ? thrown.message : sentenceFor(doing, thrown));
  }
}
