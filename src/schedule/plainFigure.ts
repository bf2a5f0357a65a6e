import { cellText } from './cell';
import { quote } from './figure';
import type { CellValue } from './opening';
import { straightMarks } from './straightMarks';

/** A figure freed of the words about it. */
export interface PlainFigure {
  readonly cell: CellValue;
  /** What stood beside it, for a note; with `choices` the question whether the figure is meant. */
  readonly said: string | null;
  readonly choices: readonly string[] | null;
  /** The way of writing that leaves the question: figures written alike are asked about together. Null where nothing is asked. */
  readonly manner: string | null;
}

const LONGEST_TEXT = 60;
/** Words for the same about a figure. */
const MANNERS: Readonly<Record<string, string>> = {
  ...{ '': 'about', approx: 'about', approximate: 'about', abt: 'about', ca: 'about', c: 'about', est: 'about' },
  ...{ nom: 'nominal', clr: 'clear', typ: 'typical', fin: 'finished' },
};
/** A point or a comma that may part thousands. */
export const POINT = 'point';
/** Feet and inches without their marks. */
export const DASHED_FEET = 'feet-inches';
/** To be measured again: the figure is the one there is. */
const TO_VERIFY = /\s*[([]?\s*(?:v\.?i\.?f\.?|verify(?: in field)?|field verify|f\.?v\.?)\s*[)\]]?\s*$/i;
/** A figure that is not the real one. */
const ABOUT =
  /^\s*(?:~|≈|±|\+\/-|approx\.?|about|abt\.?|ca\.?|c\.(?= ?\d)|est\.?)\s*(?=\d)|\s*[([]?\s*(?:nom(?:inal)?\.?|clear|clr\.?|typ\.?|net|fin(?:ished|\.)?|max\.?|min\.?|approx(?:\.|imate)?|\+\/-|±|est\.?|\?+)\s*[)\]]?\s*$/i;
/** `1 000` and `1 250`: thousands parted by a space, as metric lists write them. */
const SPACED = /^(\d{1,3})((?: \d{3})+)(?=\s*(?:mm)?$)/;
/** `1.200 mm`: one and a fifth, or twelve hundred. */
const POINT_OR_THOUSANDS = /^(\d{1,3})\.(\d{3})(\s*mm)$/i;
/** `36,5` and `91,5 cm`. */
const DECIMAL_COMMA = /^(\d{1,6}),(\d{1,4})(\s*(?:mm|cm|m|in\.?|"))?$/i;
/** `Ø36`, `dia. 36`, `36 dia`. */
const SIGN = /^(?:[ø⌀∅]|dia\.?|diam\.?)\s*(?=\d)|\s*(?:[ø⌀∅]|dia\.?|diam\.?)$/i;

/** `36 (VIF)` is 36 and says so; `~36`, `36 nom.` and `1.200 mm` are asked about, with what they may mean as choices. */
export function plainFigure(cell: CellValue, name: string, comma = false): PlainFigure {
  const asIs = { cell, said: null, choices: null, manner: null };
  if (typeof cell !== 'string' || cell.length > LONGEST_TEXT) return asIs;
  const text = straightMarks(cellText(cell));
  if (comma) {
    const inCommas = ofCommas(text, name);
    if (inCommas !== null) return inCommas;
  }
  if (/^[\d.]+$/.test(text)) return asIs;
  const thousands = POINT_OR_THOUSANDS.exec(text);
  if (thousands !== null) {
    const [, whole = '', rest = '', unit = ''] = thousands;
    const choices = [`${whole}${rest}${unit}`, `${whole}.${rest}${unit}`];
    return {
      cell: choices[0] ?? text,
      said: `${name} ${quote(text)} may be ${choices.join(' or ')}; please say which.`,
      choices,
      manner: POINT,
    };
  }
  const spaced = SPACED.exec(text);
  if (spaced !== null)
    return {
      cell: text.replace(SPACED, (found) => found.replace(/ /g, '')),
      said: `${name} is written ${quote(text)}.`,
      choices: null,
      manner: null,
    };
  if (TO_VERIFY.test(text) && /\d/.test(text)) {
    const inner = plainFigure(text.replace(TO_VERIFY, ''), name, comma);
    return { ...inner, said: inner.said ?? `${name} is written ${quote(text)}.` };
  }
  const about = /\d/.test(text) ? ABOUT.exec(text) : null;
  if (about !== null) {
    const figure = text.replace(ABOUT, '').trim();
    const inCommas = comma ? ofCommas(figure, name) : null;
    const cell = inCommas === null ? figure : cellText(inCommas.cell);
    const choices = inCommas?.choices ?? [cell];
    return {
      cell,
      said: `${name} is given as ${quote(text)}; is it ${choices.join(' or ')}?`,
      choices,
      manner: choices.length > 1 ? POINT : mannerOf(about[0]),
    };
  }
  if (name === 'Diameter' && SIGN.test(text)) return { ...asIs, cell: text.replace(SIGN, '') };
  return asIs;
}

/** `3-0`: in a column of inches nothing but feet and inches, and asked about all the same; null where it is none. */
export function dashedFeet(cell: CellValue, name: string): PlainFigure | null {
  const parts = /^(\d{1,2})-(\d{1,2})$/.exec(cellText(cell));
  if (parts === null || Number(parts[2]) > 11) return null;
  const meant = `${parts[1]}'-${parts[2]}"`;
  const said = `${name} is given as ${quote(cellText(cell))}; is it ${meant}?`;
  return { cell: meant, said, choices: [meant], manner: DASHED_FEET };
}

/** `~` and `approx.` are one manner, `nom.` another. */
function mannerOf(written: string): string {
  if (written.includes('?')) return 'unsure';
  const word = written.toLowerCase().replace(/[^a-z]/g, '');
  return MANNERS[word] ?? word;
}

/** In a list with decimal commas a point parts thousands; one that can't is asked about, and so is a comma that may part them, too. */
function ofCommas(text: string, name: string): PlainFigure | null {
  const decimal = DECIMAL_COMMA.exec(text);
  if (decimal !== null) {
    const [, whole = '', part = '', unit = ''] = decimal;
    const cell = `${whole}.${part}${unit}`;
    const choices = [`${whole}${part}${unit}`, cell];
    if (part.length !== 3 || whole === '0') return { cell, said: null, choices: null, manner: null };
    return {
      cell,
      said: `${name} is ${quote(text)}, which may be ${choices.join(' or ')}; please say which.`,
      choices,
      manner: POINT,
    };
  }
  const grouped = /^(\d{1,3}(?:\.\d{3})+)(,\d+)?(\s*mm)?$/i.exec(text);
  if (grouped !== null) {
    const [, whole = '', rest = '', unit = ''] = grouped;
    const figure = `${whole.replaceAll('.', '')}${rest.replace(',', '.')}${unit}`;
    return {
      cell: figure,
      said: `${name} is written ${quote(text)}, which is ${figure} in a list with decimal commas.`,
      choices: null,
      manner: null,
    };
  }
  if (!/^\d+\.\d+$/.test(text)) return null;
  const choices = [text.replace('.', ''), text];
  return {
    cell: text,
    said: `${name} is ${quote(text)} among figures with decimal commas; please say what it is.`,
    choices,
    manner: POINT,
  };
}

/** The figure of a diameter's cell, without its sign; null where it has none. */
export function diameterOf(cell: CellValue): string | null {
  const text = straightMarks(cellText(cell));
  return text.length <= LONGEST_TEXT && SIGN.test(text) ? text.replace(SIGN, '') : null;
}

const WIDTH_AND_WORDS = /^(\d[\d\s/.-]*(?:"|''|in\.?|mm)?)[\s,]+(?!x\b|by\b|mm\b|cm\b|in\b|ft\b)([a-z][a-z ,/-]*)$/i;

/** `4 1/4 poplar` under Casing: a width, and what else it says; null for any other text. */
export function widthAndWords(text: string): { readonly width: string; readonly words: string } | null {
  if (text.length > LONGEST_TEXT) return null;
  const [, width = '', words = ''] = WIDTH_AND_WORDS.exec(straightMarks(text)) ?? [];
  return words === '' ? null : { width: width.trim(), words: words.trim() };
}

/** A casing's width beside other words. */
export function ofWords(cell: CellValue, width: string): PlainFigure {
  const said = `Casing width is given as ${quote(cellText(cell))}; is it ${width}?`;
  return { cell: width, said, choices: [width], manner: 'with words' };
}

/** What a cell of sizes holds beside width and height. */
export interface SizeParts {
  readonly size: CellValue;
  readonly rise: string | null;
  readonly radius: string | null;
  readonly diameter: string | null;
  /** How many units a call-out such as `3-2868` puts side by side. */
  readonly ganged: number | null;
}

const THIRD =
  /^(.+?[x×X].+?)\s*[x×X,;w/@]+\s*(?:(\d[\d\s./'"-]*(?:mm|cm|in)?)\s*(rise|rad(?:ius)?|r)\.?|(rise|rad(?:ius)?|r)\.?\s*=?\s*(\d[\d\s./'"-]*(?:mm|cm|in)?))$/i;

/** `30 x 60 x 6 rise`, `3/0 6/8`, `Ø36`, `3-2868`: a size, and what stands beside it. */
export function sizeParts(cell: CellValue): SizeParts {
  const none = { size: cell, rise: null, radius: null, diameter: null, ganged: null };
  const text = straightMarks(cellText(cell));
  if (typeof cell !== 'string' || text.length > LONGEST_TEXT) return none;
  const diameter = diameterOf(cell);
  if (diameter !== null) return { ...none, diameter };
  const ganged = /^(\d{1,2})\s*-\s*\d{4}$/.exec(text);
  if (ganged !== null) return { ...none, ganged: Number(ganged[1]) };
  if (/^\d{1,2}\/\d{1,2}\s+\d{1,2}\/\d{1,2}$/.test(text)) return { ...none, size: text.replace(/\s+/, ' x ') };
  const third = THIRD.exec(text);
  if (third === null) return none;
  const [, size = '', before, word, name, behind] = third;
  const figure = (before ?? behind ?? '').trim();
  return (word ?? name ?? '').toLowerCase() === 'rise'
    ? { ...none, size, rise: figure }
    : { ...none, size, radius: figure };
}
