import type { Ends, HeadShape } from '../../head/head';
import { readEnds, readHead } from '../../head/words';
import type { QuoteLine } from '../../quote/quote';
import { differs, type Finding } from './finding';
import type { Complete } from './figureFinding';

/** What a line's words say of its opening; null: nothing, or so much that it can't be told what is meant. */
export interface Named {
  readonly species: string | null;
  readonly head: HeadShape | null;
  readonly ends: Ends | null;
  readonly noLegs: boolean;
}

const WOODS =
  'oak|maple|pine|poplar|cherry|walnut|mahogany|ash|birch|alder|hickory|fir|cedar|cypress|sapele|beech|teak|redwood|spruce|basswood|hemlock|pecan|mdf|pvc|polyurethane';
const KINDS = 'red|white|hard|soft|yellow|black|brown|sugar|knotty|douglas|southern';
/** Behind these a wood is only spoken of; before those it is a color or a name. */
const WOOD = new RegExp(
  `(\\b(?:not|no|than|like|of|to|match(?:es|ing)?|existing|from|for) )?\\b(?:(${KINDS}) )?(${WOODS})\\b( (?:stain(?:ed)?|colou?r(?:ed)?|finish|tone|veneer|st|street|rd|road|ave|avenue|ln|lane|dr|drive|hill|park|creek|grove|ridge|house|hall|room)\\b)?`,
  'g',
);

/** Words that say nothing of the shape by themselves: any arched casing may be called "arch", "radius" or "round top". */
const GENERIC =
  /^(?:the|an?|arch(?:ed|es)?|archtop|arc|heads?|tops?|windows?|openings?|radius|rounds?|rd|circles?|circular|straight|square|flat|level|plain|none|points?|full|hr|tc|qr|ell|roman|str|sq|none)$/;
/** Parts of longer names, which alone are none; or places: "casing, gable" stands in one. */
const NEVER_ALONE = /^(?:quarter|qtr|basket|rect|segments?|gable|shed)$/;
/** "Half round molding" is a profile. */
const PROFILE = /^(?:moldings?|mouldings?|trim|stop|nosing|bead|shoe|stock|profile|ogee)$/;
const NEGATION = /^(?:not|no|than|from|like|match(?:es|ing)?)$/;
/** "half round window head" */
const MOST_WORDS = 4;
/** Longer descriptions are read so far. */
const LONGEST_TEXT = 400;

/** The wood, the head and the legs that a line names; "poplar, not oak" names two woods, so none. */
export function namedIn({ description, ...line }: Pick<QuoteLine, 'description'> & Partial<QuoteLine>): Named {
  const text = description.toLowerCase().slice(0, LONGEST_TEXT);
  const own = readHead(line.head ?? '');
  const wood = speciesIn((line.species ?? '').toLowerCase());
  const ends = readEnds(line.ends ?? '');
  return {
    species: wood ?? speciesIn(text),
    head: own.ok ? own.value : headIn(text),
    ends: ends.ok ? ends.value : endsIn(text),
    noLegs: /\b(?:no|without|less|excluding) legs?\b/.test(text),
  };
}

/** "level cut", "cut level at the spring line": only words that say nothing else. */
function endsIn(text: string): Ends | null {
  if (/\blevel[ -]?(?:cut|ends?)|cut level\b/.test(text)) return 'level';
  return /\b(?:radial (?:cut|ends?)|cut (?:radial|on (?:the )?radi)|square cut ends)\b/.test(text) ? 'radial' : null;
}

function speciesIn(text: string): string | null {
  const found = [...text.replace(/[^a-z0-9]+/g, ' ').matchAll(WOOD)];
  const names = new Set(found.map(([, , kind, wood]) => (kind ? `${kind} ${wood}` : wood!)));
  const isPlain = found.every(([, before, , , behind]) => before === undefined && behind === undefined);
  return names.size === 1 && isPlain ? [...names][0]! : null;
}

function headIn(text: string): HeadShape | null {
  const words = text.split(/[^a-z0-9/½¼]+/).filter((word) => word !== '');
  const heads = new Set<HeadShape | null>();
  for (let at = 0; at < words.length; at++) {
    for (let count = Math.min(MOST_WORDS, words.length - at); count > 0; count--) {
      const phrase = words.slice(at, at + count);
      if (
        (phrase.every((word) => GENERIC.test(word)) && phrase.join(' ') !== 'full circle') ||
        (count === 1 && NEVER_ALONE.test(phrase[0]!))
      )
        continue;
      const head = readHead(phrase.join(' '));
      if (!head.ok) continue;
      const doubtful = PROFILE.test(words[at + count] ?? '') || NEGATION.test(words[at - 1] ?? '');
      heads.add(doubtful ? null : head.value);
      at += count - 1;
      break;
    }
  }
  return heads.size === 1 ? [...heads][0]! : null;
}

/** Whether two names may be of one wood: "oak" and "Red oak" are, "red oak" and "White oak" are not. */
function sameWood(said: string, ours: string): boolean {
  const named = speciesIn(ours.toLowerCase());
  // "Paint grade" may be any wood.
  if (named === null) return true;
  const [one, other] = [said.split(' '), named.split(' ')];
  return one.at(-1) === other.at(-1) && (one.length !== other.length || one[0] === other[0]);
}

/** What the line's words contradict in the takeoff. Nothing is said of money: no figure tells. */
export function wordsFindings({ species, head, ends, noLegs }: Named, { inputs }: Complete): Finding[] {
  const found: Finding[] = [];
  if (species !== null && !sameWood(species, inputs.species))
    found.push(
      differs('species', `the line says ${species}, the takeoff has ${inputs.species}`, {
        cause: 'another species than the takeoff has',
        said: { quoted: species, right: inputs.species },
      }),
    );
  if (head !== null && head !== inputs.head)
    found.push(
      differs('head', `the line says ${head}, the takeoff has a ${inputs.head} head`, {
        cause: 'another head than the takeoff has',
        said: { quoted: head, right: inputs.head },
      }),
    );
  if (ends !== null && ends !== inputs.ends && inputs.head !== 'round')
    found.push(
      differs('ends', `the line says ${ends} ends, the takeoff has ${inputs.ends}`, {
        cause: 'other ends than the takeoff has',
        said: { quoted: ends, right: inputs.ends },
      }),
    );
  if (noLegs && inputs.ends === 'legs')
    found.push(
      differs('ends', 'the line says no legs, the takeoff has legs', {
        cause: 'no legs where the takeoff has some',
        said: { quoted: 'no legs', right: 'legs' },
      }),
    );
  return found;
}
