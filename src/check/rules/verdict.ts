import {
  all,
  any,
  end,
  isOther,
  join,
  listWhere,
  says,
  start,
  when,
  without,
  words,
  type Expression,
  type Text,
} from './expression';

/** The few verdicts there are. Where a thing can't be known it is not called wrong. */
export type VerdictWord = 'agrees' | 'differs' | "can't tell";

/*
 * What is said of a figure: "agrees", "can't tell: no length given", or in what it differs: "reveal left out". '' where there is nothing to
 * say. The verdict follows from these words alone, for a figure and for a line.
 */

const CANT_TELL = "can't tell";
const GIVEN = ' given';
const AGREES = words('agrees');

/** Why it can't be told, in what is said of a figure. */
export function cantTellOf(why: string): string {
  return `${CANT_TELL}: ${why}`;
}

/** What is said of a figure, without the words "can't tell". */
export function reasonOf(text: string): string {
  return text.startsWith(CANT_TELL) ? text.slice(CANT_TELL.length + ': '.length) : text;
}

const isOpen = <Figures>(text: Text<Figures>) => says(start(text, CANT_TELL), CANT_TELL);
/** A figure that isn't given leaves a line's verdict open only where nothing else could be judged. */
const leavesOpen = <Figures>(text: Text<Figures>) => all(isOpen(text), isOther(end(text, GIVEN), GIVEN));

/** What is said of the figure is that it differs. */
export function isWrong<Figures>(text: Text<Figures>): Expression<boolean, Figures> {
  return all(isOther(text, ''), isOther(text, 'agrees'), isOther(start(text, CANT_TELL), CANT_TELL));
}

/** The verdict of a line, of all that is said of it; `judged` are the figures that are compared with ours: its own sums agreeing say nothing. */
export function lineVerdict<Figures>(
  everything: readonly Text<Figures>[],
  judged: readonly Text<Figures>[],
): Expression<VerdictWord, Figures> {
  const agree = any(...judged.map((text) => says(text, 'agrees')));
  return when(
    any(...everything.map(isWrong)),
    words('differs'),
    when(any(...everything.map(leavesOpen)), words(CANT_TELL), when(agree, AGREES, words(CANT_TELL))),
  );
}

/** A figure whose comparison gives a line its reason. */
export interface Reasoned<Figures> {
  readonly text: Text<Figures>;
  /** Before what is said of it: "length: "; '' for a sentence of its own. */
  readonly label: string;
  /** Where a line agrees in it. */
  readonly name: string;
}

/** Why a line has its verdict: what differs, or can't be told, each under its figure; else the figures that agree. */
export function lineReason<Figures>(
  verdict: Text<Figures>,
  each: readonly Reasoned<Figures>[],
): Expression<string, Figures> {
  const labeled = (label: string, text: Text<Figures>) => (label === '' ? text : join(words(label), text));
  const wrong = each.map(({ text, label }) => [isWrong(text), labeled(label, text)] as const);
  const open = each.map(
    ({ text, label }) => [isOpen(text), labeled(label, without(text, CANT_TELL.length + ': '.length))] as const,
  );
  const agree = each.map(({ text, name }) => [says(text, 'agrees'), words(name)] as const);
  return when(
    says(verdict, 'differs'),
    listWhere(wrong, '; '),
    when(says(verdict, 'agrees'), listWhere(agree, ', '), listWhere(open, '; ')),
  );
}

/** The verdict of one figure, of what is said of it. */
export function verdictOf(text: string): VerdictWord {
  if (text === 'agrees') return 'agrees';
  return text === '' || text.startsWith(CANT_TELL) ? CANT_TELL : 'differs';
}
