import type { Extra } from '../extras';
import type { Ends, HeadShape } from '../head/head';
import type { Draft } from './asked';

/** What a table cell holds before anyone has made sense of it. */
export type CellValue = string | number | boolean | Date | null;

/** A table as a host or a file reader gives it. */
export interface Table {
  /** File or sheet name, for messages. */
  readonly name: string;
  /** The user's number (from 1) of the first row here. */
  readonly firstRow: number;
  readonly rows: readonly (readonly CellValue[])[];
  /** What the file reader had to say about the file: "read as UTF-16", "row 7 is hidden in the file and was read". */
  readonly remarks?: readonly string[];
  /** The same for single rows, by the user's row number. */
  readonly rowRemarks?: ReadonlyMap<number, readonly string[]>;
  /** What is in doubt about single rows, by the user's row number, a clause each: such a row is not priced until it is settled. */
  readonly doubts?: ReadonlyMap<number, readonly string[]>;
  /** What the file's reader asks about single rows, by the user's row number. */
  readonly asks?: ReadonlyMap<number, readonly Draft[]>;
  /** Merged cells, in the user's row numbers and columns from 0; only the first cell holds the value. */
  readonly merges?: readonly Merge[];
  /** Columns (from 0) of cells that are struck through, by the user's row number. */
  readonly struck?: ReadonlyMap<number, readonly number[]>;
  /** What of the file or sheet is not in this table, and why. */
  readonly unread?: readonly Unread[];
  /** From a delimited text file, where an unquoted comma moves the cells behind it. */
  readonly delimited?: boolean;
  /** Its figures are written with decimal commas. */
  readonly decimalCommas?: boolean;
  /** A sheet that is hidden in its file. */
  readonly hidden?: boolean;
}

/** A sheet, a column or a block of cells that nothing is read from. */
export interface Unread {
  readonly what: string;
  readonly why: string;
}

/** Both ends included. */
export interface Merge {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
}

/** The fields of an opening that a schedule can give, each a takeoff input. Lengths are in the workbook's unit. */
export interface OpeningInputs {
  mark: string;
  quantity: number | null;
  head: HeadShape | null;
  span: number | null;
  /** Rise of the opening's own curve; null for heads that have none (round, quarter round, straight). */
  rise: number | null;
  /** Null: the shop's standard. The same for every field below. */
  reveal: number | null;
  face: number | null;
  thickness: number | null;
  species: string | null;
  ends: Ends | null;
  /** Length of each straight leg up to the spring line; null or 0: no legs are taken off. */
  leg: number | null;
  profile: string | null;
  /** Room or wall where the opening stands. */
  place: string | null;
  /** What the list says of it in words. */
  remarks: string | null;
  /** How many sides of the wall are cased, 1 or 2; null: not given, one. */
  sides: number | null;
  /** How many tangent arcs stand for a curve that is no circle; null: the shop's way. */
  arcs: number | null;
  /** Second length of a head that has one: haunch radius, or length of a clipped corner along the span. */
  haunch: number | null;
  /** Segments asked for in the ring; null: as few as fit the boards. */
  segmentsWanted: number | null;
  /** The other leg, where the two differ. */
  otherLeg: number | null;
  /** Price agreed for one, in place of the one worked out. */
  priceAgreed: number | null;
}
export type OpeningField = keyof OpeningInputs;

/** One opening of the schedule. An input that is missing or in doubt is null and has a problem that says why. */
export interface Opening extends OpeningInputs {
  /** Its permanent number in the workbook it was filled into; left out: it has none yet. */
  readonly no?: number;
  /** Source row as the user counts it, from 1. */
  readonly row: number;
  /** By which answers name it, where its row holds several: the row and a letter, `12b`, or what stands behind the opening, `12.2`. */
  readonly at?: string;
  /** By which its quantity is answered, where that is not the row's: heads side by side are more than the units of the row, `12.1`. */
  readonly countedAt?: string;
  /** The source row's cells as they were, as text, in the columns of `Schedule.headings`. */
  readonly source: readonly string[];
  /** How figures that were not simply copied came about: "rough opening 38 less 2", "rise from radius 30". */
  readonly notes: readonly string[];
  readonly problems: readonly Problem[];
  /** What goes with each opening and is sold by the piece; left out: nothing. */
  readonly extras?: readonly Extra[];
  /** Rough-opening figures behind the span or the rise: each is its figure less the shop's allowance. */
  readonly rough?: RoughFigures;
  /** What the list gave, as the cells of its row, where some of this opening's inputs were changed by hand in the workbook. */
  readonly listed?: Readonly<Record<OpeningField, string | number | null>>;
}

/** What few lists give. */
const NOT_GIVEN = {
  place: null,
  remarks: null,
  sides: null,
  arcs: null,
  haunch: null,
  segmentsWanted: null,
  otherLeg: null,
  priceAgreed: null,
} as const;

/** An opening of which nothing is known but its row; one is wanted. */
export function blankOpening(row: number): Opening {
  return {
    row,
    source: [],
    notes: [],
    problems: [],
    mark: '',
    quantity: 1,
    head: null,
    span: null,
    rise: null,
    reveal: null,
    face: null,
    thickness: null,
    species: null,
    ends: null,
    leg: null,
    profile: null,
    ...NOT_GIVEN,
  };
}

export interface RoughFigures {
  /** Width of the rough opening. */
  readonly span?: number;
  /** Height of the rough opening less the spring height. */
  readonly rise?: number;
}

/** Why an input is missing or can't be used. An opening with a problem stays, and is not priced. */
export interface Problem {
  readonly row: number;
  readonly field: OpeningField;
  /** One sentence that names the thing, what it was and what is accepted. */
  readonly message: string;
  /** The question that settles it, where that is not one for the field's value; `face@12` is one of another opening of the row. */
  readonly question?: string;
  /** The place that was answered, where that is not the opening's: `12.1`, the number of heads side by side. */
  readonly at?: string;
  /** What the list itself offers for an answer. */
  readonly choices?: readonly string[];
  /** How the figure in question is written, where others of the list may be written alike. */
  readonly writing?: Writing;
}

/** A manner of writing figures that leaves a question, and a figure in it as it stands. */
export interface Writing {
  readonly manner: string;
  readonly written: string;
}

/** What only the user can say about a list. A row that one of these asks about is not priced until it is answered. */
export interface Question {
  /** By which it is answered. */
  readonly id: string;
  /** Source rows, as the user counts them. */
  readonly rows: readonly number[];
  /** Units, heads, a column, remarks, or the field of an opening. */
  readonly about: string;
  /** The field of single rows that is asked for; left out: the question is one of the list. */
  readonly field?: OpeningField;
  readonly text: string;
  /** What it can be answered by, the proposed answer first; none: by a value. */
  readonly choices: readonly string[];
  /** The text without examples, where each of the choices has its own in `examples`. */
  readonly lead?: string;
  readonly examples?: readonly string[];
}

/** Question → answer. `field@row` answers for the field of one row (`rise@12`, `rise@12-14`), `remarks` for all remarks. */
export type Answers = Readonly<Record<string, string>>;

/** A list as read, and what has to be asked about it. */
export interface Reading extends Schedule {
  readonly questions: readonly Question[];
  /** Sheets, columns and blocks that nothing was read from. */
  readonly unread: readonly Unread[];
  /** What the rows themselves remark, word for word. */
  readonly rowRemarks: readonly { readonly row: number; readonly text: string }[];
}

/** A schedule as read. */
export interface Schedule {
  readonly name: string;
  /** The headings found, one for each source column; what each was understood as is in `meaning`. */
  readonly headings: readonly string[];
  readonly meaning: readonly (string | null)[];
  /** Source row of the headings; null where there were none. */
  readonly headingRow: number | null;
  /** What is worth knowing about the file as a whole: the table's remarks, the unit taken from a note. */
  readonly remarks: readonly string[];
  readonly openings: readonly Opening[];
  /** Rows that are not openings and why each was passed over: title, units, blank, repeated headings, total, note. */
  readonly passedOver: readonly { readonly row: number; readonly why: string; readonly text: string }[];
}

/** An opening in a sentence: its mark, or where it stands. */
export function markOrRow({ mark, row }: Pick<Opening, 'mark' | 'row'>): string {
  return mark === '' ? `row ${row}` : mark;
}
