import { figure, inGroup, ofCurve, working, type WorkingColumn } from './column';
import { CLOSED_HEADS, EDGE, headIs, HALF_SPAN } from './formulas';
import { highLength } from './highLeg';

const BEYOND = (offset: string) =>
  `IF({stops}="mitered",${offset},IF({stops}="over legs",${EDGE}+Shop_overhang,IF({stops}="between legs",{reveal},0)))`;

/** The head along one edge; a straight one reaches as far as its ends say, a quarter ellipse on to its high leg. */
const lengthAt =
  (edge: 'inside' | 'center' | 'outside', offset: string): WorkingColumn['formula'] =>
  (row, takeoff) =>
    ofCurve(
      `IF({head}="straight",{span}+2*${BEYOND(offset)},ARCH.HEADLENGTH({head},{span},{rise},${offset},{stops},{haunch}))` +
        highLength(row, edge, offset),
    )(row, takeoff);

const SLOPE_GAIN = (run: string) => `DEGREES(ATAN((SQRT((${run})^2+{rise}^2)-{rise})/(${run})))`;

/** Lengths of one head along the casing's edges. */
export const LENGTH_COLUMNS: readonly WorkingColumn[] = inGroup('Lengths', [
  working('insideLength', 'Inside length', 'length', {
    value: (row) => row.curve?.insideLength,
    formula: lengthAt('inside', '{reveal}'),
  }),
  working('centerLength', 'Center length', 'length', {
    value: (row) => row.curve?.centerLength,
    formula: lengthAt('center', '({reveal}+{face}/2)'),
  }),
  figure('length', 'Outside (long-point) length', 'length', {
    value: (row) => row.curve?.length,
    formula: lengthAt('outside', EDGE),
  }),
  figure('leg miter', 'Miter of the leg', 'degrees', {
    value: (row) => row.curve?.miter,
    formula: ofCurve(
      'IF({head}="straight",IF({stops}="mitered",45,""),' +
        `IF(OR(${headIs(...CLOSED_HEADS)},{stops}<>"legs"),"",` +
        'IF({head}="segmental",ARCH.MITER({span},{rise},{face},{reveal}),' +
        'IF({head}="half segmental",ARCH.MITER(2*{span},{rise},{face},{reveal}),' +
        `IF({head}="gable",${SLOPE_GAIN(HALF_SPAN)},IF({head}="shed",${SLOPE_GAIN('{span}')},` +
        `IF({head}="clipped corners",${SLOPE_GAIN('IF({haunch}="",{rise},{haunch})')},0)))))))`,
    ),
  }),
]);
