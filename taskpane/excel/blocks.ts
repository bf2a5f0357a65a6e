import { bytesOf } from './cells';
import { codeOf } from './words';

/** Excel on the web hands over at most 5 MB at once; so much is asked for. */
const LARGEST_ANSWER = 3_000_000;
/** Bytes of a cell, until the first block has come back. */
const FIRST_GUESS = 120;
/** Rows further down may be longer than those that came. */
const SPARE = 1.3;

export type Property = 'values' | 'formulas' | 'numberFormat';

/** A rectangle of a sheet, counted from 0. */
export interface Rectangle {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** Loads a rectangle in blocks of rows, each as large as the size of those before allows. */
export async function readInBlocks<P extends Property>(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  where: Rectangle,
  properties: readonly P[],
): Promise<Record<P, unknown[][]>> {
  const read = Object.fromEntries(properties.map((property) => [property, []])) as unknown as Record<P, unknown[][]>;
  let bytesOfRow = where.columns * FIRST_GUESS * properties.length;
  let least = Infinity; // what Excel refused is not asked for again
  for (let done = 0; done < where.rows;) {
    const height = Math.max(1, Math.min(where.rows - done, least, Math.floor(LARGEST_ANSWER / bytesOfRow)));
    const range = sheet.getRangeByIndexes(where.row + done, where.column, height, where.columns);
    range.load(properties as unknown as string[]);
    try {
      await context.sync();
    } catch (thrown) {
      if (codeOf(thrown) !== 'ResponsePayloadSizeLimitExceeded' || height === 1) throw thrown;
      least = Math.ceil(height / 4);
      continue;
    }
    const came = properties.map((property) => range[property] as unknown[][]);
    for (const [at, property] of properties.entries()) read[property].push(...came[at]!);
    bytesOfRow = Math.max(1, (came.reduce((sum, rows) => sum + bytesOf(rows), 0) / height) * SPARE);
    done += height;
  }
  return read;
}
