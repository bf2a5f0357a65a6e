import { sentences } from '../../takeoff/figures';
import { headsOf } from '../../takeoff/ownCost';
import { ROW_FIELDS, type RowField } from '../../takeoff/row';
import type { ColumnMeasure } from '../format';
import { takeoffRange } from '../takeoff/places';
import { figure, inGroup, working, type WorkingColumn } from './column';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { arcEndsOf } from '../../head/pieces';
import { SHAPES } from '../../head/shapes';
import { straightEndsOf } from '../../head/straight';
import { CLOSED_HEADS, headIs } from './formulas';
import { blankFailsFormula, curveFailsFormula, lacksFormula, lacksShapeFormula } from './lacks';
import { attentionFormula, needsFormula } from './needs';

/** What stands for a blank input: the shop's standard, or something that follows from the row. */
const BLANKS: Partial<Record<RowField, string>> = {
  rise: 'IF({head}="half round",IF(ISNUMBER({span}),{span}/2,""),"")',
  ends: 'Shop_ends',
  reveal: 'Shop_reveal',
  face: 'Shop_face',
  thickness: 'Shop_thickness',
  species: 'Shop_species',
  profile: 'Shop_profile',
  leg: '0',
  sides: '1',
};
const TEXTS: ReadonlySet<RowField> = new Set(['head', 'ends', 'species', 'profile']);
const COUNTS: ReadonlySet<RowField> = new Set(['quantity', 'segmentsWanted', 'sides', 'arcs']);

function measureOf(field: RowField): ColumnMeasure {
  return TEXTS.has(field) ? 'text' : COUNTS.has(field) ? 'count' : 'length';
}

/** An input of the opening with this number, wherever its row now stands on the Takeoff. */
function inputColumn(field: RowField): WorkingColumn {
  return {
    ...working(field, field, measureOf(field), {
      // What can't be read stays as it stands in the cell, and is said.
      value: ({ known, cells }) => known[field] ?? cells[field] ?? '',
      formula: '',
    }),
    // How many arcs come near enough to an ellipse is worked out when the workbook is written.
    formula: (row, { openings }) => {
      const cell = `INDEX(${takeoffRange(field, openings.length)},{at})`;
      const blank = field === 'arcs' ? String(row.known.arcs ?? '""') : (BLANKS[field] ?? '""');
      return `IF({at}=0,"",IF(${cell}="",${blank},${cell}))`;
    },
  };
}

export const INPUT_COLUMNS: readonly WorkingColumn[] = inGroup('Inputs, the shop’s standards put in', [
  working('at', 'Place in the Takeoff', 'count', {
    value: ({ no }, { openings }) => openings.findIndex((each) => each.no === no) + 1,
    formula: (_row, { openings }) => `IFERROR(MATCH({no},${takeoffRange('no', openings.length)},0),0)`,
  }),
  ...ROW_FIELDS.map(inputColumn),
]);

/** How the head stops, whatever its ends are called: blank where the head and the word don't go together. */
function stopsOf({ known: { head, ends }, missingShape }: OpeningTakeoff): string {
  if (head === null || ends === null || missingShape.length > 0) return '';
  if (head === 'straight') return straightEndsOf(ends);
  if (SHAPES[head].closed) return 'radial';
  const stops = arcEndsOf(ends);
  return stops.ok ? stops.value : '';
}

const endsAre = (...words: readonly string[]) => `OR(${words.map((word) => `{ends}="${word}"`).join(',')})`;
const STOPS =
  `IF({head}="straight",IF(${endsAre('over legs', 'between legs', 'square')},{ends},"mitered"),` +
  `IF(${headIs(...CLOSED_HEADS)},"radial",IF(${endsAre('legs', 'mitered')},"legs",` +
  `IF(${endsAre('level', 'over legs')},"level",IF(${endsAre('radial', 'square')},"radial","")))))`;

export const TO_DO_COLUMNS: readonly WorkingColumn[] = inGroup('To do', [
  figure('needs', 'Needs', 'text', { value: (row) => sentences(row.needs), formula: needsFormula }),
  figure('attention', 'Attention', 'text', { value: (row) => sentences(row.attention), formula: attentionFormula }),
  figure('look at', 'Look at', 'text', {
    value: (row) => sentences(row.needs.length > 0 ? row.needs : row.attention),
    formula: () => 'IF({needs}="",{attention},{needs})',
  }),
  working('stops', 'How the head stops', 'text', {
    value: stopsOf,
    formula: () => `IF({lacksShape}<>"","",${STOPS})`,
  }),
  working('lacksShape', 'Missing inputs of the curve', 'text', {
    value: (row) => sentences(row.missingShape),
    formula: lacksShapeFormula,
  }),
  working('curveFails', 'Why there is no curve', 'text', {
    value: (row) => sentences(row.curveFailure === null ? [] : [row.curveFailure]),
    formula: curveFailsFormula,
  }),
  working('missingShape', 'Missing for the curve', 'text', {
    value: (row) => sentences([...row.missingShape, ...(row.curveFailure === null ? [] : [row.curveFailure])]),
    formula: () => '{lacksShape}&{curveFails}',
  }),
  working('lacks', 'Missing inputs', 'text', {
    value: (row) => sentences([...(row.curveFailure === null ? [] : [row.curveFailure]), ...row.missing]),
    formula: lacksFormula,
  }),
  working('blankFails', 'Why there is no blank', 'text', {
    value: (row) => (row.curveFailure === null ? sentences(row.failure === null ? [] : [row.failure]) : ''),
    formula: blankFailsFormula,
  }),
  working('missing', 'Missing', 'text', {
    value: (row) => sentences([...(row.failure === null ? [] : [row.failure]), ...row.missing]),
    formula: () => '{lacks}&{blankFails}',
  }),
  working('counted', 'Heads counted', 'count', {
    value: (row) => (row.inputs ? headsOf(row.inputs) : 0),
    formula: () => 'IF({needs}="",{quantity}*{sides},0)',
  }),
]);
