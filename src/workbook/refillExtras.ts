import { countOf, type Extra, type ExtraKind } from '../extras';
import type { Opening } from '../schedule/opening';
import type { ListedRow } from './scheduleSheet';
import type { ExtraRow } from './takeoff/extras';
import type { TakeoffRow } from './takeoff/read';

/** How many extras of a kind go with an opening, changed by hand below the Takeoff's total. */
export interface ExtraEdit {
  readonly no: number;
  readonly mark: string;
  readonly kind: ExtraKind;
  readonly each: number;
  readonly was: number;
}

/** Counts typed over, and extras whose row was deleted while their opening stayed: of these there are none now. */
export function extraEdits(
  standing: readonly ExtraRow[],
  rows: readonly Pick<TakeoffRow, 'no' | 'inputs'>[],
  listed: ReadonlyMap<number, ListedRow>,
): ExtraEdit[] {
  const deleted = rows.flatMap(({ no, inputs }) =>
    (listed.get(no)?.extras ?? []).flatMap(({ kind, each: was }): ExtraEdit[] =>
      standing.some((row) => row.no === no && row.kind === kind)
        ? []
        : [{ no, mark: String(inputs.mark ?? ''), kind, each: 0, was }],
    ),
  );
  const typed = standing.flatMap(({ no, mark, kind, each, listed: was }) =>
    each === was ? [] : [{ no, mark, kind, each, was }],
  );
  return [...typed, ...deleted];
}

/** An opening with its extras as they were changed by hand; each change that is used is taken out of `edits`. */
export function withExtras(opening: Opening, no: number, edits: Map<string, ExtraEdit>, said: string[]): Opening {
  if (opening.extras === undefined) return opening;
  const extras = opening.extras.map((extra): Extra => {
    const key = `${no} ${extra.kind}`;
    const edit = edits.get(key);
    if (edit === undefined || edit.each === extra.each) return extra;
    edits.delete(key);
    const { kind, each, was } = edit;
    const listed = `the list says ${countOf(kind, extra.each)} for each`;
    if (!Number.isInteger(each) || each < 0) {
      said.push(`${nameOf(opening)}: ${each} for each ${kind} can't be used; ${listed}.`);
      return extra;
    }
    // A revised list that says something else now has the last word.
    if (opening.no !== undefined && extra.each !== was) {
      said.push(`${nameOf(opening)}: ${countOf(kind, each)} from the workbook is not kept: ${listed} now.`);
      return extra;
    }
    const kept = each === 0 ? `left without ${kind}, as it is in` : `kept ${countOf(kind, each)} for each from`;
    said.push(`${nameOf(opening)}: ${kept} the workbook; ${listed}.`);
    return { kind, each, listed: extra.each };
  });
  return { ...opening, extras };
}

/** An opening at the beginning of a sentence. */
export function nameOf(opening: Opening): string {
  return opening.mark === '' ? `Row ${opening.row}` : opening.mark;
}
