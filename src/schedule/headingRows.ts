import type { CellValue } from './opening';
import { cellText } from './cell';
import { readUnit } from './columnUnit';
import { normalHeading, readHeading, splitUnit, type HeadingMeaning } from './headingText';
import { MEANINGS, type MeaningKey } from './meanings';

type Row = readonly CellValue[];

/** One row, or up to three read as one, that may be the headings. Indices count the table's rows from 0. */
export interface HeadingRows {
  readonly rows: readonly number[];
  readonly texts: readonly string[];
  readonly read: readonly (HeadingMeaning | null)[];
  /** How many different things the headings name. */
  readonly score: number;
}

const DIMENSIONS: ReadonlySet<MeaningKey> = new Set<MeaningKey>(
  MEANINGS.filter(({ kind }) => kind === 'length' || kind === 'size').map(({ key }) => key),
);

/** The headings at a row, alone or with the one or two rows below it; null where they name no dimension or fewer than two things. */
export function headingsAt(rows: readonly Row[], index: number): HeadingRows | null {
  const best = threeRows(rows, index) ?? twoRows(rows, index) ?? alone(index, textsOf(rows[index]));
  const keys = best.read.flatMap((meaning) => (meaning === null ? [] : [meaning.key]));
  return best.score >= 2 && keys.some((key) => DIMENSIONS.has(key)) ? best : null;
}

/** With the groups above it; or with the row below it, where the two name more things than either. */
function twoRows(rows: readonly Row[], index: number): HeadingRows | null {
  const own = textsOf(rows[index]);
  if (headsGroups(rows, index - 1) && !holdsFigure(rows[index]))
    return grouped([index - 1, index], textsOf(rows[index - 1]), own);
  if (holdsFigure(rows[index + 1])) return null;
  const below = textsOf(rows[index + 1]);
  const pair = grouped([index, index + 1], own, below);
  const isPair = headsGroups(rows, index) || pair.score > alone(index + 1, below).score;
  return isPair && pair.score > alone(index, own).score ? pair : null;
}

/** "Rough" over "Opening" over "Width": without the first row the second says something else. */
function threeRows(rows: readonly Row[], index: number): HeadingRows | null {
  const below = textsOf(rows[index + 1]);
  const last = textsOf(rows[index + 2]);
  if (!headsGroups(rows, index + 1) || holdsFigure(rows[index + 2])) return null;
  const two = grouped([index + 1, index + 2], below, last);
  const three = grouped([index, index + 1, index + 2], joined(textsOf(rows[index]), below), last);
  return three.score >= two.score && saysMore(three, two) ? three : null;
}

/** A row with a bare figure is an opening's, whatever its words would make of the headings above ("Frame" over "Wood"). */
function holdsFigure(row: Row | undefined): boolean {
  return (row ?? []).some((cell) => typeof cell === 'number' || /^\d[\d'"½¼¾. /-]*$/.test(cellText(cell)));
}

function textsOf(row: Row | undefined): readonly string[] {
  return (row ?? []).map((cell) => (typeof cell === 'string' ? cellText(cell) : ''));
}

function joined(upper: readonly string[], lower: readonly string[]): readonly string[] {
  const width = Math.max(upper.length, lower.length);
  return Array.from({ length: width }, (_, column) => `${upper[column] ?? ''} ${lower[column] ?? ''}`.trim());
}

function alone(index: number, texts: readonly string[]): HeadingRows {
  return headingRows([index], texts, texts.map(read));
}

function headingRows(
  rows: readonly number[],
  texts: readonly string[],
  read: readonly (HeadingMeaning | null)[],
): HeadingRows {
  return { rows, texts, read, score: new Set(read.flatMap((meaning) => (meaning ? [meaning.key] : []))).size };
}

/** Whether the longer headings give a dimension another meaning, and lose none that the shorter ones have. */
function saysMore(more: HeadingRows, less: HeadingRows): boolean {
  const changed = less.read.flatMap((meaning, column) => {
    const isChanged = meaning !== null && DIMENSIONS.has(meaning.key) && more.read[column]?.key !== meaning.key;
    return isChanged ? [column] : [];
  });
  const isLonger = (column: number) => (more.texts[column] ?? '').length > (less.texts[column] ?? '').length;
  return changed.length > 0 && changed.every((column) => more.read[column] && isLonger(column));
}

/** Anything longer is a sentence, no heading. */
const LONGEST_HEADING = 80;

/** A heading's meaning; figures have none. */
function read(text: string): HeadingMeaning | null {
  return /[a-z#]/i.test(text) && text.length <= LONGEST_HEADING ? readHeading(text) : null;
}

/** Headings that say which dimension, and need a group above them to say of what. */
const DIMENSION_WORD =
  /^(?:width|wd|wdth|w|height|ht|hgt|h|size|sizes|dims|dimensions|thickness|thick|thk|radius|rad|r|diameter|dia|rise|span)$/;
/** Those that a group reaches without standing above them. */
const REACHED = /^(?:width|wd|wdth|w|height|ht|hgt|h|thickness|thick|thk)$/;
/** Groups that add nothing: "Dimensions (mm)" over "Width". */
const SAYS_NOTHING_MORE =
  /^(?:(?:opening|opng|window|door|unit|arch|arched|head|frame|general|overall|finished|clear|net|all)(?: |$))*(?:dimensions?|dims?|sizes?|data|info|information|measurements?)?$/;
/** Groups for other parts than the opening. */
export const OTHER_PART =
  /\b(?:glass|glazing|sash|screen|panel|leaf|slab|lites?|lights?|shutter|jamb|sill|wall|mullion|storm|stool|apron)\b/i;

/** Over "Thickness" and "Material" these make them the door's, not the casing's. */
const DOOR_PART = /^(?:doors?|leaf|leaves|panels?|frames?|slabs?)(?: (?:data|info|type))?$/i;
const OF_A_DOOR = /^(?:thickness|thick|thk|thkns|material|mat|matl|mtl)$/;

/** A heading such as "Width" or "Ht." that doesn't say of what. */
export function isDimensionWord(heading: string, words = DIMENSION_WORD): boolean {
  return heading.length <= LONGEST_HEADING && words.test(normalHeading(splitUnit(heading).name));
}

type GroupKind = 'qualifies' | 'says nothing more' | 'other part' | 'unknown';

function kindOf(group: string, heading: string): GroupKind {
  if (group.length > LONGEST_HEADING) return 'unknown';
  if (read(`${group} ${heading}`) !== null) return 'qualifies';
  const name = normalHeading(splitUnit(group).name);
  if (name !== '' && SAYS_NOTHING_MORE.test(name)) return 'says nothing more';
  return OTHER_PART.test(name) ? 'other part' : 'unknown';
}

/** Whether a row holds groups for the headings below it ("Rough opening" over "Width"): neither a title nor a row of figures. */
function headsGroups(rows: readonly Row[], index: number): boolean {
  const upper = rows[index] ?? [];
  if (upper.some((cell) => /^\d/.test(cellText(cell)))) return false;
  return hasGroup(textsOf(upper), textsOf(rows[index + 1]));
}

function hasGroup(upper: readonly string[], lower: readonly string[]): boolean {
  return upper.some((group, column) => {
    const heading = lower[column] ?? '';
    return group !== '' && isDimensionWord(heading) && kindOf(group, heading) !== 'unknown';
  });
}

interface Group {
  readonly text: string;
  readonly kind: GroupKind;
  /** The headings it has so far. */
  readonly seen: Set<string>;
}

/** Headings read with the groups above them; a group reaches over the blanks to its right as far as `readUnder` goes. */
function grouped(rows: readonly number[], upper: readonly string[], lower: readonly string[]): HeadingRows {
  const amongGroups = hasGroup(upper, lower);
  const texts: string[] = [];
  const meanings: (HeadingMeaning | null)[] = [];
  let group: Group | null = null;
  for (let column = 0; column < Math.max(upper.length, lower.length); column += 1) {
    const top = upper[column] ?? '';
    const bottom = lower[column] ?? '';
    let text = bottom === '' ? top : `${top} (${bottom})`;
    let meaning: HeadingMeaning | null;
    if (top !== '') group = { text: top, kind: kindOf(top, bottom), seen: new Set() };
    if (bottom === '' || (top !== '' && readUnit(bottom) !== null)) meaning = read(text);
    else {
      const under: Heading | null = group && readUnder(group, bottom, top !== '', amongGroups);
      if (under === null) group = null;
      ({ text, meaning } = under ?? readAlone(bottom, top));
    }
    texts.push(text);
    meanings.push(meaning);
  }
  return headingRows(rows, texts, meanings);
}

interface Heading {
  readonly text: string;
  readonly meaning: HeadingMeaning | null;
}

/** A heading, or what stands above it where that says more. */
function readAlone(heading: string, above: string): Heading {
  const own = read(heading);
  return own === null && above !== '' ? { text: above, meaning: read(above) } : { text: heading, meaning: own };
}

/**
 * A heading with the group above it, or to the left above it; null where the group does not reach it: because it comes again,
 * or does not belong to it. Of a part that is not the opening ("Glass" over "Width"), or one unknown among groups that are
 * known, a dimension means nothing here.
 */
function readUnder(group: Group, heading: string, standsBelow: boolean, amongGroups: boolean): Heading | null {
  const word = heading.length > LONGEST_HEADING ? '' : normalHeading(heading);
  if (group.seen.has(word) || (!standsBelow && /^sizes?$/.test(word))) return null;
  group.seen.add(word);
  const both = `${group.text} ${heading}`;
  const qualified = read(both);
  if (qualified !== null) return { text: both, meaning: qualified };
  if (DOOR_PART.test(group.text) && OF_A_DOOR.test(word)) return { text: both, meaning: null };
  if (group.kind === 'says nothing more') {
    const { text, meaning } = readAlone(heading, standsBelow ? group.text : '');
    return { text, meaning: inUnitOf(group.text, meaning) };
  }
  const isDimension = isDimensionWord(heading, standsBelow ? DIMENSION_WORD : REACHED);
  return amongGroups && group.kind !== 'qualifies' && isDimension ? { text: both, meaning: null } : null;
}

const OF_THE_CASING: ReadonlySet<MeaningKey> = new Set<MeaningKey>(['reveal', 'face', 'thickness', 'casingSize']);

/** "Dimensions (mm)" gives its unit to the opening's dimensions below it; the casing's may be kept in another. */
function inUnitOf(group: string, own: HeadingMeaning | null): HeadingMeaning | null {
  if (own === null || own.unit !== null || !DIMENSIONS.has(own.key) || OF_THE_CASING.has(own.key)) return own;
  return { ...own, unit: splitUnit(group).unit };
}
