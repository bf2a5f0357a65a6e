import { figure, inGroup, ofCurve, working, type WorkingColumn } from './column';

const lengthAt = (offset: string) => ofCurve(`ARCH.HEADLENGTH({head},{span},{rise},${offset},{ends})`);

/** Lengths of one head along the casing's edges. */
export const LENGTH_COLUMNS: readonly WorkingColumn[] = inGroup('Lengths', [
  working('insideLength', 'Inside length', 'length', {
    value: (row) => row.curve?.insideLength,
    formula: lengthAt('{reveal}'),
  }),
  working('centerLength', 'Center length', 'length', {
    value: (row) => row.curve?.centerLength,
    formula: lengthAt('{reveal}+{face}/2'),
  }),
  figure('length', 'Outside (long-point) length', 'length', {
    value: (row) => row.curve?.length,
    formula: lengthAt('{reveal}+{face}'),
  }),
  figure('leg miter', 'Miter of the leg', 'degrees', {
    value: (row) => row.curve?.miter,
    formula: ofCurve(
      'IF({head}="straight",IF(OR({ends}="over legs",{ends}="between legs",{ends}="square"),"",45),' +
        'IF(OR({head}="round",AND({ends}<>"legs",{ends}<>"mitered")),"",' +
        'IF({head}="segmental",ARCH.MITER({span},{rise},{face},{reveal}),0)))',
    ),
  }),
]);
