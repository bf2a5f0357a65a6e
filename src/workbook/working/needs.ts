import { ENDS, HEAD_SHAPES, type HeadShape } from '../../head/head';
import { ATTENTION } from '../../takeoff/attention';
import { sentences } from '../../takeoff/figures';
import { NEEDS, notInStock, riseNeed, tooThin } from '../../takeoff/inputs';
import { quote } from '../quote';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { HAS_HAUNCH, MULTI_CENTERED, SPECIES_IN_STOCK } from './formulas';
import { mayHaveHaunch } from './ringGroups';

const positive = (cell: string) => `IF(ISNUMBER(${cell}),${cell}>0,FALSE)`;
const notPositive = (cell: string) => `IF(ISNUMBER(${cell}),${cell}<=0,TRUE)`;
const notListed = (cell: string, list: readonly string[]) =>
  `ISNA(MATCH(${cell},{${list.map((item) => `"${item}"`).join(',')}},0))`;

const NOT_HALF_SPAN = 'ABS({rise}-{span}/2)>0.000000001*{span}';
const RISE_MISFIT: Partial<Readonly<Record<HeadShape, string>>> = {
  segmental: '{rise}<=0',
  'half round': NOT_HALF_SPAN,
  elliptical: `NOT(AND({rise}>0,${NOT_HALF_SPAN}))`,
  'three-centered': `NOT(AND({rise}>0,{rise}<{span}/2,${NOT_HALF_SPAN}))`,
  pointed: `NOT(AND({rise}>{span}/2,${NOT_HALF_SPAN}))`,
  'radius corners': 'NOT(AND({rise}>0,{rise}<={span}/2*1.000000001))',
  'full ellipse': 'NOT(AND({rise}>0,ABS({rise}-{span})>0.000000001*{span}))',
  'half segmental': 'NOT(AND({rise}>0,{rise}<={span}*1.000000001))',
  'quarter ellipse': 'NOT(AND({rise}>0,ABS({rise}-{span})>0.000000001*{span}))',
  'four-centered': 'NOT(AND({rise}>0,{rise}<{span}/SQRT(3)))',
  gable: '{rise}<=0',
  'clipped corners': '{rise}<=0',
  shed: '{rise}<=0',
};

const when = (condition: string, sentence: string) => `IF(${condition},${quote(`${sentences([sentence])} `)},"")`;

/** A sentence of need, with what stands in the cell, or the doubt that the cell says itself: as `takeoff/inputs.ts` says it. */
function need(condition: string, cell: string, sentence: string): string {
  const got = `IF(${cell}="",".","; got "&IF(ISNUMBER(${cell}),${cell},CHAR(34)&${cell}&CHAR(34))&".")`;
  const said = `IF(LEFT(${cell},1)="?",IF(TRIM(MID(${cell},2,9))="",${quote(sentence)},TRIM(MID(${cell},2,2000))),${quote(sentence.replace(/\.$/, ''))}&${got})`;
  return `IF(${condition},${said}&" ","")`;
}

/** An input that may be left out, and must be right where it is given. */
const optional = (cell: string, wrong: string, sentence: string) =>
  need(`IF(${cell}="",FALSE,IF(ISNUMBER(${cell}),${wrong},TRUE))`, cell, sentence);

/**
 * What the curve lacks: the sentences of `takeoff/inputs.ts` under the same conditions, so that filling in what was missing
 * clears them.
 */
export function missingShapeFormula(row: OpeningTakeoff): string {
  return mayHaveHaunch(row) ? SHAPE_WITH_HAUNCH : SHAPE_WITHOUT_HAUNCH;
}

function missingShape(haunch: boolean): string {
  const riseOf = (head: HeadShape, otherwise: string) => {
    const blank = head === 'half round' ? '{rise}<>""' : 'TRUE'; // a half round's rise follows its span
    const wrong = `IF(ISNUMBER({rise}),IF(${positive('{span}')},${RISE_MISFIT[head]},FALSE),${blank})`;
    return `IF({head}="${head}",${need(wrong, '{rise}', riseNeed(head) ?? '')},${otherwise})`;
  };
  const noRise = need('IF({rise}="",FALSE,NOT(ISNUMBER({rise})))', '{rise}', NEEDS.rise);
  const parts = [
    ...(haunch ? [] : [when(MULTI_CENTERED, 'This head has haunches: fill the takeoff again.')]),
    need(notListed('{head}', HEAD_SHAPES), '{head}', NEEDS.head),
    need(notListed('{ends}', ENDS), '{ends}', NEEDS.ends),
    need(notPositive('{span}'), '{span}', NEEDS.span),
    HEAD_SHAPES.filter((head) => riseNeed(head) !== null).reduceRight<string>(
      (otherwise, head) => riseOf(head, otherwise),
      noRise,
    ),
    need('IF(ISNUMBER({reveal}),{reveal}<0,TRUE)', '{reveal}', NEEDS.reveal),
    need(notPositive('{face}'), '{face}', NEEDS.face),
    optional('{arcs}', 'ISNA(MATCH({arcs},{3,5,7},0))', NEEDS.arcs),
    optional('{haunch}', '{haunch}<=0', NEEDS.haunch),
  ];
  return `TRIM(${parts.join('&')})`;
}

const SHAPE_WITH_HAUNCH = missingShape(true);
const SHAPE_WITHOUT_HAUNCH = missingShape(false);

/** What stands in a sentence for the opening's own species and thickness, until the formula puts in the cells. */
const SPECIES = '{species}';
const THICKNESS = 9876.5432;

/** A sentence of the core with the cells put in where it names figures. */
function withFigures(sentence: string): string {
  return quote(`${sentence} `).replace(SPECIES, '"&{species}&"').replace(String(THICKNESS), '"&ROUND({thickness},4)&"');
}

/** Everything that is missing: the curve's inputs, and the rest. */
export function missingFormula(): string {
  return MISSING;
}

function missing(): string {
  const thinner = `IF(${positive('{thickness}')},{stockThickness}=0,FALSE)`;
  const isDoubt = 'LEFT({species},1)="?"';
  const species = `IF(AND(${thinner},NOT(${isDoubt})),IF(${SPECIES_IN_STOCK},${withFigures(tooThin(SPECIES, THICKNESS))},${withFigures(notInStock(SPECIES))}),"")`;
  const oddProfile = ['*', '?', '~'].map((sign) => `ISNUMBER(FIND("${sign}",{profile}))`).join(',');
  const tooWide = `IF(AND({stockThickness}>0,${positive('{face}')}),{widest}<={face}+2*Shop_margin,FALSE)`;
  const outside = (cell: string, least: number, most: number) =>
    `OR(${cell}<${least},${cell}>${most},${cell}<>INT(${cell}))`;
  const parts = [
    need('IF(ISNUMBER({quantity}),OR({quantity}<1,{quantity}<>INT({quantity})),TRUE)', '{quantity}', NEEDS.quantity),
    need(notPositive('{thickness}'), '{thickness}', NEEDS.thickness),
    need('IF(ISNUMBER({leg}),{leg}<0,TRUE)', '{leg}', NEEDS.leg),
    optional('{otherLeg}', '{otherLeg}<0', NEEDS.otherLeg),
    optional('{segmentsWanted}', outside('{segmentsWanted}', 1, 200), NEEDS.segmentsWanted),
    need(`IF(ISNUMBER({sides}),${outside('{sides}', 1, 2)},TRUE)`, '{sides}', NEEDS.sides),
    need(`OR({profile}="",${oddProfile})`, '{profile}', NEEDS.profile),
    need(`OR({species}="",${isDoubt})`, '{species}', NEEDS.species),
    species,
    when(tooWide, NEEDS.width),
  ];
  return `TRIM({missingShape}&" "&${parts.join('&')})`;
}

const MISSING = missing();

/** What is missing, or why the figures fail although nothing is. */
export function needsFormula(row: OpeningTakeoff): string {
  const why = quote(row.failure ?? 'The figures can not be computed from these inputs.');
  const fails = 'OR(ISERROR({length}),ISERROR({blankLength}),ISERROR({haunchBlankLength}))';
  return `IF({missing}<>"",{missing},IF(${fails},${why},""))`;
}

/** The sentences of `takeoff/attention.ts` under the same conditions. */
export function attentionFormula(row: OpeningTakeoff): string {
  const { short, tight, wide, ellipse, finish, legless, unmitered, level, oneLeg } = ATTENTION;
  const haunch = HAS_HAUNCH;
  const run = (inside: string, angle: string) => `RADIANS(${angle})*(${inside}+{face}/2)<Shop_shortest_piece`;
  const tightest = 'MIN({insideRadius},{haunchInsideRadius})';
  const curved = [
    when(
      `IF(${run('{insideRadius}', '{blankAngle}')},TRUE,IF(${haunch},${run('{haunchInsideRadius}', '{haunchBlankAngle}')},FALSE))`,
      short,
    ),
    when(`${tightest}<Shop_smallest_radius`, tight),
    when('{face}+2*Shop_margin>Shop_widest_face', wide),
    ...(row.known.head === 'elliptical'
      ? [when('IF({head}="elliptical",INDEX(ARCH.HEADARCS({head},{span},{rise}),1,4)>Shop_deviation,FALSE)', ellipse)]
      : []),
  ];
  const always = [
    when('{cutsFewest}<15', finish),
    when(
      'IF(AND({head}="segmental",{ends}="level"),{length}>1.25*ARCH.HEADLENGTH({head},{span},{rise},{reveal}+{face},"radial"),FALSE)',
      level,
    ),
    when('AND({ends}="legs",{leg}=0,{head}<>"round")', legless),
    when('AND({ends}<>"legs",{ends}<>"mitered",{leg}>0,{head}="quarter round")', oneLeg),
    when('AND({ends}<>"legs",{ends}<>"mitered",{leg}>0,{head}="segmental")', unmitered),
  ];
  return `IF({needs}<>"","",TRIM(IF({radius}="","",${curved.join('&')})&${always.join('&')}))`;
}
