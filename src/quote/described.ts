import { readDimension, readDimensionIn } from '../dimension';
import { inWorkbookUnit, type ColumnUnit } from '../schedule/columnUnit';
import { straightMarks } from '../schedule/straightMarks';
import { bare, perInch, type Unit } from '../unit';
import { ANNOUNCES } from './marks';
import type { Described, LengthBasis, RadiusBasis } from './quote';

/** Longer descriptions are read so far. */
const LONGEST_TEXT = 400;

const FRACTION = String.raw`\d+\s*/\s*(?:2|4|8|16|32|64)(?!\d)`;
const MIXED = String.raw`\d+(?:\s*-\s*|\s+)${FRACTION}`;
const NUMBER = String.raw`(?:${MIXED}|${FRACTION}|\d*\.\d+|\d+(?:,\d{3})*(?:\.\d+)?)`;
const INCH = String.raw`(?:"|''|inches\b|inch\b|in\b\.?(?!\s+[a-z]))`;
const FOOT = String.raw`(?:'(?!')|feet\b|foot\b|ft\b\.?)`;
/** A dimension in a text: feet and inches, or a figure with or without a unit. */
const DIMENSION = new RegExp(
  String.raw`(\d+(?:\.\d+)?)\s*${FOOT}\s*-?\s*(${NUMBER})\s*${INCH}|(${NUMBER})\s*(mm\b|cm\b|lf\b|l\.f\.|lin(?:eal|ear)?\.? (?:ft|feet|foot)\b|${FOOT}|${INCH})?`,
  'gi',
);

interface Found {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly value: number;
  /** It has a unit of its own. */
  readonly unit: boolean;
  readonly whole: boolean;
}

/**
 * "2/43.36" and 2/5'-0" are counts before a length, no fractions; "36W 6R" is width and rise; 60/15 behind the name of a head a size, 4/0
 * before "opening" four feet; "two legs" are 2.
 */
function spelledOut(text: string): string {
  return text
    .replace(/\b(?:two|pair of|pr of) (?=legs?\b|heads?\b|arch)/gi, '2 ')
    .replace(/(?<!\d[- ]|\/)\b(\d{1,2})\/(1[0-2]|\d)(?= (?:opg|opng|opening|window|wide|w)\b)/gi, `$1'-$2"`)
    .replace(/\b(\d{2,3})\/(\d{1,3})(?![\d"'/.])(?=\s*(?:$|[,;)]|hd\b|head|csg|casing))/g, (all, wide, high) =>
      Number(wide) > Number(high) ? `${wide} x ${high}` : all,
    )
    .replace(/\blegs?,?\s*([1-9])\/(?=\d+(?:'|"|[- ]\d))/gi, '$1 legs at ')
    .replace(/\b([4-9]|1[02468]?)\/4 ?x ?\d+(?=\s|,|$)/g, '')
    .replace(/^(\d{1,2})\/(?=\d+'|\d+\.\d+(?:"| ?in\b))/, '($1) @ ')
    .replace(/([\s,;(])\d{1,2}\/(?=\d+'|\d+\.\d+(?:"| ?in\b))/g, '$1')
    .replace(/(\d)\s?W\s+(\d+(?:[- ]\d+\/\d+|\.\d+)?)\s?R(?!\w)/g, '$1 wide x $2 rise');
}

/**
 * The figures in a line's words, each with what the words beside it say that it is: `R 18 3/16`, `68 1/8" LP`, `3/4 x 3-1/2`,
 * `36" wide`, `(2) legs 60"`. Names, numbers of profiles, wood sold as `5/4` and counts of days are left out; a figure that no
 * word explains is `unknown`. `isMark` says which words are marks of openings, `noted` is the unit of the whole quote.
 */
export function describedIn(
  description: string,
  unit: Unit,
  isMark: (word: string) => boolean,
  noted: ColumnUnit | null = null,
): readonly Described[] {
  const text = spelledOut(fractions(straightMarks(description.slice(0, LONGEST_TEXT))).replace(/[×✕]/g, 'x'));
  const found = dimensionsIn(text, unit, isMark, noted);
  const said: Described[] = [];
  for (let at = 0; at < found.length; at++) {
    const group = [found[at]!];
    while (
      at + 1 < found.length &&
      /^\s*(?:wide|w|thick|high|h|rise|deep)?\.?\s*(?:x|by)\s*$/i.test(
        text.slice(found[at]!.end, found[at + 1]!.start),
      ) &&
      group.length < 3
    )
      group.push(found[++at]!);
    const before = text.slice(found[at - group.length]?.end ?? 0, group[0]!.start);
    const after = text.slice(group.at(-1)!.end, found[at + 1]?.start ?? text.length);
    const written = text.slice(group[0]!.start, group.at(-1)!.end).trim();
    said.push(
      ...(group.length > 1 ? several(group, before, after, text, unit) : one(group[0]!, before, after, written, unit)),
    );
  }
  return said;
}

const CHARACTERS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⁄': '/',
};
function fractions(text: string): string {
  return text.replace(/(\d?)([½¼¾⅛⅜⅝⅞⁄])/g, (_all, digit: string, character: string) =>
    character === '⁄' ? `${digit}/` : `${digit}${digit === '' ? '' : ' '}${CHARACTERS[character]!}`,
  );
}

function dimensionsIn(text: string, unit: Unit, isMark: (word: string) => boolean, noted: ColumnUnit | null): Found[] {
  const found: Found[] = [];
  for (const match of text.matchAll(DIMENSION)) {
    const start = match.index;
    const written = match[0].trimEnd();
    const end = start + written.length;
    const word = /[\w./#-]*$/.exec(text.slice(0, start))![0] + written.trim() + /^[\w/-]*/.exec(text.slice(end))![0];
    // 109" is no mark 109.
    const measured = match[1] !== undefined || match[4] !== undefined;
    const isOpening = !measured && namesMark(text, start, word.replace(/[.,-]+$/, ''), isMark);
    if (isOpening || isName(text, start, end, written)) continue;
    const value = lengthOf(match, unit, noted);
    if (value === null) continue;
    found.push({
      text: written.trim(),
      start,
      end,
      value,
      unit: measured,
      whole: /^\d+$/.test(written.trim()),
    });
  }
  return found;
}

/** "W3", "W 3", "W-3", and "opening 3" where that is one of the marks. */
function namesMark(text: string, start: number, word: string, isMark: (word: string) => boolean): boolean {
  const before = /([\w#]+)[\s-]*$/.exec(text.slice(0, start))?.[1] ?? '';
  if (/^\d+$/.test(word))
    return (
      (/^[a-z]{1,3}$/i.test(before) && isMark(`${before} ${word}`)) ||
      ((ANNOUNCES.test(before) || /^(?:for|at)$/i.test(before)) && isMark(word))
    );
  return isMark(word);
}

function lengthOf(match: RegExpMatchArray, unit: Unit, noted: ColumnUnit | null): number | null {
  const [, feet, inches, figure, named] = match;
  if (feet !== undefined) {
    const more = readDimension(inches!.replace(/\s*\/\s*/, '/'));
    return more.ok ? (Number(feet) * 12 + bare(more.value)) * perInch(unit) : null;
  }
  const plain = figure!
    .replace(/\s*\/\s*/, '/')
    .replace(/,(?=\d{3})/g, '')
    .replace(/\s*-\s*(?=\d+\/)/, ' ');
  const read = /^\d+\/\d+$/.test(plain) ? null : readDimensionIn(plain, { answer: 'in' });
  const value = read === null ? fractionOf(plain) : read.ok ? read.value : null;
  if (value === null || !(value > 0)) return null;
  const name = (named ?? '').toLowerCase();
  // "All dimensions in mm" is of large figures: 3 1/2 and 3.5 are inches still.
  const ofWhole = noted !== null && value >= 10 && !plain.includes('/') ? noted : unit;
  const from = /^mm/.test(name)
    ? 'mm'
    : /^cm/.test(name)
      ? 'cm'
      : /^(?:lf|l\.f|lin|'(?!')|feet|foot|ft)/.test(name)
        ? 'ft'
        : name === ''
          ? ofWhole
          : 'in';
  return inWorkbookUnit(value, from, unit);
}

function fractionOf(text: string): number | null {
  const [above, below] = text.split('/').map(Number);
  return below! > 0 ? above! / below! : null;
}

const NAMED =
  /(?:#|\bno\.?|\bnumber|\bprofile|\bpattern|\bknife|\bdie|\bmodel|\bstyle|\bcat(?:alog)?\.?|\bsku|\bp\/?n|\bpo|\bp\.o\.|\bdwg\.?|\bdrawing|\bdetail|\bsheet|\bpage|\brev\.?|\bref\.?|\bitem|\bline|\bstain|\bphase|\bbuilding|\bbldg\.?|\bunit|\blot|\broom|\brm\.?|\bfloor|\blevel|\bgrade|\bsection|\bseries|\btype|\bjob|\bquote|\bstep|\balt(?:ernate)?)[\s:.#-]*$/i;
const COUNTS =
  /^\s*-?\s*(?:days?|weeks?|wks?|coats?|plys?|plies|sides?|cuts?|hours?|hrs?|min(?:utes)?|°|deg(?:rees)?\b|%|percent|segments?|segs?|joints?|per\b|st\b|nd\b|rd\b|th\b|point\b|center|centre|ctr|:|\/\d)/i;

/** A figure that belongs to a name, a count of something that isn't compared, or money. */
function isName(text: string, start: number, end: number, written: string): boolean {
  const before = text.slice(0, start);
  const after = text.slice(end);
  // R18, L=68 and the like are labels; other letters right before it make a name of it.
  if (/[A-Za-z_]-?$/.test(before) && !/(?:^|[^A-Za-z])(?:r|l|w|h|t|x|lp|lg|ir|or|rad|dia)$/i.test(before)) return true;
  if (/\$\s*$/.test(before) || /\d[.,/]$/.test(before)) return true;
  if (/^[A-Za-z]*\d/.test(after) && !/["'\s]$/.test(written) && !/^x\d/i.test(after)) return true;
  if (NAMED.test(before)) return true;
  // Lumber is sold as 4/4, 5/4, 6/4; 1/2 round and 1/4 round are shapes.
  if (
    /^[4-9]\s*\/\s*4$/.test(written.trim()) ||
    (/^1[02468]?\/4$/.test(written.trim()) && /^\s*(?:round|circle|rd|sawn)/i.test(after))
  )
    return true;
  if (/^1\s*\/\s*[24]$/.test(written.trim()) && /^[\s-]*(?:round|rd\b|rnd|circle|ellip)/i.test(after)) return true;
  return COUNTS.test(after);
}

const INSIDE = /\b(?:inside|inner|i\.?s\.?|i\/s|ins|short[ -]?p(?:oin)?t|s\.?p\.?|ir|i\.r\.)(?![a-z])/i;
const OUTSIDE = /\b(?:outside|outer|o\.?s\.?|o\/s|long[ -]?p(?:oin)?t|l\.?p\.?|or|o\.r\.)(?![a-z])/i;
const CENTER = /\b(?:center|centre|c\/?l|centerline|ctr)(?![a-z])/i;
const OPENING = /\b(?:opening|opng|opg|jamb|frame|sash|glass)\b/i;
const RADIUS_BEFORE = /(?:^|[^a-z])(?:r|rad|radius|ir|or|i\.r\.|o\.r\.)[\s.:=@-]*(?:of|is)?\s*$/i;
const RADIUS_AFTER =
  /^["']?\s*-?\s*(?:(?:inside|outside|opening|opg|inner|outer|casing|arch|jamb|i\.?s\.?|o\.?s\.?)\s+)?(?:r|rad|radius|ir|or)(?![a-z])(?!\.?\s+(?:csg|casings?|hd|heads?|trim|mou?ldings?)\b)/i;
const DIAMETER = /(?:^|[^a-z])(?:dia|diam|diameter|ø)(?![a-z])/i;
const LENGTH_BEFORE =
  /(?:^|[^a-z])(?:l|lg|lgth|len|length|long|lp|l\.p\.|arc|run|long[ -]?p(?:oin)?t|developed|o\.?a\.?l?|net)[\s.:=@-]*(?:of|is|at)?\s*$/i;
const LENGTH_AFTER =
  /^["']?\s*-?\s*(?:(?:inside|outside|center|overall|total|arc|developed|on the|along the|around the|at the)\s+)*(?:l\.?p\.?|o\/s|i\/s|l\.?f\.?|long|lg|lgth|length|len|long[ -]?p(?:oin)?t|short[ -]?p(?:oin)?t|s\.?p\.?|o\.?a\.?l?|overall|lin(?:eal|ear)?|run|of arc|arc|around|developed|tip to tip|\(?(?:long|outside) side|center ?line|inside edge|outside edge)(?![a-z])/i;
const SPAN_BEFORE = /(?:^|[^a-z])(?:w|width|span|opening|opng|opg|for an?|to fit an?|fits)[\s.:=@-]*(?:of|is)?\s*$/i;
const SPAN_AFTER = /^["']?\s*-?\s*(?:(?:clear|window|door)\s+)?(?:w|wide|width|span|opening|opg|opng|chord)(?![a-z])/i;
const RISE_BEFORE = /(?:^|[^a-z])(?:rise|rises|h|ht)[\s.:=@-]*(?:of|is)?\s*$/i;
const RISE_AFTER = /^["']?\s*-?\s*(?:rise|arch rise|arch height)(?![a-z])/i;
const CASING_AFTER =
  /^["']?\s*-?\s*(?:wide\s+|w\s+)?(?:face|casing|trim|molding|moulding|profile|stock|flat)(?![a-z])/i;
const CASING_BEFORE = /(?:^|[^a-z])(?:face|casing|trim|casing width|face width)[\s.:=@-]*(?:of|is|width)?\s*$/i;
const THICK_AFTER = /^["']?\s*-?\s*(?:thick|thk|thickness|t)(?![a-z])/i;
const THICK_BEFORE = /(?:^|[^a-z])(?:thick|thk|thickness|t)[\s.:=@-]*$/i;
const REVEAL = /(?:^|[^a-z])reveal/i;
const LEGS_AFTER = /^["']?\s*-?\s*(?:long |straight |side )*(?:legs?|uprights?)(?![a-z])/i;
const LEGS_BEFORE = /(?:^|[^a-z])(?:legs?|uprights?)[\s.:=@-]*(?:of|at|are|each|ea\.?|long|length)?[\s.:=@-]*$/i;
const PIECES_AFTER =
  /^\s*-?\s*(?:ea\b|each|pcs?\b|pieces?|req'?d|required|heads?\b|arch(?:es)?\b|casings?\b|off\b|total\b|units?\b)/i;

function one(figure: Found, before: string, after: string, text: string, unit: Unit): Described[] {
  const { value } = figure;
  const inches = value / perInch(unit);
  // The words of this figure end at the next comma or semicolon.
  const behind = after.split(/[,;]/)[0]!;
  const ahead = before.split(/[,;]/).at(-1)!;
  const words = `${ahead} ${behind}`;
  const bracketed = figure.whole && /\(\s*$/.test(before) && /^\s*\)/.test(after);
  const rest = bracketed ? after.replace(/^\s*\)/, '') : behind;
  const said = (kind: Described['kind'], more: Partial<Described> = {}): Described[] => [
    { kind, value, text, ...more },
  ];
  // A bare whole number may be a count, the same in every unit.
  if (figure.whole && !figure.unit && (bracketed || Number(figure.text) <= 24)) {
    if (LEGS_AFTER.test(rest) && (bracketed || value < 10)) return said('legCount');
    if (bracketed || PIECES_AFTER.test(behind) || /\bqty[\s.:]*$|\bset of\s*$/i.test(ahead)) return said('quantity');
  }
  if (REVEAL.test(/^[^\d]{0,12}reveal/i.exec(behind)?.[0] ?? '') || /reveal\s*(?:of|:|=)?\s*$/i.test(ahead))
    return said('reveal');
  if (LEGS_AFTER.test(behind) || LEGS_BEFORE.test(ahead)) return said('leg');
  if (RADIUS_AFTER.test(behind) || RADIUS_BEFORE.test(ahead)) {
    const radiusOf = edgeOfRadius(RADIUS_AFTER.exec(behind)?.[0] ?? ahead);
    return said('radius', radiusOf === undefined ? {} : { radiusOf });
  }
  if (DIAMETER.test(behind.slice(0, 12)) || DIAMETER.test(ahead.slice(-12))) return said('diameter');
  if (THICK_AFTER.test(behind) || THICK_BEFORE.test(ahead)) return said('thickness');
  if (RISE_AFTER.test(behind) || (RISE_BEFORE.test(ahead) && /rise/i.test(ahead))) return said('rise');
  const measured = /^["']?\s*-?\s*(?:long|lg|l\.?p|o\/s)(?![a-z])/i.test(behind);
  if ((CASING_AFTER.test(behind) || (CASING_BEFORE.test(ahead) && !measured)) && inches <= 14) return said('face');
  if (LENGTH_AFTER.test(behind) || LENGTH_BEFORE.test(ahead) || /\blf\b|l\.f\.|lin/i.test(text))
    return said('length', { lengthOf: edgeOfLength(LENGTH_AFTER.exec(behind)?.[0] ?? ahead, words) });
  // "7.23' total", "(2) @ 43-3/8": bare decimals behind @ may be a price.
  if (figure.unit && /^\s*total(?![a-z])/i.test(behind)) return said('length', { lengthOf: 'all pieces' });
  if (/@\s*$/.test(ahead) && inches > 14 && (figure.unit || text.includes('/')))
    return said('length', { lengthOf: 'outside' });
  if (SPAN_AFTER.test(behind) || SPAN_BEFORE.test(ahead))
    return said(inches <= 14 && !OPENING.test(words) ? 'face' : 'span');
  return said('unknown');
}

function several(group: readonly Found[], before: string, after: string, all: string, unit: Unit): Described[] {
  const [first, second, third] = group;
  const inch = perInch(unit);
  const text = all.slice(first!.start, group.at(-1)!.end).trim();
  // R762 x 89 casing: a radius and a width.
  if (third === undefined && RADIUS_BEFORE.test(before.split(/[,;]/).at(-1)!))
    return [...one(first!, before, '', first!.text, unit), ...one(second!, '', after, second!.text, unit)];
  const pair = [first!.value, second!.value];
  const [small, large] = [Math.min(...pair), Math.max(...pair)];
  // 3 1/2 x 43 3/8 LP: the width of the casing and a length.
  if (third === undefined && first!.value <= 14 * inch && LENGTH_AFTER.test(after))
    return [{ kind: 'face', value: first!.value, text: first!.text }, ...one(second!, '', after, second!.text, unit)];
  const ofCasing = small <= 2.25 * inch && large <= 14 * inch;
  const said: Described[] = ofCasing
    ? [{ kind: 'section', value: small, other: large, text }]
    : [{ kind: 'size', value: first!.value, other: second!.value, text }];
  if (third !== undefined) said.push(...one(third, ofCasing ? 'length ' : '', after, third.text, unit));
  return said;
}

/** Undefined where the words don't say. */
function edgeOfRadius(words: string): RadiusBasis | undefined {
  if (OUTSIDE.test(words)) return 'outside';
  return OPENING.test(words) ? 'opening' : INSIDE.test(words) ? 'inside' : undefined;
}

function edgeOfLength(words: string, all: string): LengthBasis {
  if (/\b(?:with|w\/|incl\w*|and|&) (?:the )?(?:\(?(?:2|two)\)? )?legs\b/i.test(all)) return 'with legs';
  if (INSIDE.test(words)) return 'inside';
  if (CENTER.test(words)) return 'center';
  return /\btotal\b|\ball\b/i.test(words) ? 'all pieces' : 'outside';
}
