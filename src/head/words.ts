import { figure, quoted } from '../require';
import { ok, refuse, type Result } from '../result';
import { ENDS, HEAD_SHAPES, type Ends, type HeadShape } from './head';
import { equilateralRise } from './pointed';
import { SHAPES } from './shapes';

const ENDS_WORDS: Readonly<Record<Ends, string>> = {
  radial: 'radial radially radialends onradialline onradiallines radius rad squareends squarecut squarecuts',
  level:
    'level levelends levelcut levelcuts levelcutends horizontal springline onspringline cutonspringline atspringline cutlevel',
  legs: 'legs leg miteredlegs mitredlegs miteredtolegs mitredtolegs mitertolegs withlegs tolegs onlegs sidelegs',
  mitered: 'mitered mitred miter mitre miters mitres miteredcorners mitredcorners miteredends mitredends',
  'over legs': 'overlegs overleg overthelegs ontopoflegs onlegtops headoverlegs overlaps buttover',
  'between legs': 'betweenlegs betweenleg betweenthelegs between headbetweenlegs buttbetween insidelegs',
  square: 'square sq squared asopening openingwidth',
};

/** Each spelling with the name it stands for: a takeoff looks up thousands. */
function bySpelling<Name extends string>(
  names: readonly Name[],
  words: (name: Name) => string,
): ReadonlyMap<string, Name> {
  return new Map(
    names.flatMap((name) =>
      words(name)
        .split(' ')
        .map((word) => [word, name] as const),
    ),
  );
}
const SHAPE_OF = bySpelling(HEAD_SHAPES, (name) => SHAPES[name].spellings);
const ENDS_OF = bySpelling(ENDS, (name) => ENDS_WORDS[name]);

/** Names of curves that aren't made here, and what is needed in their place. */
const NOT_MADE: readonly { readonly words: RegExp; readonly needs: string }[] = [
  {
    words: /^(?:ogee|ogees|reversecurve|reversedcurve|serpentine|keel|keelarch|ogeearch)$/,
    needs: 'an ogee is a reversed curve whose centers are free: give a full-size drawing of it',
  },
  {
    words: /^(?:parabola|parabolic|parabolicarch)$/,
    needs:
      'a parabola is not run here: give a full-size drawing, or say elliptical or segmental where one of these is meant',
  },
  {
    words: /^(?:catenary|catenaryarch|invertedcatenary)$/,
    needs:
      'a catenary is not run here: give a full-size drawing, or say elliptical or segmental where one of these is meant',
  },
  {
    words: /^horseshoe$/,
    needs:
      'a horseshoe is a segmental head higher than half its span: say "horseshoe at spring" where the width is taken at the spring line, or "horseshoe at widest"',
  },
  {
    words: /^(?:(?:curved|bowed|bow|radius|radiused|arched|round|bent)?(?:in|on)plan|bow|bowwindow|bay|baywindow)$/,
    needs: 'a curve in plan, seen from above, is not run here: give a drawing of it',
  },
  {
    words:
      /^(?:jambs?|jambextensions?|extensionjambs?|jambliners?|sills?|windowsills?|brickmou?lds?|brickmou?ldings?)$/,
    needs: 'jambs, jamb extensions, sills and brick molding in the wall are not run here: leave the row out',
  },
];

/** What the words of a head say: its shape, and what some of them say besides. */
export interface HeadWords {
  readonly shape: HeadShape;
  /** "eyebrow on legs" says how the arc stops. */
  readonly ends: Ends | null;
  /** "equilateral" says how high it is, by the span. */
  readonly riseOf: ((span: number) => number) | null;
  /** "horseshoe at widest": the width is given where it is widest, and the span follows from it; refused where it can't be. */
  readonly spanOf: ((widest: number, rise: number) => Result<number>) | null;
}

/** Behind a head's name, that it stands on legs. */
const ON_LEGS = /[\s,;-]+(?:on|w\/|w\/o?n|with|and|\+|&|w)\s*(?:side\s+|straight\s+)?legs?\s*$/i;

/**
 * A head from the words of a schedule: letter case, spaces, hyphens and periods are forgiven, "head", "arch", "top" or "window"
 * may follow, and "on legs" or "w/ legs" behind those. `readHeadWords('eyebrow on legs')` is segmental with ends legs,
 * `readHeadWords('equilateral')` pointed with a rise of √3/2 of the span.
 */
export function readHeadWords(text: string): Result<HeadWords> {
  const legs = text.length <= LONGEST_TEXT && ON_LEGS.test(text);
  const named = legs ? text.replace(ON_LEGS, '') : text;
  if (AT_WIDEST.test(plainWord(named))) {
    return ok({ shape: 'segmental', ends: legs ? 'legs' : null, riseOf: null, spanOf: spanOfWidest });
  }
  if (STRAIGHT_STOCK.test(plainWord(named))) {
    return ok({ shape: 'straight', ends: legs ? null : 'square', riseOf: null, spanOf: null });
  }
  const shape = find(SHAPE_OF, named) ?? saidTwice(named);
  if (shape) {
    const equilateral = shape === 'pointed' && /equilateral/i.test(named);
    return ok({ shape, ends: legs ? 'legs' : null, riseOf: equilateral ? equilateralRise : null, spanOf: null });
  }
  const needs = curveNotMade(named);
  if (needs !== null) return refuse(`head ${quoted(text)} can't be taken as it is: ${needs}`);
  return refuse(`head must be one of ${HEAD_SHAPES.join(', ')}; got ${quoted(text)}`);
}

/** Straight molding by the piece: as long as it is said to be, both ends square. */
const STRAIGHT_STOCK =
  /^(?:straight|lineal|linear)(?:mo?u?ldings?|footage|stock|casings?|trim|pieces?|sticks?|lengths?|runs?|lf|feet)$/;

const AT_WIDEST = /^horseshoe(?:width)?at(?:its)?widest$/;

/**
 * Width at the spring line of a horseshoe that is `widest` = 2R where it is widest and `rise` = h high: 2·√(h·(2R − h)), for a
 * rise of more than R and less than 2R. Example: 30 wide at its widest, 24 high: 24.
 */
function spanOfWidest(widest: number, rise: number): Result<number> {
  if (!(rise > widest / 2 && rise < widest)) {
    return refuse(
      `rise of a horseshoe ${figure(widest)} wide at its widest must be more than ${figure(widest / 2)} and less than ${figure(widest)}; got ${figure(rise)}`,
    );
  }
  return ok(2 * Math.sqrt(rise * (widest - rise)));
}

/** What is needed in place of a curve that isn't made here, ogee or horseshoe; null for any other text. */
export function curveNotMade(text: string): string | null {
  const word = plainWord(text);
  const known = NOT_MADE.find(({ words }) => words.test(word) || words.test(word.replace(TRAILING, '')));
  return known?.needs ?? null;
}

/** The shape alone: `readHead('Half-Round')` is 'half round', `readHead('gothic arch')` is 'pointed'. */
export function readHead(text: string): Result<HeadShape> {
  const words = readHeadWords(text);
  return words.ok ? ok(words.value.shape) : words;
}

/** How the arc stops, from words: `readEnds('Mitered legs')` is 'legs'. */
export function readEnds(text: string): Result<Ends> {
  const ends = find(ENDS_OF, text);
  return ends ? ok(ends) : refuse(`ends must be one of ${ENDS.join(', ')}; got ${quoted(text)}`);
}

/** Longer text names no shape, and would only take time. */
const LONGEST_TEXT = 60;

/** What may stand behind a shape's name without changing it. */
const TRAILING = /(archedhead|arch|head|top|window|opening)$/;
/** Behind a full circle's name these say that it is none: a "circular arch" may be any part of one. */
const OF_PART = /(?:arch|head|top)$/;

function find<Name extends string>(words: ReadonlyMap<string, Name>, text: string): Name | null {
  if (text.length > LONGEST_TEXT) return null;
  const asIs = words.get(text);
  if (asIs) return asIs;
  let word = plainWord(text);
  let isPart = false;
  // "half round arch head" is found by its shorter forms, the longest first: "arch" alone is a word of its own.
  for (;;) {
    const name = words.get(word);
    if (name || word === '') return name === undefined || (name === 'round' && isPart) ? null : name;
    const shorter = word.replace(TRAILING, '');
    if (shorter === word) return null;
    isPart ||= OF_PART.test(word);
    word = shorter;
  }
}

/** `Segmental (eyebrow)`: two names of one shape. */
function saidTwice(text: string): HeadShape | null {
  const [, one = '', other = ''] = (text.length > LONGEST_TEXT ? null : /^([^()]+)\(([^()]+)\)$/.exec(text)) ?? [];
  const shape = find(SHAPE_OF, one);
  return shape !== null && shape === find(SHAPE_OF, other) ? shape : null;
}

/** Letters, digits and slashes alone, the trailing words in the singular. */
function plainWord(text: string): string {
  if (text.length > LONGEST_TEXT) return '';
  return text
    .toLowerCase()
    .replace(/\bthe\b/g, '')
    .replace(/½/g, '1/2')
    .replace(/¼/g, '1/4')
    .replace(/[^a-z0-9/]/g, '')
    .replace(/(arch|head|top|window|opening)e?s$/, '$1');
}
