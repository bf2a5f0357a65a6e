import { sentences } from '../../takeoff/figures';
import { headsOf } from '../../takeoff/ownCost';
import { ROW_FIELDS, type RowField } from '../../takeoff/row';
import { TAKEOFF_COLUMNS } from '../takeoff/columns';
import { takeoffRange } from '../takeoff/places';
import { inGroup, plain, working, type WorkingColumn, type WorkingColumns } from './column';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { arcEndsOf } from '../../head/pieces';
import { SHAPES } from '../../head/shapes';
import { straightEndsOf } from '../../head/straight';
import { CLOSED_HEADS, headIs } from './formulas';
import { its, type InputKey, type ToDoStep } from './keys';
import { blankFailsFormula, curveFailsFormula, lacksFormula, lacksShapeFormula } from './lacks';
import { attentionFormula, needsFormula } from './needs';

/** What stands for a blank input: the shop's standard, or something that follows from the row. */
const BLANKS: Partial<Record<RowField, string>> = {
  rise: `IF(${its.head}="half round",IF(ISNUMBER(${its.span}),${its.span}/2,""),"")`,
  ends: 'Shop_ends',
  reveal: 'Shop_reveal',
  face: 'Shop_face',
  thickness: 'Shop_thickness',
  species: 'Shop_species',
  profile: 'Shop_profile',
  leg: '0',
  sides: '1',
};

/** An input of the opening with this number, wherever its row now stands on the Takeoff. */
function inputColumn(field: RowField): WorkingColumn {
  const { heading, measure } = TAKEOFF_COLUMNS.find(({ key }) => key === field)!;
  return {
    ...working(heading, measure === 'input length' ? 'length' : measure, {
      // What can't be read stays as it stands in the cell, and is said.
      value: ({ known, cells }) => known[field] ?? cells[field] ?? '',
      formula: '',
    }),
    // How many arcs come near enough to an ellipse is worked out when the workbook is written.
    formula: (row, { openings }) => {
      const cell = `INDEX(${takeoffRange(field, openings.length)},${its.at})`;
      const blank = field === 'arcs' ? String(row.known.arcs ?? '""') : (BLANKS[field] ?? '""');
      return `IF(${its.at}=0,"",IF(${cell}="",${blank},${cell}))`;
    },
  };
}

export const INPUT_COLUMNS: WorkingColumns<InputKey> = inGroup('Inputs, the shop’s standards put in', {
  at: working('Place in the Takeoff', 'count', {
    value: ({ no }, { openings }) => openings.findIndex((each) => each.no === no) + 1,
    formula: (_row, { openings }) => `IFERROR(MATCH(${its.no},${takeoffRange('no', openings.length)},0),0)`,
  }),
  ...(Object.fromEntries(ROW_FIELDS.map((field) => [field, inputColumn(field)])) as WorkingColumns<RowField>),
});

/** How the head stops, whatever its ends are called: blank where the head and the word don't go together. */
function stopsOf({ known: { head, ends }, missingShape }: OpeningTakeoff): string {
  if (head === null || ends === null || missingShape.length > 0) return '';
  if (head === 'straight') return straightEndsOf(ends);
  if (SHAPES[head].closed) return 'radial';
  const stops = arcEndsOf(ends);
  return stops.ok ? stops.value : '';
}

const endsAre = (...words: readonly string[]) => `OR(${words.map((word) => `${its.ends}="${word}"`).join(',')})`;
const STOPS =
  `IF(${its.head}="straight",IF(${endsAre('over legs', 'between legs', 'square')},${its.ends},"mitered"),` +
  `IF(${headIs(...CLOSED_HEADS)},"radial",IF(${endsAre('legs', 'mitered')},"legs",` +
  `IF(${endsAre('level', 'over legs')},"level",IF(${endsAre('radial', 'square')},"radial","")))))`;

export const TO_DO_COLUMNS: WorkingColumns<ToDoStep | 'needs' | 'look at'> = inGroup('To do', {
  needs: plain('needs', needsFormula),
  attention: working('Attention', 'text', { value: (row) => sentences(row.attention), formula: attentionFormula }),
  'look at': plain('look at', () => `IF(${its.needs}="",${its.attention},${its.needs})`),
  stops: working('How the head stops', 'text', {
    value: stopsOf,
    formula: () => `IF(${its.lacksShape}<>"","",${STOPS})`,
  }),
  lacksShape: working('Missing inputs of the curve', 'text', {
    value: (row) => sentences(row.missingShape),
    formula: lacksShapeFormula,
  }),
  curveFails: working('Why there is no curve', 'text', {
    value: (row) => sentences(row.curveFailure === null ? [] : [row.curveFailure]),
    formula: curveFailsFormula,
  }),
  missingShape: working('Missing for the curve', 'text', {
    value: (row) => sentences([...row.missingShape, ...(row.curveFailure === null ? [] : [row.curveFailure])]),
    formula: () => `${its.lacksShape}&${its.curveFails}`,
  }),
  lacks: working('Missing inputs', 'text', {
    value: (row) => sentences([...(row.curveFailure === null ? [] : [row.curveFailure]), ...row.missing]),
    formula: lacksFormula,
  }),
  blankFails: working('Why there is no blank', 'text', {
    value: (row) => (row.curveFailure === null ? sentences(row.failure === null ? [] : [row.failure]) : ''),
    formula: blankFailsFormula,
  }),
  missing: working('Missing', 'text', {
    value: (row) => sentences([...(row.failure === null ? [] : [row.failure]), ...row.missing]),
    formula: () => `${its.lacks}&${its.blankFails}`,
  }),
  counted: working('Heads counted', 'count', {
    value: (row) => (row.inputs ? headsOf(row.inputs) : 0),
    formula: () => `IF(${its.needs}="",${its.quantity}*${its.sides},0)`,
  }),
});
