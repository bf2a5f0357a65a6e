import { pushTo } from '../pushTo';
/** The takeoff's marks, looked up as a quote may write them. */
export interface Marks {
  /** Places in the takeoff of the openings with this mark, exactly or without regard to spaces and hyphens; empty: none. */
  find(text: string): readonly number[];
  /**
   * Marks named somewhere in a text: "Arch casing W3, poplar", "W1 thru W3 and W5", "windows A, B and C". Each mark once, in the
   * text's order. `markOnly`: the text is the mark's own cell, so that a bare letter or number is one, too: "A & B", "W1/2/3".
   */
  within(text: string, markOnly?: boolean): readonly (readonly number[])[];
}

/** Words after which even a bare number or letter is a mark: "opening 3", "mark A". */
export const ANNOUNCES =
  /^(?:marks?|openings?|windows?|doors?|units?|tags?|items?|types?|no|nos|number|arch|arches|opng|opngs|wdw|wdws|win|wins)$/i;
const RANGE = /^(?:-|–|to|thru|through|\.{2,3})$/i;
/** Longer text is no mark. */
const LONGEST_MARK = 24;

export function marksOf(all: readonly string[]): Marks {
  const exact = new Map<string, number[]>();
  const loose = new Map<string, number[]>();
  all.forEach((mark, place) => {
    if (mark === '') return;
    pushTo(exact, spaced(mark), place);
    pushTo(loose, bare(mark), place);
  });
  const find = (text: string): readonly number[] => {
    if (text.length > LONGEST_MARK) return [];
    const same = exact.get(spaced(text));
    if (same) return same;
    const near = bare(text) === '' ? undefined : loose.get(bare(text));
    // W1-1 and W11 are alike without the hyphen: then only the mark itself will do.
    const one = near !== undefined && new Set(near.map((place) => spaced(all[place]!))).size === 1;
    return one ? near : [];
  };
  return { find, within: (text, markOnly = false) => within(text, find, all, markOnly) };
}

function spaced(mark: string): string {
  return mark.trim().toLowerCase().replace(/\s+/g, ' ');
}

function bare(mark: string): string {
  return mark.toLowerCase().replace(/[^a-z0-9]+/g, '');
}

/** Between two marks of a list. */
const LISTS = /^\s*(?:[,/&+]|,?\s*and)\s*$/i;

function within(
  text: string,
  find: (text: string) => readonly number[],
  all: readonly string[],
  markOnly: boolean,
): readonly (readonly number[])[] {
  const words = wordsOf(text.slice(0, 400).replace(/(\w)\s*\.{2,3}\s*(\w)/g, '$1 to $2'));
  const found: (readonly number[])[] = [];
  const add = (places: readonly number[]) => {
    if (places.length > 0 && !found.some((one) => one[0] === places[0])) found.push(places);
  };
  // "A - casing, 36 wide" and "A: casing": what stands alone before a dash or a colon, but a count, is a mark.
  const lead = /^\s*(\S+?)(?:\s+[-–—]|:)\s/.exec(text)?.[1];
  if (!markOnly && lead !== undefined && /[a-z]/i.test(lead) && all.includes(lead)) add(find(lead));
  let last = '';
  let announcedList = false;
  for (let at = 0; at < words.length; at++) {
    const { word, before } = words[at]!;
    const next = words[at + 1]?.word ?? '';
    const goesOn: boolean = last !== '' && LISTS.test(before);
    const isFor = /^(?:for|at|to suit)$/i.test(words[at - 1]?.word ?? '') && all.includes(word) && !words[at]!.measured;
    const announced: boolean =
      markOnly || isFor || ANNOUNCES.test(words[at - 1]?.word ?? '') || (announcedList && goesOn);
    // "W 3" is written as two words; "a" and "36" are marks only where the text says so.
    const joined = /^[a-z]{1,3}$/i.test(word) && /^\d{1,4}[a-z]?$/i.test(next) ? find(`${word} ${next}`) : [];
    const own = announced || (/[a-z]/i.test(word) && /\d/.test(word)) ? find(word) : [];
    // "W1/2/3" and "W1, 2 and 3" go on with the letters of the first.
    const letters = /^(.*?[a-z][ .-]?)\d+[a-z]?$/i.exec(last)?.[1];
    const more =
      own.length === 0 &&
      goesOn &&
      letters !== undefined &&
      (markOnly || /[/&+]|and/i.test(before)) &&
      /^\d{1,4}[a-z]?$/i.test(word)
        ? find(letters + word)
        : [];
    if (own.length === 0 && more.length === 0 && joined.length === 0) last = '';
    const range = /^([^-–]+)[-–]([^-–]+)$/.exec(word);
    if (joined.length > 0) {
      add(joined);
      last = `${word}${next}`;
      at += 1;
    } else if (own.length > 0 || more.length > 0) {
      add(own.length > 0 ? own : more);
      announcedList = announced;
      last = own.length > 0 ? word : letters! + word;
      const end = RANGE.test(next) ? (words[at + 2]?.word ?? '') : '';
      const to = end === '' ? [] : endOf(last, end, find);
      if (to.length > 0) {
        for (const places of between(own.length > 0 ? own : more, to, find, all)) add(places);
        at += 2;
      }
    } else if (range !== null) {
      const from = find(range[1]!);
      const to = from.length > 0 ? endOf(range[1]!, range[2]!, find) : [];
      if (to.length === 0) continue;
      for (const places of between(from, to, find, all)) add(places);
      last = range[2]!;
    }
  }
  return found;
}

interface Word {
  readonly word: string;
  /** What parts it from the word before. */
  readonly before: string;
  /** Inch or foot marks, or words of size, stand right behind it. */
  readonly measured: boolean;
}

function wordsOf(text: string): Word[] {
  const words: Word[] = [];
  let end = 0;
  for (const match of text.matchAll(/[^\s,;:()[\]"“”&+/]+/g)) {
    const word = match[0].replace(/^[#.'-]+(?=.)|[.'-]+$/g, '');
    const before = text.slice(end, match.index);
    end = match.index + match[0].length;
    if (/^and$/i.test(word)) continue;
    const joined = words.length > 0 && /\band\s*$/i.test(text.slice(0, match.index)) ? ' and ' : before;
    if (word !== '')
      words.push({
        word,
        before: joined,
        measured: /^\s*(?:["']|in\b|inch|ft\b|mm\b|cm\b|wide|x\b|opg|opening|opng|r\b|rad|\d)/i.test(text.slice(end)),
      });
  }
  return words;
}

/** The end of a range: "W4", or "4" after "W1". */
function endOf(from: string, to: string, find: (text: string) => readonly number[]): readonly number[] {
  const whole = find(to);
  if (whole.length > 0) return whole;
  const letters = /^(.*?)\d+$/.exec(from)?.[1];
  return letters === undefined || !/^\d+$/.test(to) ? [] : find(letters + to);
}

/** W1 to W4: the marks with the same letters and the numbers between, as far as there are openings of that mark. */
function between(
  from: readonly number[],
  to: readonly number[],
  find: (text: string) => readonly number[],
  all: readonly string[],
): readonly (readonly number[])[] {
  const parts = (places: readonly number[]) => /^(.*?)(\d+|[a-z])$/i.exec(all[places[0]!]!.trim());
  const [first, last] = [parts(from), parts(to)];
  if (!first || !last || first[1]!.toLowerCase() !== last[1]!.toLowerCase()) return [from, to];
  const letter = !/\d/.test(first[2]!);
  if (letter !== !/\d/.test(last[2]!)) return [from, to];
  const number = (text: string) => (letter ? text.toLowerCase().charCodeAt(0) : Number(text));
  const [low, high] = [number(first[2]!), number(last[2]!)];
  if (!(high > low && high - low < 500)) return [from, to];
  const marks: (readonly number[])[] = [];
  for (let at = low; at <= high; at++) {
    const places = find(`${first[1]}${letter ? String.fromCharCode(at) : String(at).padStart(first[2]!.length, '0')}`);
    if (places.length > 0) marks.push(places);
  }
  return marks;
}
