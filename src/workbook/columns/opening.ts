import type { OpeningField } from '../../schedule/opening';
import { isHalfSpan } from '../../takeoff/inputs';
import { attentionFormula, missingFormula, missingShapeFormula, needsFormula, sentences } from '../needsFormula';
import { inGroup, figure, input, working, type TakeoffColumn } from './column';

/** An input the schedule leaves blank follows the shop's standard. */
function standard(key: 'ends' | 'reveal' | 'face' | 'thickness' | 'species' | 'profile'): TakeoffColumn['formula'] {
  return (row) => (row.opening[key] === null && row.known[key] !== null ? `Shop_${key}` : null);
}

/** A rough-opening figure less the shop's allowance goes on following the allowance. */
function less(figure: number | null, rough: number | undefined, allowance: string): string | null {
  return figure === null || rough === undefined ? null : `${rough}-${allowance}`;
}

export const OPENING_COLUMNS: readonly TakeoffColumn[] = inGroup('Opening', [
  figure('row', 'Source row', 'row', { width: 7, value: (row) => row.opening.row, formula: () => null }),
  input('mark', 'Mark', 'text', 10, (row) => row.opening.mark),
  input('quantity', 'Quantity', 'count', 10, (row) => row.known.quantity),
  input('head', 'Head', 'text', 15, (row) => row.known.head),
  input('ends', 'Ends', 'text', 8, (row) => row.known.ends, standard('ends')),
  input(
    'span',
    'Span',
    'input length',
    10,
    (row) => row.known.span,
    ({ opening }) => less(opening.span, opening.rough?.span, 'Shop_rough_width'),
  ),
  input(
    'rise',
    'Rise',
    'input length',
    10,
    (row) => row.known.rise,
    ({ opening }) => (isHalfSpan(opening) ? '{span}/2' : less(opening.rise, opening.rough?.rise, 'Shop_rough_height')),
  ),
  input('reveal', 'Reveal', 'input length', 9, (row) => row.known.reveal, standard('reveal')),
  input('face', 'Casing width', 'input length', 10, (row) => row.known.face, standard('face')),
  input('thickness', 'Thickness', 'input length', 11, (row) => row.known.thickness, standard('thickness')),
  input('species', 'Species', 'text', 13, (row) => row.known.species, standard('species')),
  input('profile', 'Profile', 'text', 12, (row) => row.known.profile, standard('profile')),
  input('leg', 'Leg, each', 'input length', 10, (row) => row.known.leg),
]);

/** Whether a formula (`=…`) in an input's cell is one that a filling writes there, not one of the user's own. */
export function isFilledIn(field: OpeningField, formula: string): boolean {
  if (formula === `=Shop_${field}` || /^=[\d.]+-Shop_rough_\w+$/.test(formula)) return true;
  return field === 'rise' && /^=[A-Z]+\d+\/2$/.test(formula);
}

/** The inputs, in the order of the "As filled" column. */
export const INPUT_KEYS: readonly OpeningField[] = OPENING_COLUMNS.filter(({ role }) => role === 'input').map(
  ({ key }) => key as OpeningField,
);

/** What the list gives for a row, so that a later filling can tell what was changed by hand (`refill.ts`). */
const filled = working('filled', 'As filled', 'text', {
  width: 20,
  value: ({ opening }) => JSON.stringify(INPUT_KEYS.map((key) => (opening.listed ?? opening)[key])),
  formula: () => null,
});

export const TO_DO_COLUMNS: readonly TakeoffColumn[] = inGroup('To do', [
  figure('needs', 'Needs', 'text', { width: 34, value: (row) => sentences(row.needs), formula: needsFormula }),
  figure('attention', 'Look at', 'text', {
    width: 34,
    value: (row) => sentences(row.attention),
    formula: attentionFormula,
  }),
  working('missingShape', 'Missing for the curve', 'text', {
    value: (row) => sentences(row.missingShape),
    formula: missingShapeFormula,
  }),
  working('missing', 'Missing inputs', 'text', { value: (row) => sentences(row.missing), formula: missingFormula }),
  working('counted', 'Quantity counted', 'count', {
    value: (row) => row.inputs?.quantity ?? 0,
    formula: () => 'IF({needs}="",{quantity},0)',
  }),
  filled,
]);
