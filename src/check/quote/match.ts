import { isNear } from '../rules/lineRules';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { extraOf } from './extraLines';
import { namesAlternate } from '../../quote/labels';
import { marksOf, type Marks } from '../../quote/marks';
import type { QuoteLine } from '../../quote/quote';

/** Which openings a line is for. */
export interface LineMatch {
  readonly line: QuoteLine;
  /** Places in the takeoff; several where the line names several marks; empty where none is named. */
  readonly places: readonly number[];
  readonly how: 'by its mark' | 'by the mark in its description' | null;
  /**
   * "other": the legs or another part of an opening, whose figures are not the head's; "extra": keystones and the like, which have prices
   * of their own; "alternate": an offer beside the quote.
   */
  readonly part: 'head' | 'other' | 'extra' | 'alternate';
  /** The mark stands more than once in the takeoff, so that it can't be told for certain which row is meant. */
  readonly shared: boolean;
  /** Of a line without places: openings without a line that it may be for, by its length and radius. */
  readonly akin: readonly number[];
  /** What stands in the mark's cell beside marks of the takeoff and looks like one, but isn't. */
  readonly strange: readonly string[];
}

/** A line that names nothing may be for any opening; one with a mark of its own only for one it is like. */
export function namesNothing({ mark }: QuoteLine): boolean {
  return mark === '' || /^\d+$/.test(mark);
}

const OTHER_PARTS = /\b(?:legs?|side casings?|plinths?|plinth blocks?|keystones?|rosettes?|stools?|aprons?)\b/i;
const HEAD_WORDS =
  /\b(?:arch(?:es|ed)?|arc|head|curved|radius|round|segmental|ellip\w*|gothic|pointed|eyebrow|centered)\b|\b(?:with|w\/) ?(?:the |straight |\(?(?:2|two)\)? )*legs?\b/i;

/** Finds the opening of every line by its mark, or by a mark in its words. */
export function matchLines(
  lines: readonly QuoteLine[],
  openings: readonly OpeningTakeoff[],
  tolerance: number,
): readonly LineMatch[] {
  const marks = marksOf(openings.map(({ opening }) => opening.mark));
  const dealt = new Map<number, number>();
  const matches = lines.map((line): LineMatch => {
    const { groups, how } = groupsOf(line, marks);
    const first = groups[0];
    const head = first === undefined ? null : openings[first[0]!]!.known.head;
    const other = OTHER_PARTS.test(line.description) && !HEAD_WORDS.test(line.description) && groups.length === 1;
    const straight = head === 'straight' && !/\blegs?\b/i.test(line.description);
    const part =
      namesAlternate(line.description) || namesAlternate(line.mark)
        ? 'alternate'
        : extraOf(line) !== null &&
            (groups.length > 0 || namesNothing(line) || extraOf({ ...line, description: '' }) !== null)
          ? 'extra'
          : other && !straight
            ? 'other'
            : 'head';
    const places = groups.length === 1 ? [oneOf(first!, openings, dealt, part)] : groups.map((group) => group[0]!);
    const shared = groups.some((group) => group.length > 1);
    return {
      line: edgeOfDiameter(line, openings[places[0] ?? -1], tolerance),
      places,
      how,
      part,
      shared,
      akin: [],
      strange: strangeIn(line, marks),
    };
  });
  const quoted = new Set(matches.flatMap(({ part, places }) => (part === 'head' ? places : [])));
  const left = openings.map((_opening, place) => place).filter((place) => !quoted.has(place));
  return matches.map((match) =>
    match.places.length > 0 ? match : { ...match, akin: akinTo(match.line, left, openings, tolerance) },
  );
}

/** A diameter may be of any edge, a bare R in words of the opening's: it is taken for the edge's that it is right for, else for the casing's inside. */
function edgeOfDiameter(line: QuoteLine, opening: OpeningTakeoff | undefined, tolerance: number): QuoteLine {
  const ring = opening?.own?.crown?.ring;
  if (line.radius === null || ring === undefined || (!line.byDiameter && !line.radiusBare)) return line;
  const times = line.byDiameter ? 2 : 1;
  const near = (radius: number) => isNear(times * line.radius!, times * radius, tolerance);
  if (near(ring.inside)) return line;
  if (near(ring.radius)) return { ...line, radiusOf: 'opening' };
  return { ...line, radiusOf: line.byDiameter && near(ring.outside) ? 'outside' : 'inside' };
}

function groupsOf(line: QuoteLine, marks: Marks): { groups: readonly (readonly number[])[]; how: LineMatch['how'] } {
  const own = line.mark === '' ? [] : marks.find(line.mark);
  const named = marks.within(line.description);
  // "3" under Item may be the third line as well as the third opening: a mark in the words says more.
  if (own.length > 0 && !(/^\d+$/.test(line.mark) && named.length > 0)) return { groups: [own], how: 'by its mark' };
  const inMark = marks.within(line.mark, true);
  if (inMark.length > 0) return { groups: inMark, how: 'by its mark' };
  return named.length > 0 ? { groups: named, how: 'by the mark in its description' } : { groups: [], how: null };
}

const LIKE_A_MARK = /^(?:[a-z]{0,3}[ .-]?\d{1,4}[a-z]?|[a-z])$/i;

/** "A1" of "A and A1"; "2" of "W1/2" goes on with the letters of the first. */
function strangeIn({ mark }: QuoteLine, marks: Marks): readonly string[] {
  const parts = mark.split(/\s*(?:[,;/&+]|\band\b)\s*/i);
  if (parts.length < 2 || marks.find(mark).length > 0) return [];
  let letters = '';
  const isOurs = (part: string) => marks.within(part, true).length > 0 || marks.find(letters + part).length > 0;
  const found = parts.map((part) => {
    const ours = isOurs(part);
    letters = /^(.*?[a-z][ .-]?)\d+[a-z]?$/i.exec(part)?.[1] ?? letters;
    return { part, ours };
  });
  if (!found.some(({ ours }) => ours)) return [];
  return found.filter(({ part, ours }) => !ours && LIKE_A_MARK.test(part)).map(({ part }) => part);
}

/** A mark that stands several times in the takeoff: its lines are dealt to its openings in order, complete ones first. */
function oneOf(
  places: readonly number[],
  openings: readonly OpeningTakeoff[],
  dealt: Map<number, number>,
  part: LineMatch['part'],
): number {
  if (places.length === 1) return places[0]!;
  const complete = (place: number) => (openings[place]!.own === null ? 1 : 0);
  const sorted = [...places].sort((one, other) => complete(one) - complete(other) || one - other);
  const turn = dealt.get(sorted[0]!) ?? 0;
  if (part === 'head') dealt.set(sorted[0]!, turn + 1);
  return sorted[Math.min(turn, sorted.length - 1)]!;
}

/**
 * Of the openings on `places` those whose length and radius a line has, as far as it gives them: a line whose mark says
 * nothing, or names no opening, may be for one of these. Empty where it gives neither.
 */
function akinTo(
  line: QuoteLine,
  places: readonly number[],
  openings: readonly OpeningTakeoff[],
  tolerance: number,
): readonly number[] {
  const { length, radius } = line;
  if (length === null && radius === null) return [];
  const near = (quoted: number, rights: readonly number[]) => rights.some((right) => isNear(quoted, right, tolerance));
  return places.filter((place) => {
    const { own, known } = openings[place]!;
    if (own === null) return false;
    const { curve, crown } = own;
    const lengths = [curve.length, curve.insideLength, (known.quantity ?? 1) * curve.length];
    const radii = crown === null ? [] : [crown.ring.inside, crown.ring.radius, crown.ring.outside];
    return (length === null || near(length, lengths)) && (radius === null || near(radius, radii));
  });
}
