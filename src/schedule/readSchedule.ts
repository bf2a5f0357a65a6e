import { ok, refuse, type Result } from '../result';
import type { Standards } from '../standards';
import { Asked, idOf, type Draft } from './asked';
import { BodyReader } from './body';
import { RowChanges, type Read } from './changes';
import { atItsPlace } from './companions';
import { isRowEmpty, rowText } from './cell';
import type { ColumnUnit } from './columnUnit';
import { figure, listed, quote, rowRanges } from './figure';
import { askList, type ListAnswers } from './listQuestions';
import { takeNamedHand } from './hand';
import { findLayout, layoutFromChoices, type Choices, type Layout } from './layout';
import type { Answers, Opening, Reading, Table } from './opening';
import { askManners } from './manners';
import { askDoubts } from './pageDoubts';
import { readRow, type ListReading } from './readRow';
import { readRemarks } from './remarks';
import { NO_HEAD } from './resolve';
import { cellsOf, remarksOf } from './rowCells';
import { settle } from './settle';
import { asFootage, withStraightStock } from './straightStock';
import { asTogether } from './together';
import { readTableNotes, unitOfTitle } from './tableNotes';
import { transposedHeadings } from './transposed';
import { askColumns } from './unusedColumns';
import { pushTo } from '../pushTo';

/** What is known of a list beside the list itself. */
export interface HowToRead {
  /** The unit of figures that have none. */
  readonly unit?: ColumnUnit;
  /** What becomes of rows that name no head and give nothing to tell it by; asked about unless said. */
  readonly unnamed?: 'ask' | 'leave' | 'straight';
  readonly answers?: Answers;
}

/**
 * A builder's schedule from a table: finds the headings, sorts the rows, reads every opening. Each row of the table is
 * either an opening or in `passedOver` with the reason; `choices` says what a column (from 0) means where the heading
 * does not. What only the user can say is in `questions`; a row that one asks about stays without the figure in question.
 * Refused only where no headings can be found and no choices are given. Lengths come out in `standards.unit`.
 */
export function readSchedule(
  table: Table,
  standards: Standards,
  choices: Choices = {},
  how: HowToRead = {},
): Result<Reading> {
  const found = findLayout(table.rows, 0, choices);
  if (found === null && Object.keys(choices).length === 0) return refuse(noHeadings(table));
  const layout = found ?? layoutFromChoices(table.rows, choices);
  const asked = new Asked(answersOf(how));
  const first = sort(table, standards, layout, choices);
  const firstRows = first.reader.raw.map((raw) => new RowChanges(raw, asked));
  const columns = askColumns(firstRows);
  // A column whose meaning was answered is read by it.
  const isChosen = Object.keys(columns.choices).length > 0;
  const all = isChosen ? { ...columns.choices, ...choices } : choices;
  const again = isChosen ? (findLayout(table.rows, 0, all) ?? layoutFromChoices(table.rows, all)) : layout;
  const { reader, columns: read, notes } = isChosen ? sort(table, standards, again, all) : first;
  const rows = isChosen ? reader.raw.map((raw) => new RowChanges(raw, asked)) : firstRows;
  if (isChosen) askColumns(rows);
  askDoubts(rows, table);
  rows.forEach(takeNamedHand);
  const list = askList(rows, { table, standards, asked });
  const { openings, leftOut } = readRows(rows, list, standards);
  const questions = asked.questions(
    openings.map(({ opening: { at, row, problems } }) => ({ at: at ?? String(row), problems })),
  );
  const byRow = (one: { row: number }, other: { row: number }) => one.row - other.row;
  return ok({
    name: table.name,
    headings: read.map(({ heading }) => heading),
    meaning: read.map(({ key }) => key),
    headingRow: layout.headingRows.length === 0 ? null : table.firstRow + (layout.headingRows.at(-1) ?? 0),
    remarks: [
      ...(table.remarks ?? []),
      ...notes.remarks,
      ...list.remarks,
      ...lessened(
        openings.map(({ opening }) => opening),
        standards,
      ),
      ...totalsThatDisagree(reader.passedOver),
      ...asked.refused,
      ...asked.unused().map((key) => `The answer to ${quote(key)} was not used: there is no such question.`),
    ],
    openings: openings.map(({ opening }) => opening),
    passedOver: leftOut.length === 0 ? reader.passedOver : [...reader.passedOver, ...leftOut].sort(byRow),
    questions,
    unread: [...(table.unread ?? []), ...columns.unread],
    rowRemarks: rows.flatMap(({ raw }) => {
      const text = remarksOf(raw);
      return text === '' ? [] : [{ row: raw.row, text }];
    }),
  });
}

const UNNAMED = { leave: 'leave them out', straight: 'straight heads' } as const;

/** Options of the command line answer the same questions. */
export function answersOf({ unit, unnamed = 'ask', answers = {} }: HowToRead): Answers {
  return {
    ...(unnamed === 'ask' ? {} : { heads: UNNAMED[unnamed] }),
    ...answers,
    ...(unit === undefined ? {} : { unit }),
  };
}

function sort(table: Table, standards: Standards, layout: Layout, choices: Choices) {
  const { rows, name } = table;
  const top = layout.headingRows[0] ?? 0;
  const notes = readTableNotes(rows, top, standards.unit);
  const title = rows.slice(0, top).map(rowText).join(' ');
  const settledBy = (one: Layout, above: readonly string[] = []) => {
    const unit = above.map(unitOfTitle).find((own) => own !== null) ?? notes.unit;
    return settle(one, rows, { unit, rough: notes.rough, choices, titles: [above.join(' '), title, name] });
  };
  const reader = new BodyReader(table, choices, layout, settledBy);
  const { columns } = reader;
  reader.readAll(layout.headingRows.length > 0);
  return { reader, columns, notes };
}

/** Every row read; rows without any head are asked about as one, and so are marks that stand twice. */
function readRows(rows: readonly RowChanges[], list: ListAnswers, standards: Standards) {
  const how = { unit: list.unit, standards };
  const leftOut: { row: number; why: string; text: string }[] = [];
  const leave = ({ raw }: RowChanges, why: string) =>
    void leftOut.push({
      row: raw.row,
      why: `left out, as answered: ${why}`,
      text: raw.source.filter(Boolean).join(' | '),
    });
  const read = rows.flatMap((changes): Read[] => {
    if (changes.leftOut === null) {
      const opening = asFootage(changes, list.after(changes, readRow(changes, how)), standards);
      return [{ changes, opening }];
    }
    leave(changes, changes.leftOut);
    return [];
  });
  const settled = askManners(read, ({ changes }) => list.after(changes, readRow(changes, how)));
  const isUnnamed = ({ opening }: Read) => opening.problems.some(({ message }) => message === NO_HEAD);
  const draft = headsDraft(settled.filter(isUnnamed).length);
  const named = settled.flatMap((one): Read[] => {
    if (!isUnnamed(one)) return [one];
    const { changes } = one;
    const chosen = changes.ask(draft);
    if (changes.leftOut !== null) {
      leave(changes, changes.leftOut);
      return [];
    }
    const opening = list.after(changes, readRow(changes, how));
    if (chosen !== null) return [{ changes, opening }];
    return [
      { changes, opening: { ...opening, problems: opening.problems.filter(({ message }) => message !== NO_HEAD) } },
    ];
  });
  const openings = withRepeatedMarks(askCurves(named, list, how), leave);
  return { openings: openings.flatMap((one) => rowsOf(one, standards)), leftOut };
}

/** The rows that a source row comes to: heads side by side with what stands between them, and straight molding of the same casing. */
function rowsOf({ changes, opening }: Read, standards: Standards): readonly Read[] {
  const stood = asTogether(changes, opening, standards);
  const [first, ...more] = stood;
  if (first === undefined) return [];
  const all = [...withStraightStock(changes, first, standards), ...more];
  return all.map((each, index) => ({
    changes,
    opening: index === 0 ? each : atItsPlace(each, index + 1, changes, standards),
  }));
}

function headsDraft(count: number): Draft {
  const rows = count === 1 ? '1 row names no head and gives no rise' : `${count} rows name no head and give no rise`;
  return {
    id: 'heads',
    about: 'heads',
    text: `${rows}: are they left out, straight heads, or asked about one by one?`,
    choices: [
      { label: 'leave them out', leaveOut: true },
      { label: 'straight heads', set: { head: 'straight' } },
      { label: EACH },
    ],
    field: 'head',
  };
}

/** Rows that name no head where others do, yet give a rise: by itself it would fit several shapes. */
function askCurves(read: readonly Read[], list: ListAnswers, how: ListReading): readonly Read[] {
  const namesHead = ({ changes: { raw, fields } }: Read) =>
    fields.head !== undefined || cellsOf(raw, 'head').length > 0;
  if (!read.some(namesHead)) return read;
  const isInferred = (one: Read) => {
    const { changes, opening } = one;
    const { head, rise } = opening;
    return head !== null && rise !== null && !namesHead(one) && readRemarks(remarksOf(changes.raw)).head === null;
  };
  const draft = curvesDraft(read.filter(isInferred).length);
  return read.map((one) => {
    if (!isInferred(one)) return one;
    const { changes } = one;
    const chosen = changes.ask(draft);
    const opening = list.after(changes, readRow(changes, how));
    if (chosen?.label !== EACH) return { changes, opening };
    const problem = {
      row: opening.row,
      field: 'head',
      message: 'The head is not named; please give its shape.',
      choices: ['segmental', 'elliptical', 'three-centered'],
    } as const;
    return { changes, opening: { ...opening, head: null, problems: [...opening.problems, problem] } };
  });
}

const EACH = 'ask each';

function curvesDraft(count: number): Draft {
  return {
    id: 'curves',
    about: 'heads',
    text: `${count === 1 ? '1 row names no head and gives' : `${count} rows name no head and give`} a rise, which fits more than one shape; what are they?`,
    choices: [{ label: 'segmental, half round where the rise is half the width' }, { label: EACH }],
    field: 'head',
  };
}

/** Marks name openings: rows with the same mark are asked about together. */
function withRepeatedMarks(read: readonly Read[], leave: (changes: RowChanges, why: string) => void): readonly Read[] {
  const keyOf = ({ opening }: Read) => opening.mark.toLowerCase().replace(/\s+/g, ' ');
  const alike = new Map<string, Read[]>();
  for (const one of read) {
    pushTo(alike, keyOf(one), one);
  }
  return read.flatMap((one): Read[] => {
    const { changes, opening } = one;
    const mark = keyOf(one);
    const there = alike.get(mark) ?? [];
    if (mark === '' || there.length < 2) return [one];
    const rows = there.slice(0, 6).map(({ opening: { row } }) => String(row));
    const asked = changes.open.length;
    const id = idOf('mark', mark.slice(0, 60));
    // An answer for all of them is one of the others: the first stays, unless it is the one that is answered for.
    const first = there[0] === one && !changes.isOwn(id);
    changes.ask({
      id,
      about: 'marks',
      text: `The mark ${quote(opening.mark)} stands in rows ${listed(there.length > 6 ? [...rows, 'more'] : rows)}; please say whether all are wanted.`,
      choices: ['keep both', 'leave out', 'same opening', 'only the last'].map((label, at) => ({
        label,
        leaveOut: at === 3 ? there.at(-1) !== one : at > 0 && !first,
      })),
      field: 'mark',
    });
    if (changes.leftOut !== null) {
      leave(changes, changes.leftOut);
      return [];
    }
    return [{ changes, opening: { ...opening, problems: [...opening.problems, ...changes.open.slice(asked)] } }];
  });
}

/** A total of the list's own that is not what its rows come to. */
/** That figures were taken off rough openings, how much, and where it is set. */
function lessened(openings: readonly Opening[], { roughWidth, roughHeight }: Standards): readonly string[] {
  const said = (field: 'span' | 'rise', what: string, setting: string, allowance: number) => {
    const rows = openings.filter(({ rough }) => rough?.[field] !== undefined).map(({ row }) => row);
    if (rows.length === 0) return [];
    const who = rows.length === 1 ? 'Row' : 'Rows';
    const give = rows.length === 1 ? 'gives' : 'give';
    return [
      `${who} ${rowRanges(rows)} ${give} a rough ${what}: ${figure(allowance)} is taken off (Standards, ${setting}).`,
    ];
  };
  return [
    ...said('span', 'width', 'Rough opening, width', roughWidth),
    ...said('rise', 'height', 'Rough opening, height', roughHeight),
  ];
}

function totalsThatDisagree(passedOver: Reading['passedOver']): readonly string[] {
  return passedOver.flatMap(({ row, why }) => {
    const said = /^total: (says .+)$/.exec(why)?.[1];
    return said === undefined ? [] : [`The total in row ${row} ${said}.`];
  });
}

function noHeadings(table: Table): string {
  if (table.rows.every(isRowEmpty)) return `${quote(table.name)} is empty.`;
  const across = transposedHeadings(table.rows);
  if (across !== null)
    return `${quote(table.name)} has its openings in columns and its headings (${across.map(quote).join(', ')}) one below another; please turn it round, so that each row is an opening.`;
  return (
    `No headings were found in ${quote(table.name)}: a schedule needs one row that names its columns, ` +
    'among them the width, the size or the radius of the openings.'
  );
}
