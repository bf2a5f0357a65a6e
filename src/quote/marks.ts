/** The takeoff's marks, looked up as a quote may write them. */
export interface Marks {
  /** Places in the takeoff of the openings with this mark, exactly or without regard to spaces and hyphens; empty: none. */
  find(text: string): readonly number[];
  /** Marks named somewhere in a text: "Arch casing W3, poplar", "W1 thru W3 and W5". Each mark once, in the text's order. */
  within(text: string): readonly (readonly number[])[];
}

/** Words after which even a bare number or letter is a mark: "opening 3", "mark A". */
const ANNOUNCES = /^(?:marks?|openings?|windows?|doors?|units?|tags?|items?|no|number|arch|arches|opng|wdw)$/i;
const RANGE = /^(?:-|–|to|thru|through)$/i;
/** Longer text is no mark. */
const LONGEST_MARK = 24;

export function marksOf(all: readonly string[]): Marks {
  const exact = new Map<string, number[]>();
  const loose = new Map<string, number[]>();
  all.forEach((mark, place) => {
    if (mark === '') return;
    put(exact, spaced(mark), place);
    put(loose, bare(mark), place);
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
  return { find, within: (text) => within(text, find, all) };
}

function put(map: Map<string, number[]>, key: string, place: number): void {
  const there = map.get(key);
  if (there) there.push(place);
  else map.set(key, [place]);
}

function spaced(mark: string): string {
  return mark.trim().toLowerCase().replace(/\s+/g, ' ');
}

function bare(mark: string): string {
  return mark.toLowerCase().replace(/[^a-z0-9]+/g, '');
}

function within(
  text: string,
  find: (text: string) => readonly number[],
  all: readonly string[],
): readonly (readonly number[])[] {
  const words = text
    .slice(0, 400)
    .split(/[\s,;:()[\]"“”&+/]+/)
    .map((word) => word.replace(/^[#.'-]+|[.'-]+$/g, ''))
    .filter((word) => word !== '');
  const found: (readonly number[])[] = [];
  const add = (places: readonly number[]) => {
    if (places.length > 0 && !found.some((one) => one[0] === places[0])) found.push(places);
  };
  for (let at = 0; at < words.length; at++) {
    const word = words[at]!;
    const announced = ANNOUNCES.test(words[at - 1] ?? '');
    // "W 3" is written as two words; "a" and "36" are marks only where the text says so.
    const two = `${word} ${words[at + 1] ?? ''}`;
    const joined = /^[a-z]{1,3}$/i.test(word) && /^\d{1,4}[a-z]?$/i.test(words[at + 1] ?? '') ? find(two) : [];
    const own = announced || (/[a-z]/i.test(word) && /\d/.test(word)) ? find(word) : [];
    if (joined.length > 0) {
      add(joined);
      at += 1;
    } else if (own.length > 0) {
      add(own);
      const to = RANGE.test(words[at + 1] ?? '') ? find(words[at + 2] ?? '') : [];
      if (to.length > 0) {
        for (const places of between(own, to, find, all)) add(places);
        at += 2;
      }
    } else if (/^[^-–]+[-–][^-–]+$/.test(word)) {
      const [from, to] = word.split(/[-–]/).map((half) => find(half));
      if (from && to && from.length > 0 && to.length > 0)
        for (const places of between(from, to, find, all)) add(places);
    }
  }
  return found;
}

/** W1 to W4: the marks with the same letters and the numbers between, as far as there are openings of that mark. */
function between(
  from: readonly number[],
  to: readonly number[],
  find: (text: string) => readonly number[],
  all: readonly string[],
): readonly (readonly number[])[] {
  const parts = (places: readonly number[]) => /^(.*?)(\d+)$/.exec(all[places[0]!]!.trim());
  const [first, last] = [parts(from), parts(to)];
  if (!first || !last || first[1]!.toLowerCase() !== last[1]!.toLowerCase()) return [from, to];
  const [low, high] = [Number(first[2]), Number(last[2])];
  if (!(high > low && high - low < 500)) return [from, to];
  const marks: (readonly number[])[] = [];
  for (let number = low; number <= high; number++) {
    const places = find(`${first[1]}${String(number).padStart(first[2]!.length, '0')}`);
    if (places.length > 0) marks.push(places);
  }
  return marks;
}
