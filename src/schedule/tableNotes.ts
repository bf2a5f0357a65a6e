import type { Unit } from '../unit';
import { cellText, isEmpty } from './cell';
import { readUnit, UNIT_NAMES, type ColumnUnit } from './columnUnit';
import { listed, quote } from './figure';
import { OTHER_PART } from './headingRows';
import type { CellValue } from './opening';

type Row = readonly CellValue[];

/** What notes and titles say of all figures of a table. */
export interface TableNotes {
  /** The unit of figures in columns without one. */
  readonly unit: ColumnUnit | null;
  /** Plain widths and heights are those of the rough openings. */
  readonly rough: boolean;
  /** A sentence for each note that changes how figures are read. */
  readonly remarks: readonly string[];
}

/** Words before "dimensions in mm" that leave the note one about the whole table; "Glass dimensions in mm" is none. */
const OF_ALL =
  /^(?:(?:\d+[.)]|\*|-|\(|general|notes?|all|the|these|linear|opening|window|door|schedule|given|listed|shown|unless [a-z ]+?(?= all\b|,))[\s:.,]*)*$/i;
const UNIT_NOTE =
  /^(.*?)\b(?:dimensions?|dims\.?|sizes|measurements?|units?)(?!\w)(?: are)?(?: given)?(?::| in| are in)?\s+(?:in )?([a-z&/ -]+?)(?: only)?(?:,? (?:unless|u\.?n\.?o\b).*)?[.)]*$/i;

const ROUGH = String.raw`(?:rough openings?|r\.? ?o\.?(?:'?s)?)`;
/** "All sizes are rough openings", "Dimensions shown are R.O." */
const ROUGH_NOTE = new RegExp(
  String.raw`\b(?:dimensions?|dims|sizes?|widths|openings?)\b[a-z ]{0,20}(?:\b(?:are|is)\b|[:=])(?: (?:all|the|to|for|given as))* ${ROUGH}(?: (?:dimensions?|sizes?))?(?: only)?\.?$`,
  'i',
);
/** "Window rough opening schedule", "Rough opening sizes", "Window schedule - rough openings". */
const ROUGH_TITLE = new RegExp(
  String.raw`^(?:[a-z0-9]+ ){0,4}${ROUGH} (?:schedule|sizes|dimensions|list)$|^(?:[a-z0-9]+ ){1,4}[-–—:(,] ?${ROUGH}\)?$`,
  'i',
);

/** "Attic (dimensions in mm)", "Windows (mm)": the unit of the table below it, unless it speaks of another part than the opening. */
export function unitOfTitle(title: string): ColumnUnit | null {
  if (title.length > 200) return null;
  const parts = /^([^()[\]]*)[([]([^()[\]]*)[)\]]$/.exec(title);
  if (parts === null || OTHER_PART.test(parts[1] ?? '')) return null;
  const inside = (parts[2] ?? '').trim();
  const said = UNIT_NOTE.exec(inside);
  return readUnit(said !== null && OF_ALL.test(said[1] ?? '') ? (said[2] ?? '') : inside);
}

/** The notes of a table: rows of one filled cell, or two as in "Units:", "mm". Titles count above the headings only. */
export function readTableNotes(rows: readonly Row[], headings: number, workbook: Unit): TableNotes {
  const units = new Map<ColumnUnit, string>();
  let rough: string | null = null;
  for (const [index, row] of rows.entries()) {
    const filled = row.filter((cell) => !isEmpty(cell));
    const text = filled.length <= 2 ? filled.map(cellText).join(' ') : '';
    if (text.length < 8 || text.length > 200) continue;
    const said = UNIT_NOTE.exec(text);
    const ofAll = said && OF_ALL.test(said[1] ?? '') ? readUnit(said[2] ?? '') : null;
    // Such a title further down is one of the table that follows it.
    const unit = ofAll ?? (index < headings && filled.length === 1 ? unitOfTitle(text) : null);
    if (unit !== null && !units.has(unit)) units.set(unit, text);
    if (filled.length === 1 && (ROUGH_NOTE.test(text) || (index < headings && ROUGH_TITLE.test(text)))) rough ??= text;
  }
  const remarks: string[] = [];
  const [[unit = null, text = ''] = []] = units;
  if (units.size > 1)
    remarks.push(`Notes give different units, ${listed([...units.values()].map(quote))}; none of them was followed.`);
  else if (unit !== null && unit !== workbook)
    remarks.push(`Figures without a unit were read as ${UNIT_NAMES[unit]}, because of the note ${quote(text)}.`);
  if (rough !== null)
    remarks.push(`Plain widths and heights were read as rough openings, because of the note ${quote(rough)}.`);
  return { unit: units.size === 1 ? unit : null, rough: rough !== null, remarks };
}
