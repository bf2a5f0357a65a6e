import type { Standards } from '../standards';
import { AS_LISTED, LEAVE_OUT, idOf, type Asked, type Draft } from './asked';
import type { RowChanges } from './changes';
import { cellText } from './cell';
import { UNIT_NAMES, type ColumnUnit } from './columnUnit';
import { quote } from './figure';
import { bareFigures, judgeUnit, unitNamed } from './listUnit';
import { isHyphenScheme, readMark } from './marks';
import type { Opening, Table } from './opening';
import { inOtherSystem } from './otherSystem';
import { widthAndWords } from './plainFigure';
import { withdrawnBy, withdrawnMark } from './remarks';
import { isBare } from './readLength';
import { readQuantity } from './readQuantity';
import { cellsOf, remarksOf } from './rowCells';
import { askRemarks } from './rowRemarks';
import { isStatusHeading } from './unusedColumns';

/** What is known of a list once everything that concerns more than one row was asked. */
export interface ListAnswers {
  /** The unit of figures that have none. */
  readonly unit: ColumnUnit;
  readonly remarks: readonly string[];
  /** Lengths whose unit is still asked are none. */
  after(changes: RowChanges, opening: Opening): Opening;
}

interface List {
  readonly table: Table;
  readonly standards: Standards;
  readonly asked: Asked;
}

export function askList(rows: readonly RowChanges[], list: List): ListAnswers {
  const { table } = list;
  askMarks(rows, table);
  for (const changes of rows) {
    askDoubt(changes, table);
    askStruck(changes, table);
    askWithdrawn(changes);
    askRemarks(changes, remarksOf(changes.raw), null);
    for (const { column, cell } of cellsOf(changes.raw, 'face')) {
      const more = widthAndWords(cellText(cell));
      if (more !== null) askRemarks(changes, more.words, column.heading);
    }
  }
  const { unit, remarks } = listUnit(rows, list);
  const unitOpen = (changes: RowChanges) => changes.open.some(({ question }) => OF_UNITS.has(question ?? ''));
  return {
    unit,
    remarks,
    after: (changes, opening) =>
      unitOpen(changes)
        ? {
            ...opening,
            span: null,
            rise: hasItsUnit(changes, 'rise') ? opening.rise : null,
            leg: hasItsUnit(changes, 'leg') ? opening.leg : null,
            problems: opening.problems.filter(
              ({ field, question }) =>
                question !== undefined || !['span', 'rise', 'leg', 'face', 'thickness', 'reveal'].includes(field),
            ),
          }
        : opening,
  };
}

/** What somebody gave for this row has its unit, and so does what was chosen in words of the list that name one. */
function hasItsUnit(changes: RowChanges, field: 'rise' | 'leg'): boolean {
  const text = changes.fields[field];
  return text !== undefined && !(changes.isChosen(field) && isBare(text) && text !== '0');
}

/** The unit of figures without one: given, answered, or plain from all of them together; else it is asked. */
function listUnit(rows: readonly RowChanges[], { standards, asked }: List): Pick<ListAnswers, 'unit' | 'remarks'> {
  const named = asked.answer('unit');
  const unit = named === null ? null : unitNamed(named);
  if (named !== null && unitNamed(named) === null)
    asked.refuse(`The answer ${quote(named)} to "unit" is not one of in, ft, mm or cm.`);
  const hasUnits = rows.some(({ raw }) => cellsOf(raw, 'unit').length > 0);
  const bare = rows.filter(({ raw }) => cellsOf(raw, 'unit').length === 0);
  if (hasUnits) {
    for (const changes of bare)
      if (bareFigures(changes.raw).length > 0) changes.unit = unit ?? askRowUnit(changes, WITHOUT_UNIT);
    return { unit: standards.unit, remarks: [] };
  }
  if (unit !== null) {
    const said =
      unit === standards.unit ? [] : [`Figures without a unit were read as ${UNIT_NAMES[unit]}, as answered.`];
    return { unit, remarks: said };
  }
  const stated = rows[0]?.raw.block.find(({ key, unit: own }) => own !== null && SHAPE.has(key ?? ''))?.unit ?? null;
  const judged = judgeUnit(
    bare.map(({ raw }) => raw),
    standards.unit,
    stated,
  );
  for (const changes of bare) {
    // 914 mm wide with a rise of 6: the list is in inches, and this row may not be.
    const isDoubtful = judged.draft !== null || inOtherSystem(changes.raw, judged.unit ?? standards.unit) !== null;
    if (!isDoubtful || bareFigures(changes.raw).length === 0) continue;
    if (judged.draft !== null) changes.ask(judged.draft);
    else changes.unit = askRowUnit(changes, BESIDE_ANOTHER);
  }
  return { unit: judged.unit ?? standards.unit, remarks: [] };
}

const WITHOUT_UNIT = {
  id: 'row without unit',
  text: 'Rows have no unit in a list that gives one for each row; what are their figures in?',
};
const BESIDE_ANOTHER = {
  id: 'unit beside another',
  text: 'Figures without a unit stand beside some that are written in another one; what are they in?',
};

const OF_UNITS: ReadonlySet<string> = new Set(['unit', WITHOUT_UNIT.id, BESIDE_ANOTHER.id]);

/** The unit of a row's figures without one, where the list doesn't tell. */
function askRowUnit(changes: RowChanges, asked: Pick<Draft, 'id' | 'text'>): ColumnUnit | null {
  const units = ['in', 'ft', 'mm', 'cm'] as const;
  const choices = units.map((unit) => ({ label: UNIT_NAMES[unit] }));
  const chosen = changes.ask({ ...asked, about: 'units', choices, field: 'span' });
  return units.find((unit) => UNIT_NAMES[unit] === chosen?.label) ?? null;
}

const SHAPE: ReadonlySet<string> = new Set([
  'width',
  'height',
  'rise',
  'radius',
  'size',
  'roughWidth',
  'roughHeight',
  'springHeight',
]);

/** Marks that stand for several openings, and those with a footnote. */
function askMarks(rows: readonly RowChanges[], table: Table): void {
  const markOf = ({ raw }: RowChanges) => {
    const [first] = cellsOf(raw, 'mark');
    return first === undefined || first.cell instanceof Date ? '' : cellText(first.cell);
  };
  const marks = rows.map(markOf);
  const scheme = isHyphenScheme(marks);
  const footnotes = footnotesOf(table);
  const areMarked = marks.some((mark) => mark !== '');
  rows.forEach((changes, index) => {
    const said = marks[index] ?? '';
    const { mark, several, footnote } = readMark(said, scheme);
    if (mark !== said && mark !== '') {
      changes.fields.mark ??= mark;
      changes.notes.push(`The mark is written ${quote(said)}.`);
    }
    if (footnote !== null) {
      const text = footnotes.get(footnote);
      if (text !== undefined) askRemarks(changes, text, null);
    }
    if (said === '' && areMarked) askUnmarked(changes);
    if (several !== null && quantityOf(changes) !== several.count) changes.ask(severalDraft(several));
  });
}

/** A row without a mark among rows that have one may go on with the one above. */
function askUnmarked(changes: RowChanges): void {
  changes.ask({
    id: 'unmarked',
    about: 'marks',
    text: 'Rows have no mark where others have one; are they openings of their own?',
    choices: [{ label: 'openings of their own' }, LEAVE_OUT],
    field: 'quantity',
  });
}

function severalDraft({ count, said }: { readonly count: number; readonly said: string }): Draft {
  return {
    id: idOf('several', said.toLowerCase()),
    about: 'marks',
    text: `The mark ${quote(said)} may stand for ${count} openings; how many are to be made?`,
    choices: [{ label: String(count), set: { quantity: String(count) } }, { label: 'the quantity as listed' }],
    field: 'quantity',
  };
}

function quantityOf({ raw, fields }: RowChanges): number | null {
  const [first] = cellsOf(raw, 'quantity');
  const count =
    fields.quantity !== undefined
      ? readQuantity(fields.quantity)
      : first === undefined
        ? null
        : readQuantity(first.cell);
  return count?.ok ? count.value : null;
}

/** The sentences that footnote signs stand for, from rows of one cell. */
function footnotesOf({ rows }: Table): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const row of rows) {
    const filled = row.filter((cell) => cell !== null && cell !== '');
    if (filled.length === 0 || filled.length > 2) continue;
    const text = filled.map(cellText).join(' ').trim();
    const match = /^(\*{1,3}|[†‡§¹²³⁴⁵])\s*[-=:.]?\s*(\S.*)$/.exec(text);
    if (match !== null) found.set(match[1] ?? '', match[2] ?? '');
  }
  return found;
}

/** What the file's reader asks about the row, and whether its cells stand where they should: without a span nothing is computed. */
function askDoubt(changes: RowChanges, { asks }: Table): void {
  const { raw } = changes;
  for (const draft of asks?.get(raw.row) ?? []) changes.ask(draft);
  if (raw.doubt === null) return;
  changes.ask({
    id: `doubt:${raw.at}`,
    about: 'rows',
    text: raw.doubt,
    choices: [{ label: 'right as read' }, LEAVE_OUT],
    field: 'span',
  });
}

function askStruck(changes: RowChanges, { struck }: Table): void {
  const { raw } = changes;
  const columns = struck?.get(raw.row) ?? [];
  const ours = columns.filter((column) => raw.block.some(({ index, key }) => index === column && key !== null));
  if (ours.length === 0) return;
  const filled = raw.block.filter(({ index, key }) => key !== null && cellText(raw.cells[index]) !== '');
  const whole = ours.length * 2 > filled.length;
  const cells = ours.map((column) => quote(cellText(raw.cells[column]))).join(', ');
  changes.ask({
    id: whole ? 'struck' : `struck:${raw.at}`,
    about: 'struck through',
    text: whole
      ? 'Rows are struck through in the file; are their openings wanted?'
      : `Row ${raw.row} has cells that are struck through, ${cells}; is it right as it stands?`,
    choices: whole ? [LEAVE_OUT, AS_LISTED] : [AS_LISTED, LEAVE_OUT],
    field: 'quantity',
  });
}

/** Where the row says that the opening is out of the job: in its remarks, its mark, or a column that means nothing else. */
function askWithdrawn(changes: RowChanges): void {
  const { raw } = changes;
  const [mark] = cellsOf(raw, 'mark');
  const ask = (word: string, sentence: string) => {
    if (changes.wasAsked(idOf('remark', word.toLowerCase()))) return;
    changes.ask({
      id: idOf('withdrawn', word.toLowerCase()),
      about: 'remarks',
      text: `${sentence}; please confirm whether this opening is wanted.`,
      choices: [LEAVE_OUT, AS_LISTED],
      field: 'quantity',
    });
  };
  const said = withdrawnBy(remarksOf(raw));
  if (said !== null) return ask(said, `The remarks say ${quote(said)}`);
  const marked = mark === undefined ? null : withdrawnMark(cellText(mark.cell));
  if (marked !== null) return ask(marked, `The mark says ${quote(marked)}`);
  for (const { index, key, heading } of raw.block) {
    const word = key === null && !isStatusHeading(heading) ? withdrawnBy(cellText(raw.cells[index])) : null;
    if (word !== null)
      return ask(word, `${heading === '' ? `Column ${index + 1}` : quote(heading)} says ${quote(word)}`);
  }
}
