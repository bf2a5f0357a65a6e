import { lengthTextFormula } from '../lengthFormula';
import { inGroup, ofCurve, plain, type WorkingColumn, type WorkingColumns } from './column';
import { CLOSED_HEADS, EDGE, headIs, HALF_SPAN } from './formulas';
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

type LengthFigure = 'inside length' | 'center length' | 'long point' | 'long point text' | 'leg miter';

const SLOPE_GAIN = (run: string) => `DEGREES(ATAN((SQRT((${run})^2+${its.rise}^2)-${its.rise})/(${run})))`;

/** Lengths of one head along the casing's edges. */
export const LENGTH_COLUMNS: WorkingColumns<LengthFigure> = inGroup('Lengths', {
  'inside length': plain('inside length', lengthAt('inside', its.reveal)),
  'center length': plain('center length', lengthAt('center', `(${its.reveal}+${its.face}/2)`)),
  'long point': plain('long point', lengthAt('outside', EDGE)),
  'long point text': plain(
    'long point text',
    (_row, { standards: { unit } }) => `IF(${its['long point']}="","",${lengthTextFormula(its['long point'], unit)})`,
  ),
  'leg miter': plain(
    'leg miter',
    ofCurve(
      `IF(${its.head}="straight",IF(${its.stops}="mitered",45,""),` +
        `IF(OR(${headIs(...CLOSED_HEADS)},${its.stops}<>"legs"),"",` +
        `IF(${its.head}="segmental",ARCH.MITER(${its.span},${its.rise},${its.face},${its.reveal}),` +
        `IF(${its.head}="half segmental",ARCH.MITER(2*${its.span},${its.rise},${its.face},${its.reveal}),` +
        `IF(${its.head}="gable",${SLOPE_GAIN(HALF_SPAN)},IF(${its.head}="shed",${SLOPE_GAIN(its.span)},` +
        `IF(${its.head}="clipped corners",${SLOPE_GAIN(`IF(${its.haunch}="",${its.rise},${its.haunch})`)},0)))))))`,
    ),
  ),
});
