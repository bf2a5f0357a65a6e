import type { OpeningTakeoff, Takeoff } from '../takeoff/takeoff';
import type { BlankChoice } from '../takeoff/blankChoice';
import type { RingPlan } from '../takeoff/ownFigures';
import { attentionFormula, missingFormula, quote, sentences } from './needsFormula';
import { blankText, sizeText, sizeTextFormula } from './sizeText';

export type ColumnMeasure =
  | 'text'
  | 'row'
  | 'count'
  | 'input length' // as a shop writes it: 36 1/2
  | 'length' // exact, in decimals
  | 'degrees'
  | 'boardFeet'
  | 'cuts'
  | 'minutes'
  | 'money'
  | 'number';

/**
 * One column of the takeoff, the only place where it is described. `formula` is a template: `{span}` is the same row's
 * span, `{span:all}` the whole column, `Shop_…` and `Stock_…` the named cells of the Standards sheet. Where it gives
 * null the cell holds a value.
 */
export interface TakeoffColumn {
  readonly key: string;
  readonly heading: string;
  readonly group: string;
  readonly measure: ColumnMeasure;
  readonly width: number;
  /** An input is the user's to change; a working figure is folded away. */
  readonly role: 'input' | 'figure' | 'working';
  readonly value: (row: OpeningTakeoff, takeoff: Takeoff) => string | number | null;
  readonly formula: (row: OpeningTakeoff, takeoff: Takeoff) => string | null;
  /** The totals row adds this column up. */
  readonly total?: true;
}

type Value = TakeoffColumn['value'];

/** A blank unless the opening is complete. */
const whenComplete = (formula: string) => () => `IF({missing}<>"","",${formula})`;
/** A blank unless the opening has an arc. */
const whenCurved = (formula: string) => () => `IF({radius}="","",${formula})`;

const STOCK = 'Stock_species,{species},Stock_thickness,{stockThickness}';
const narrowest = (width: string) => `MINIFS(Stock_width,${STOCK},Stock_width,">="&(${width}-0.000000001))`;
const priceAt = (width: string) => `MINIFS(Stock_price,${STOCK},Stock_width,${width})`;
const boardFeet = (width: string, length: string, count: string) =>
  `ARCH.BOARDFEET({quarters}/4,${width}/Shop_per_inch,${length}/Shop_per_inch,${count})`;
const FEED = 'Shop_feed/Shop_per_ft_min';

const inputs: readonly TakeoffColumn[] = [
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
    (row) =>
      row.known.head === 'half round' && row.opening.rise === null && row.known.rise !== null ? '{span}/2' : null,
  ),
  input('reveal', 'Reveal', 'input length', 9, (row) => row.known.reveal, standard('reveal')),
  input('face', 'Casing width', 'input length', 10, (row) => row.known.face, standard('face')),
  input('thickness', 'Thickness', 'input length', 10, (row) => row.known.thickness, standard('thickness')),
  input('species', 'Species', 'text', 13, (row) => row.known.species, standard('species')),
  input('profile', 'Profile', 'text', 12, (row) => row.known.profile, standard('profile')),
  input('leg', 'Leg, each', 'input length', 10, (row) => row.known.leg),
];

/** The columns of one kind of ring: the crown's (or only) ring, or the haunches'. */
function ringColumns(
  group: string,
  heading: string,
  plan: (row: OpeningTakeoff) => RingPlan | null,
  key: (name: string) => string,
  own: { radius: string; angle: string; blankAngle: string; count: string },
  role: 'figure' | 'working',
): TakeoffColumn[] {
  const at = (name: string) => `{${key(name)}}`;
  const when = (formula: string) => (row: OpeningTakeoff) =>
    key('radius') === 'radius' || mayHaveHaunch(row) ? `IF(${at('radius')}="","",${formula})` : null;
  const ofRing =
    (figure: (ring: RingPlan, row: OpeningTakeoff, takeoff: Takeoff) => number | string): Value =>
    (row, takeoff) => {
      const ring = plan(row);
      return ring === null ? null : figure(ring, row, takeoff);
    };
  const blankArguments = (count: string) => `${at('insideRadius')},{face},${at('blankAngle')},${count},Shop_margin`;
  const weighed = (more: 0 | 1 | 2): TakeoffColumn => {
    const count = more === 0 ? at('segmentsFewest') : `(${at('segmentsFewest')}+${more})`;
    const width = narrowest(`ARCH.BLANKWIDTH(${blankArguments(count)})`);
    const wood = boardFeet(width, `ARCH.BLANKLENGTH(${blankArguments(count)})`, count);
    const joints = `(${count}-IF(${at('blankAngle')}=360,0,1))`;
    const formula = `${wood}*${priceAt(width)}*(1+Shop_waste)+${joints}*Shop_joint_minutes/60*Shop_shop_rate`;
    const more_ = ['fewest joints', 'one more segment', 'two more'][more]!;
    return {
      key: key(`weigh${more}`),
      heading: `${heading}wood and joints, ${more_}`,
      group: 'Segments weighed',
      measure: 'money',
      width: 12,
      role: 'working',
      value: ofRing((ring) => ring.blank.weighed[more].cost),
      formula: when(formula),
    };
  };
  const column = (
    name: string,
    title: string,
    measure: ColumnMeasure,
    value: Value,
    formula: TakeoffColumn['formula'],
    options: { group?: string; role?: 'figure' | 'working'; width?: number } = {},
  ): TakeoffColumn => ({
    key: key(name),
    heading: heading === '' ? title : heading + title.charAt(0).toLowerCase() + title.slice(1),
    group: options.group ?? group,
    measure,
    width: options.width ?? 10,
    role: options.role ?? role,
    value,
    formula,
  });
  const chosen = (of: (blank: BlankChoice['chosen']) => number) => ofRing((ring) => of(ring.blank.chosen));
  return [
    column(
      'radius',
      'Radius',
      'length',
      ofRing((ring) => ring.ring.radius),
      (row) => (key('radius') === 'radius' || mayHaveHaunch(row) ? `IF({missing}<>"","",${own.radius})` : null),
    ),
    column(
      'insideRadius',
      'Inside radius',
      'length',
      ofRing((ring) => ring.ring.inside),
      when(`${at('radius')}+{reveal}`),
    ),
    column(
      'outsideRadius',
      'Outside radius',
      'length',
      ofRing((ring) => ring.ring.outside),
      when(`${at('insideRadius')}+{face}`),
    ),
    column(
      'angle',
      'Angle',
      'degrees',
      ofRing((ring) => ring.ring.angle),
      when(own.angle),
    ),
    column(
      'blankAngle',
      'Blank angle',
      'degrees',
      ofRing((ring) => ring.ring.blankAngle),
      when(own.blankAngle),
      { role: 'working' },
    ),
    column(
      'segmentsFewest',
      'Fewest segments',
      'count',
      ofRing((ring) => ring.blank.weighed[0].segments),
      when(`ARCH.SEGMENTS(${at('insideRadius')},{face},${at('blankAngle')},{widest},Shop_margin,Shop_grain)`),
      { group: 'Segments weighed', role: 'working' },
    ),
    weighed(0),
    weighed(1),
    weighed(2),
    column(
      'segments',
      'Segments',
      'count',
      chosen((blank) => blank.segments),
      when(
        `${at('segmentsFewest')}+IF(${at('weigh0')}<=MIN(${at('weigh1')},${at('weigh2')}),0,IF(${at('weigh1')}<=${at('weigh2')},1,2))`,
      ),
    ),
    column(
      'blankWidth',
      'Blank width',
      'length',
      chosen((blank) => blank.width),
      when(`ARCH.BLANKWIDTH(${blankArguments(at('segments'))})`),
    ),
    column(
      'boardWidth',
      'Board width',
      'length',
      chosen((blank) => blank.boardWidth),
      when(narrowest(at('blankWidth'))),
    ),
    column(
      'blankLength',
      'Blank length',
      'length',
      chosen((blank) => blank.length),
      when(`ARCH.BLANKLENGTH(${blankArguments(at('segments'))})`),
    ),
    column(
      'guide',
      'Guide set',
      'text',
      ofRing((ring) => ring.guide),
      when(`{knife}&", R "&ROUND(${at('insideRadius')},3)`),
      { width: 28, role: 'working' },
    ),
    column(
      'pieces',
      'Pieces',
      'count',
      ofRing((ring, row) => row.inputs!.quantity * ring.ring.count),
      when(`{counted}*${own.count}`),
      { role: 'working' },
    ),
    column(
      'run',
      'Pieces with spares',
      'number',
      (row) =>
        plan(row) === null || row.cost === null
          ? null
          : key('run') === 'run'
            ? row.cost.crownPieces
            : row.cost.haunchPieces,
      when(
        `${at('pieces')}*(1+Shop_spare_pieces/(SUMIFS({pieces:all},{guide:all},${at('guide')})+SUMIFS({haunchPieces:all},{haunchGuide:all},${at('guide')})))`,
      ),
      { role: 'working' },
    ),
  ];
}

const MULTI_CENTERED = 'OR({head}="elliptical",{head}="three-centered")';
const HALF = '({span}/2)';
const DIAGONAL = `SQRT(${HALF}^2+{rise}^2)`;
const ellipse = (row: 1 | 2, column: 1 | 2) => `INDEX(ARCH.HEADARCS({head},{span},{rise}),${row},${column})`;

/** Haunch cells are written only where the head has haunches: most have none. */
export function mayHaveHaunch(row: OpeningTakeoff): boolean {
  return row.known.head === 'elliptical' || row.known.head === 'three-centered' || row.known.head === null;
}

const crownKey = (name: string) => name;
export const haunchKey = (name: string) => 'haunch' + name.charAt(0).toUpperCase() + name.slice(1);

const crown = ringColumns(
  'Ring',
  '',
  (row) => row.own?.crown ?? null,
  crownKey,
  {
    radius: choose([
      ['segmental', 'ARCH.RADIUS({span},{rise})'],
      ['half round', HALF],
      ['quarter round', '{span}'],
      ['round', HALF],
      ['pointed', `(${HALF}^2+{rise}^2)/{span}`],
      ['elliptical', ellipse(2, 1)],
      ['three-centered', `(${DIAGONAL}^2+(${HALF}-{rise})*${DIAGONAL})/(2*{rise})`],
    ]),
    angle: choose([
      ['segmental', 'ARCH.ANGLE({span},{rise})'],
      ['half round', '180'],
      ['quarter round', '90'],
      ['round', '360'],
      ['pointed', `DEGREES(ATAN2({radius}-${HALF},{rise}))`],
      ['elliptical', ellipse(2, 2)],
      ['three-centered', '180-2*{haunchAngle}'],
    ]),
    blankAngle:
      'IF({head}="round",360,MIN(360,' +
      `IF(${MULTI_CENTERED},{angle},DEGREES({length}/{outsideRadius})/IF({head}="pointed",2,1))` +
      '+DEGREES(2*Shop_end_allowance/{insideRadius})))',
    count: 'IF({head}="pointed",2,1)',
  },
  'figure',
);

const haunch = ringColumns(
  'Haunch rings',
  'Haunch: ',
  (row) => row.own?.haunch ?? null,
  haunchKey,
  {
    radius: choose([
      ['elliptical', ellipse(1, 1)],
      ['three-centered', `(${DIAGONAL}^2-(${HALF}-{rise})*${DIAGONAL})/{span}`],
    ]),
    angle: `IF({head}="elliptical",${ellipse(1, 2)},DEGREES(ATAN2(${HALF}-{haunchRadius},{radius}-{rise})))`,
    blankAngle: 'MIN(360,{haunchAngle}+DEGREES(2*Shop_end_allowance/{haunchInsideRadius}))',
    count: '2',
  },
  'working',
);

const LEG_ABOVE =
  'IF({ends}<>"legs",0,IF({head}="straight",{reveal}+{face},IF({head}="segmental",' +
  `MAX(0,{rise}-ARCH.RADIUS({span},{rise})+(${HALF}-{rise})*SQRT((${HALF}+{rise})^2+4*{rise}*({reveal}+{face}))/(2*{rise})),0)))`;

const lengths: readonly TakeoffColumn[] = [
  figure(
    'insideLength',
    'Inside length',
    'Lengths',
    'length',
    (row) => row.own?.curve.insideLength,
    whenComplete('ARCH.HEADLENGTH({head},{span},{rise},{reveal},{ends})'),
  ),
  figure(
    'centerLength',
    'Center length',
    'Lengths',
    'length',
    (row) => row.own?.curve.centerLength,
    whenComplete('ARCH.HEADLENGTH({head},{span},{rise},{reveal}+{face}/2,{ends})'),
  ),
  figure(
    'length',
    'Outside (long-point) length',
    'Lengths',
    'length',
    (row) => row.own?.curve.length,
    whenComplete('ARCH.HEADLENGTH({head},{span},{rise},{reveal}+{face},{ends})'),
  ),
  figure(
    'longPoint',
    'Long point, to 1/16',
    'Lengths',
    'text',
    (row, { standards }) => (row.own ? sizeText(row.own.curve.length, standards.unit) : null),
    (_row, { standards }) => `IF({missing}<>"","",${sizeTextFormula('{length}', standards.unit)})`,
  ),
  figure(
    'miter',
    'Miter at legs',
    'Lengths',
    'degrees',
    (row) => row.own?.curve.miter,
    whenComplete(
      'IF({ends}<>"legs","",IF({head}="segmental",ARCH.MITER({span},{rise},{face},{reveal}),IF({head}="straight",45,0)))',
    ),
  ),
];

const cutting: readonly TakeoffColumn[] = [
  figure(
    'cutsPerInch',
    'Cuts per inch, center',
    'Machine',
    'cuts',
    (row) => row.own?.cutsPerInch,
    whenComplete(`ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED})`),
  ),
  figure(
    'cutsOutside',
    'Cuts per inch, outside edge',
    'Machine',
    'cuts',
    (row) => row.own?.cutsOutside,
    whenComplete(
      `IF({radius}="",{cutsPerInch},ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED},MIN({insideRadius},{haunchInsideRadius})+{face}/2,MIN({insideRadius},{haunchInsideRadius})+{face}))`,
    ),
  ),
  figure(
    'grade',
    'Grade met (AWS)',
    'Machine',
    'text',
    (row) => row.own?.grade,
    whenComplete('IF({cutsOutside}>=20,"Custom",IF({cutsOutside}>=15,"Economy","below Economy"))'),
  ),
  figure(
    'passes',
    'Passes',
    'Machine',
    'count',
    (row) => row.own?.passes,
    whenComplete('ROUNDUP(Shop_profile_depth/Shop_deepest_cut-0.000000001,0)'),
  ),
  figure(
    'runMinutes',
    'Run minutes',
    'Machine',
    'minutes',
    (row) => row.cost?.runMinutes,
    whenComplete(
      `IF({radius}="",0,{run}*${runTime('{insideRadius}', '{blankAngle}')})` +
        `+IF(N({haunchRadius})=0,0,{haunchRun}*${runTime('{haunchInsideRadius}', '{haunchBlankAngle}')})` +
        `+IF({straightPieces}=0,0,ARCH.RUNTIME({counted}*{straightLength}/Shop_per_inch,${FEED},{passes},{straightPieces}*Shop_handling))`,
    ),
    true,
  ),
];

function runTime(inside: string, angle: string): string {
  return `ARCH.RUNTIME(RADIANS(${angle})*(${inside}+{face}/2)/Shop_per_inch,${FEED},{passes},Shop_handling)`;
}

/** Straight pieces, and the share of the test pieces. */
const STRAIGHT_STOCK = '({counted}*{straightLength}+Shop_test_piece*({guideSetups}+{straightSetups}))';

const wood: readonly TakeoffColumn[] = [
  working(
    'stockThickness',
    'Stock thickness',
    'Wood',
    'length',
    (row) => row.known.wood?.thickness ?? 0,
    () =>
      'IF(ISNUMBER({thickness}),MINIFS(Stock_thickness,Stock_species,{species},Stock_thickness,">="&({thickness}-0.000000001)),0)',
  ),
  working(
    'quarters',
    'Quarters',
    'Wood',
    'count',
    (row) => row.known.wood?.quarters ?? 0,
    () => `MINIFS(Stock_quarters,${STOCK})`,
  ),
  working(
    'widest',
    'Widest board',
    'Wood',
    'length',
    (row) => row.known.wood?.widest ?? 0,
    () => `MAXIFS(Stock_width,${STOCK})`,
  ),
  working(
    'ripped',
    'Board for straight stock',
    'Wood',
    'length',
    (row) => row.own?.ripWidth,
    whenComplete(narrowest('({face}+2*Shop_margin)')),
  ),
  working(
    'straightLength',
    'Straight, one opening',
    'Wood',
    'length',
    (row) => (row.own ? (row.own.straight?.length ?? 0) : null),
    whenComplete(
      `IF({head}="straight",{length}+2*Shop_end_allowance,0)+IF({leg}>0,2*({leg}+${LEG_ABOVE}+2*Shop_end_allowance),0)`,
    ),
  ),
  working(
    'straightPieces',
    'Straight pieces',
    'Wood',
    'count',
    (row) => row.cost?.straightPieces,
    whenComplete('{counted}*(IF({head}="straight",1,0)+IF({leg}>0,2,0))'),
  ),
  working(
    'straightSetup',
    'Straight set-up',
    'Wood',
    'text',
    (row) => (row.own ? (row.own.straight?.setup ?? null) : null),
    whenComplete('IF({straightPieces}=0,"",{knife}&", straight")'),
    28,
  ),
  working(
    'joints',
    'Joints',
    'Wood',
    'number',
    (row) => row.cost?.joints,
    whenComplete(
      `IF({radius}="",0,{run}*({segments}-IF({blankAngle}=360,0,1)))+IF(N({haunchRadius})=0,0,{haunchRun}*({haunchSegments}-1))` +
        `+{counted}*IF(${MULTI_CENTERED},2,IF({head}="pointed",1,0))`,
    ),
  ),
  working(
    'guideSetups',
    'Guide set-ups borne',
    'Wood',
    'number',
    (row) => row.cost?.guideSetups,
    whenComplete(
      `IF({radius}="",0,{pieces}/${setupPieces('{guide}')})+IF(N({haunchRadius})=0,0,{haunchPieces}/${setupPieces('{haunchGuide}')})`,
    ),
  ),
  working(
    'straightSetups',
    'Straight set-ups borne',
    'Wood',
    'number',
    (row) => row.cost?.straightSetups,
    whenComplete(
      'IF({straightPieces}=0,0,{straightPieces}/SUMIFS({straightPieces:all},{straightSetup:all},{straightSetup}))',
    ),
  ),
  working(
    'straightFeet',
    'Straight and test pieces',
    'Wood',
    'boardFeet',
    (row) =>
      row.own && row.cost && row.inputs
        ? (row.own.straight?.boardFeet ?? 0) * row.inputs.quantity +
          row.own.testBoardFeet * (row.cost.guideSetups + row.cost.straightSetups)
        : null,
    whenComplete(`IF(${STRAIGHT_STOCK}=0,0,${boardFeet('({face}+2*Shop_margin)', STRAIGHT_STOCK, '1')})`),
  ),
  figure(
    'boardFeet',
    'Board feet',
    'Wood',
    'boardFeet',
    (row) => row.cost?.boardFeet,
    whenComplete(
      `IF({radius}="",0,${boardFeet('{boardWidth}', '{blankLength}', '({segments}*{run})')})` +
        `+IF(N({haunchRadius})=0,0,${boardFeet('{haunchBoardWidth}', '{haunchBlankLength}', '({haunchSegments}*{haunchRun})')})+{straightFeet}`,
    ),
    true,
  ),
];

function setupPieces(guide: string): string {
  return `(SUMIFS({pieces:all},{guide:all},${guide})+SUMIFS({haunchPieces:all},{haunchGuide:all},${guide}))`;
}

const price: readonly TakeoffColumn[] = [
  working(
    'laborMinutes',
    'Labor minutes',
    'Price',
    'minutes',
    (row) => row.cost?.laborMinutes,
    whenComplete(
      '{runMinutes}+{joints}*Shop_joint_minutes+((IF({radius}="",0,{run}*RADIANS({blankAngle})*{outsideRadius})' +
        '+IF(N({haunchRadius})=0,0,{haunchRun}*RADIANS({haunchBlankAngle})*{haunchOutsideRadius}))*(Shop_saw_minutes+Shop_sand_minutes)' +
        '+{counted}*{straightLength}*Shop_sand_minutes)/Shop_long_unit',
    ),
    10,
    true,
  ),
  figure(
    'material',
    'Material',
    'Price',
    'money',
    (row) => row.cost?.material,
    whenComplete(
      `(IF({radius}="",0,${boardFeet('{boardWidth}', '{blankLength}', '({segments}*{run})')}*${priceAt('{boardWidth}')})` +
        `+IF(N({haunchRadius})=0,0,${boardFeet('{haunchBoardWidth}', '{haunchBlankLength}', '({haunchSegments}*{haunchRun})')}*${priceAt('{haunchBoardWidth}')})` +
        `+{straightFeet}*${priceAt('{ripped}')})*(1+Shop_waste)`,
    ),
    true,
  ),
  figure(
    'labor',
    'Labor',
    'Price',
    'money',
    (row) => row.cost?.labor,
    whenComplete('{laborMinutes}/60*Shop_shop_rate'),
    true,
  ),
  figure(
    'knifeShare',
    'Share of the knife',
    'Price',
    'money',
    (row) => row.cost?.knifeShare,
    whenComplete('Shop_knife_grinding*{counted}/SUMIFS({counted:all},{knife:all},{knife})'),
    true,
  ),
  figure(
    'setupShare',
    'Share of set-ups',
    'Price',
    'money',
    (row) => row.cost?.setupShare,
    whenComplete(
      '{guideSetups}*((Shop_guide_minutes+Shop_setup_minutes)/60*Shop_shop_rate+Shop_guide_material)+{straightSetups}*Shop_setup_minutes/60*Shop_shop_rate',
    ),
    true,
  ),
  figure(
    'cost',
    'Cost',
    'Price',
    'money',
    (row) => row.cost?.cost,
    whenComplete('{material}+{labor}+{knifeShare}+{setupShare}'),
    true,
  ),
  figure(
    'unitPrice',
    'Unit price',
    'Price',
    'money',
    (row) => row.cost?.unitPrice,
    whenComplete(
      'IF({counted}=0,"",ROUND({cost}/{counted}*IF(Shop_pricing="margin",1/(1-Shop_pricing_rate),1+Shop_pricing_rate),2))',
    ),
  ),
  figure(
    'price',
    'Price',
    'Price',
    'money',
    (row) => row.cost?.price,
    whenComplete('IF({counted}=0,"",ROUND({unitPrice}*{counted},2))'),
    true,
  ),
];

/** Every column of the takeoff from left to right. */
export const TAKEOFF_COLUMNS: readonly TakeoffColumn[] = [
  {
    ...working(
      'row',
      'Source row',
      'Opening',
      'row',
      (row) => row.opening.row,
      () => null,
      7,
    ),
    role: 'figure',
  },
  ...inputs,
  {
    ...figure(
      'needs',
      'Needs',
      'To do',
      'text',
      (row) => sentences(row.needs),
      (row) => {
        const why = quote(row.failure ?? 'The figures can not be computed from these inputs.');
        return `IF({missing}<>"",{missing},IF(OR(ISERROR({length}),ISERROR({blankLength}),ISERROR({haunchBlankLength})),${why},""))`;
      },
    ),
    width: 34,
  },
  {
    ...figure('attention', 'Look at', 'To do', 'text', (row) => sentences(row.attention), attentionFormula),
    width: 34,
  },
  figure(
    'blank',
    'Blank, to 1/16',
    'Ring',
    'text',
    (row, { standards }) => (row.own?.crown ? blankText(row.own.crown.blank.chosen, standards.unit) : null),
    (_row, { standards }) =>
      whenCurved(
        `{segments}&" of "&${sizeTextFormula('{blankWidth}', standards.unit)}&" x "&${sizeTextFormula('{blankLength}', standards.unit)}`,
      )(),
  ),
  ...crown,
  ...lengths,
  ...haunch,
  ...cutting,
  ...wood,
  working('missing', 'Missing inputs', 'To do', 'text', (row) => sentences(row.missing), missingFormula, 20),
  working(
    'counted',
    'Quantity counted',
    'Price',
    'count',
    (row) => row.inputs?.quantity ?? 0,
    () => 'IF({needs}="",{quantity},0)',
  ),
  working(
    'knife',
    'Knife',
    'Price',
    'text',
    (row) => row.own?.knife,
    whenComplete('ROUND({face},3)&" x "&ROUND({thickness},3)&" "&{profile}'),
    24,
  ),
  ...price,
];

function input(
  key: string,
  heading: string,
  measure: ColumnMeasure,
  width: number,
  value: Value,
  formula: TakeoffColumn['formula'] = () => null,
): TakeoffColumn {
  return { key, heading, group: 'Opening', measure, width, role: 'input', value, formula };
}

/** An input the schedule leaves blank follows the shop's standard. */
function standard(key: 'ends' | 'reveal' | 'face' | 'thickness' | 'species' | 'profile'): TakeoffColumn['formula'] {
  return (row) => (row.opening[key] === null && row.known[key] !== null ? `Shop_${key}` : null);
}

function figure(
  key: string,
  heading: string,
  group: string,
  measure: ColumnMeasure,
  value: (row: OpeningTakeoff, takeoff: Takeoff) => string | number | null | undefined,
  formula: TakeoffColumn['formula'],
  total?: true,
): TakeoffColumn {
  const width = measure === 'text' ? 16 : 11;
  return {
    key,
    heading,
    group,
    measure,
    width,
    role: 'figure',
    value: (row, all) => value(row, all) ?? null,
    formula,
    ...(total ? { total } : {}),
  };
}

function working(
  key: string,
  heading: string,
  group: string,
  measure: ColumnMeasure,
  value: (row: OpeningTakeoff, takeoff: Takeoff) => string | number | null | undefined,
  formula: TakeoffColumn['formula'],
  width = 10,
  total?: true,
): TakeoffColumn {
  return { ...figure(key, heading, group, measure, value, formula, total), role: 'working', width };
}

/** A formula that depends on the head. */
function choose(cases: readonly (readonly [head: string, formula: string])[]): string {
  return cases.reduceRight((otherwise, [head, formula]) => `IF({head}="${head}",${formula},${otherwise})`, '""');
}
