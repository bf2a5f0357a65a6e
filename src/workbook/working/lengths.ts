import { lengthTextFormula } from '../sharedFormulas';
import { inGroup, ofCurve, plain, type WorkingColumn, type WorkingColumns } from './column';
import { CLOSED_HEADS, EDGE, headIs } from './formulas';
import { perHead } from './heads';
import type { PlainHead } from './plainHead';
import { highLength } from './highLeg';
import { its } from './keys';

const BEYOND = (offset: string) =>
  `IF(${its.stops}="mitered",${offset},IF(${its.stops}="over legs",${EDGE}+Shop_overhang,IF(${its.stops}="between legs",${its.reveal},0)))`;

/** The head along one edge; a straight one reaches as far as its ends say, a quarter ellipse on to its high leg. */
const lengthAt =
  (edge: 'inside' | 'center' | 'outside', offset: string): WorkingColumn['formula'] =>
  (row, takeoff) =>
    ofCurve(
      `IF(${its.head}="straight",${its.span}+2*${BEYOND(offset)},ARCH.HEADLENGTH(${its.head},${its.span},${its.rise},${offset},${its.stops},${its.haunch}))` +
        highLength(row, edge, offset),
    )(row, takeoff);

type LengthFigure = 'inside length' | 'center length' | 'long point' | 'long point text' | 'leg miter' | 'head miter';

/** What goes all round has no leg; a straight head is mitered by its own word. */
const miterOf = (of: (head: PlainHead) => string) =>
  `IF(${headIs(...CLOSED_HEADS)},"",IF(AND(${its.head}<>"straight",${its.stops}<>"legs"),"",` + `${perHead(of, '0')}))`;

/** Lengths of one head along the casing's edges. */
export const LENGTH_COLUMNS: WorkingColumns<LengthFigure> = inGroup('Lengths', {
  'inside length': plain('inside length', lengthAt('inside', its.reveal)),
  'center length': plain('center length', lengthAt('center', `(${its.reveal}+${its.face}/2)`)),
  'long point': plain('long point', lengthAt('outside', EDGE)),
  'long point text': plain(
    'long point text',
    (_row, { standards: { unit } }) => `IF(${its['long point']}="","",${lengthTextFormula(its['long point'], unit)})`,
  ),
  'leg miter': plain('leg miter', ofCurve(miterOf(({ leg }) => leg.miter))),
  'head miter': plain('head miter', ofCurve(miterOf(({ leg }) => leg.headMiter))),
});
