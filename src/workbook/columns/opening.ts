import { sentences } from '../needsFormula';
import { attentionFormula, missingFormula, needsFormula } from '../needsFormula';
import { inGroup, figure, input, working, type TakeoffColumn } from './column';

/** An input the schedule leaves blank follows the shop's standard. */
function standard(key: 'ends' | 'reveal' | 'face' | 'thickness' | 'species' | 'profile'): TakeoffColumn['formula'] {
  return (row) => (row.opening[key] === null && row.known[key] !== null ? `Shop_${key}` : null);
}

export const OPENING_COLUMNS: readonly TakeoffColumn[] = inGroup('Opening', [
  figure('row', 'Source row', 'row', { width: 7, value: (row) => row.opening.row, formula: () => null }),
  input('mark', 'Mark', 'text', 10, (row) => row.opening.mark),
  input('quantity', 'Quantity', 'count', 9, (row) => row.known.quantity),
  input('head', 'Head', 'text', 15, (row) => row.known.head),
  input('ends', 'Ends', 'text', 8, (row) => row.known.ends, standard('ends')),
  input('span', 'Span', 'input length', 10, (row) => row.known.span),
  input(
    'rise',
    'Rise',
    'input length',
    10,
    (row) => row.known.rise,
    (row) => (row.opening.rise === null && row.known.rise !== null ? '{span}/2' : null),
  ),
  input('reveal', 'Reveal', 'input length', 9, (row) => row.known.reveal, standard('reveal')),
  input('face', 'Casing width', 'input length', 10, (row) => row.known.face, standard('face')),
  input('thickness', 'Thickness', 'input length', 10, (row) => row.known.thickness, standard('thickness')),
  input('species', 'Species', 'text', 13, (row) => row.known.species, standard('species')),
  input('profile', 'Profile', 'text', 12, (row) => row.known.profile, standard('profile')),
  input('leg', 'Leg, each', 'input length', 10, (row) => row.known.leg),
]);

export const TO_DO_COLUMNS: readonly TakeoffColumn[] = inGroup('To do', [
  figure('needs', 'Needs', 'text', { width: 34, value: (row) => sentences(row.needs), formula: needsFormula }),
  figure('attention', 'Look at', 'text', {
    width: 34,
    value: (row) => sentences(row.attention),
    formula: attentionFormula,
  }),
  working('missing', 'Missing inputs', 'text', { value: (row) => sentences(row.missing), formula: missingFormula }),
  working('counted', 'Quantity counted', 'count', {
    value: (row) => row.inputs?.quantity ?? 0,
    formula: () => 'IF({needs}="",{quantity},0)',
  }),
]);
