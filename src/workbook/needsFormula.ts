import { ENDS, HEAD_SHAPES } from '../head/head';
import type { OpeningField, Problem } from '../schedule/opening';
import { ATTENTION } from '../takeoff/attention';
import { NEEDS, notInStock, saidByField, tooThin, type RiseHead } from '../takeoff/inputs';
import type { OpeningTakeoff } from '../takeoff/takeoff';
import { HAS_HAUNCH, MULTI_CENTERED, SPECIES_IN_STOCK } from './columns/formulas';
import { mayHaveHaunch } from './columns/ringGroups';

/** Sentences in one cell. Runs of spaces are folded as TRIM folds them. */
export function sentences(said: readonly string[]): string {
  return said.join(' ').replace(/ +/g, ' ').trim();
}

/**
 * Text as a formula writes it. A literal holds at most 255 characters, so longer text is joined from parts. Quotation marks
 * go in by code: the workbench's grid loses the names that follow a doubled one.
 */
export function quote(text: string): string {
  const parts = text
    .split('"')
    .flatMap((part, at) => [
      ...(at > 0 ? ['CHAR(34)'] : []),
      ...(part.match(/[^]{1,250}/g) ?? []).map((piece) => `"${piece}"`),
    ]);
  return parts.join('&') || '""';
}

const positive = (cell: string) => `IF(ISNUMBER(${cell}),${cell}>0,FALSE)`;
const notPositive = (cell: string) => `IF(ISNUMBER(${cell}),${cell}<=0,TRUE)`;
const notListed = (cell: string, list: readonly string[]) =>
  `ISNA(MATCH(${cell},{${list.map((item) => `"${item}"`).join(',')}},0))`;

const NOT_HALF_SPAN = 'ABS({rise}-{span}/2)>0.000000001*{span}';
const RISE_MISFIT: Readonly<Record<RiseHead, string>> = {
  segmental: '{rise}<=0',
  'half round': NOT_HALF_SPAN,
  elliptical: `NOT(AND({rise}>0,${NOT_HALF_SPAN}))`,
  'three-centered': `NOT(AND({rise}>0,{rise}<{span}/2,${NOT_HALF_SPAN}))`,
  pointed: `NOT(AND({rise}>{span}/2,${NOT_HALF_SPAN}))`,
};

/** Sentences said of an opening's inputs by its reader, which stand in for the general ones. */
class Said {
  private readonly sentences: ReadonlyMap<OpeningField, string>;

  constructor(problems: readonly Problem[]) {
    this.sentences = saidByField(problems);
  }

  has(field: OpeningField): boolean {
    return this.sentences.has(field);
  }

  /** The sentence, where the condition holds. */
  need(condition: string, field: OpeningField, sentence: string): string {
    return when(condition, this.sentences.get(field) ?? sentence);
  }
}

const when = (condition: string, sentence: string) => `IF(${condition},${quote(`${sentences([sentence])} `)},"")`;

/**
 * What the curve lacks: the sentences of `takeoff/inputs.ts` under the same conditions, so that filling in what was missing
 * clears them. Most rows have nothing of their own to say, and share one of two formulas.
 */
export function missingShapeFormula(row: OpeningTakeoff): string {
  if (row.opening.problems.length > 0) return missingShape(new Said(row.opening.problems), mayHaveHaunch(row));
  return mayHaveHaunch(row) ? SHAPE_WITH_HAUNCH : SHAPE_WITHOUT_HAUNCH;
}

function missingShape(said: Said, haunch: boolean): string {
  const riseOf = (head: RiseHead, otherwise: string) => {
    const misfit = `IF(ISNUMBER({rise}),IF(${positive('{span}')},${RISE_MISFIT[head]},FALSE),TRUE)`;
    return `IF({head}="${head}",${said.need(misfit, 'rise', NEEDS.rise[head])},${otherwise})`;
  };
  const noRise = said.has('rise') ? said.need('NOT(ISNUMBER({rise}))', 'rise', NEEDS.rise.segmental) : '""';
  const parts = [
    ...(haunch ? [] : [when(MULTI_CENTERED, 'This head has haunches: fill the takeoff again.')]),
    said.need(notListed('{head}', HEAD_SHAPES), 'head', NEEDS.head),
    said.need(notListed('{ends}', ENDS), 'ends', NEEDS.ends),
    said.need(notPositive('{span}'), 'span', NEEDS.span),
    (Object.keys(NEEDS.rise) as RiseHead[]).reduceRight((otherwise, head) => riseOf(head, otherwise), noRise),
    said.need('IF(ISNUMBER({reveal}),{reveal}<0,TRUE)', 'reveal', NEEDS.reveal),
    said.need(notPositive('{face}'), 'face', NEEDS.face),
  ];
  return `TRIM(${parts.join('&')})`;
}

const SHAPE_WITH_HAUNCH = missingShape(new Said([]), true);
const SHAPE_WITHOUT_HAUNCH = missingShape(new Said([]), false);

/** Everything that is missing: the curve's inputs, and the rest. */
export function missingFormula(row: OpeningTakeoff): string {
  return row.opening.problems.length > 0 ? missing(new Said(row.opening.problems)) : NOTHING_SAID;
}

/** What stands in a sentence for the opening's own species and thickness, until the formula puts in the cells. */
const SPECIES = '{species}';
const THICKNESS = 9876.5432;

/** A sentence of the core with the cells put in where it names figures. */
function withFigures(sentence: string): string {
  return quote(`${sentence} `).replace(SPECIES, '"&{species}&"').replace(String(THICKNESS), '"&ROUND({thickness},4)&"');
}

function missing(said: Said): string {
  const thinner = `IF(${positive('{thickness}')},{stockThickness}=0,FALSE)`;
  const species =
    `IF({species}="",${said.need('TRUE', 'species', NEEDS.species)},` +
    `IF(${thinner},IF(${SPECIES_IN_STOCK},${withFigures(tooThin(SPECIES, THICKNESS))},${withFigures(notInStock(SPECIES))}),""))`;
  const oddProfile = ['*', '?', '~'].map((sign) => `ISNUMBER(FIND("${sign}",{profile}))`).join(',');
  const tooWide = `IF(AND({stockThickness}>0,${positive('{face}')}),{widest}<={face}+2*Shop_margin,FALSE)`;
  const parts = [
    ...(said.has('mark') ? [said.need('SUMPRODUCT(--({mark:all}={mark}))>1', 'mark', NEEDS.mark)] : []),
    said.need('IF(ISNUMBER({quantity}),OR({quantity}<1,{quantity}<>INT({quantity})),TRUE)', 'quantity', NEEDS.quantity),
    said.need(notPositive('{thickness}'), 'thickness', NEEDS.thickness),
    said.need('IF(ISNUMBER({leg}),{leg}<0,TRUE)', 'leg', NEEDS.leg),
    said.need(`OR({profile}="",${oddProfile})`, 'profile', NEEDS.profile),
    species,
    when(tooWide, NEEDS.width),
  ];
  return `TRIM({missingShape}&" "&${parts.join('&')})`;
}

const NOTHING_SAID = missing(new Said([]));

/** What is missing, or why the figures fail although nothing is. */
export function needsFormula(row: OpeningTakeoff): string {
  const why = quote(row.failure ?? 'The figures can not be computed from these inputs.');
  const fails = 'OR(ISERROR({length}),ISERROR({blankLength}),ISERROR({haunchBlankLength}))';
  return `IF({missing}<>"",{missing},IF(${fails},${why},""))`;
}

/** The sentences of `takeoff/attention.ts` under the same conditions. */
export function attentionFormula(row: OpeningTakeoff): string {
  const { short, tight, wide, ellipse, finish, legless, unmitered } = ATTENTION;
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
    when('{cutsOutside}<15', finish),
    when('AND({ends}="legs",{leg}=0,{head}<>"round")', legless),
    when('AND({ends}<>"legs",{leg}>0,OR({head}="segmental",{head}="straight"))', unmitered),
  ];
  return `IF({needs}<>"","",TRIM(IF({radius}="","",${curved.join('&')})&${always.join('&')}))`;
}
