import type { QuoteLine } from '../../quote/quote';
import { cantTellOf, type VerdictWord } from '../rules/verdict';

interface Of {
  /** It is compared with the takeoff's: a line's own sums agreeing say nothing of it. */
  readonly judged?: true;
  /** A piece made wrong in it, or in another wood, is lost as a whole. */
  readonly losesAll?: true;
  /** It has a column of its own on the Check sheet; the rest is said of the opening. */
  readonly ownColumn?: true;
}

/** All that a finding may be about. */
const ABOUT = {
  opening: {},
  column: {},
  species: { losesAll: true },
  head: { losesAll: true },
  ends: { losesAll: true },
  quantity: { judged: true, ownColumn: true },
  width: { judged: true, losesAll: true },
  rise: { judged: true, losesAll: true },
  'casing width': { judged: true, losesAll: true },
  thickness: { judged: true, losesAll: true },
  reveal: { judged: true, losesAll: true },
  leg: { judged: true, losesAll: true },
  'leg count': { judged: true, losesAll: true },
  radius: { judged: true, losesAll: true, ownColumn: true },
  length: { judged: true, losesAll: true, ownColumn: true },
  extension: { ownColumn: true },
  'unit price': { judged: true, ownColumn: true },
  charge: { ownColumn: true },
  subtotal: { ownColumn: true },
  total: { ownColumn: true },
} as const satisfies Readonly<Record<string, Of>>;

export type About = keyof typeof ABOUT;
export function is(about: About, what: keyof Of): boolean {
  return (ABOUT[about] as Of)[what] === true;
}

export interface Said {
  /** What is quoted, where that isn't what the finding is about: "amount". */
  readonly of?: string;
  readonly quoted: string;
  readonly right: string;
}

/** What one comparison found. */
export interface Finding {
  readonly about: About;
  readonly verdict: VerdictWord;
  /** What its rule says, by which it has its verdict: "agrees", "one piece counted for a pair", "can't tell: no length given". */
  readonly words: string;
  /** The same as a sentence, with the figures: "quantity 1 quoted, 2 right: one piece counted for a pair". */
  readonly text: string;
  /** The known mistakes that give exactly the quoted figure; several where it can't be told which. */
  readonly mistakes: readonly string[];
  /** What differences are added up by: the mistake, or what differs where no known mistake explains it. */
  readonly cause: string | null;
  readonly quoted: number | null;
  readonly right: number | null;
  /** Both as a reply has them, of what differs: "81 3/4" and "81 15/16 right at the long point". */
  readonly said: Said | null;
  /** By how much the quote's money is off: above 0 too much. Null where the quote gives no figure to tell. */
  readonly dollars: number | null;
  /** Money that hangs on it, 0 or more: what the list is sorted by. */
  readonly stake: number;
  /** The quote doesn't give the figure at all. */
  readonly notGiven: boolean;
}

const NOTHING = {
  mistakes: [],
  cause: null,
  quoted: null,
  right: null,
  said: null,
  dollars: null,
  stake: 0,
  notGiven: false,
};

export function agrees(about: About, text: string, quoted: number | null, right: number | null): Finding {
  return { ...NOTHING, about, verdict: 'agrees', words: 'agrees', text, quoted, right };
}

/** Why it can't be told, without the words "can't tell". */
export function cantTell(about: About, why: string, more: Partial<Finding> = {}): Finding {
  const words = cantTellOf(why);
  return { ...NOTHING, about, verdict: "can't tell", words, text: words, ...more };
}

/** The quote has no such figure, or none that could be read: the line has others under headings that aren't understood. */
export function notGiven(about: About, name: string, { unread }: Pick<QuoteLine, 'unread'>): Finding {
  return cantTell(about, `no ${name} ${lacks(unread)}`, { notGiven: true });
}

/** "no length given", or "no length read" where it may stand in a column that wasn't understood. */
export function lacks(unread: readonly string[]): 'given' | 'read' {
  return unread.length > 0 ? 'read' : 'given';
}

/** In which figures a line agrees, in the order of its findings: `['quantity', 'length', 'price']`. */
export function agreesIn(findings: readonly Finding[]): readonly string[] {
  const about = findings.flatMap((one) => (one.verdict === 'agrees' && is(one.about, 'judged') ? [one.about] : []));
  return [...new Set(about)].map((one) => (one === 'unit price' ? 'price' : one));
}

/** Without words of a rule it says the sentence itself. */
export function differs(about: About, text: string, more: Partial<Finding> & Pick<Finding, 'cause'>): Finding {
  return { ...NOTHING, about, verdict: 'differs', words: text, text, ...more };
}
