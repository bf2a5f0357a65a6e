import type { Draft } from './asked';
import type { Read } from './changes';
import { listed, quote } from './figure';
import type { Opening, Writing } from './opening';
import { DASHED_FEET, POINT } from './plainFigure';

/*
 * Figures of many rows may be written in one manner that leaves a question: `~36`, `36 nom.`, `1.200 mm`, `4 1/4 poplar`. It is asked
 * once for the list, with a few of them quoted; who wants to look at each says so.
 */

/** Figures in a manner that others of the list may have. */
export interface Writings {
  /** Which of the choices was answered for a manner. */
  readonly answered: ReadonlyMap<string, number>;
  /** What is asked, by the sentence that asks. */
  readonly asked: Map<string, Writing>;
}

const MOST_QUOTED = 3;
const EACH = 'ask each';

export function mannerId(manner: string): string {
  return `figures:${manner}`;
}

/** Asks once for each manner; rows that an answer changes are read again. */
export function askManners(read: readonly Read[], again: (one: Read) => Opening): readonly Read[] {
  const written = new Map<string, Set<string>>();
  for (const { opening } of read)
    for (const { writing } of opening.problems)
      if (writing !== undefined)
        written.set(writing.manner, (written.get(writing.manner) ?? new Set()).add(writing.written));
  if (written.size === 0) return read;
  const drafts = new Map([...written].map(([manner, texts]) => [manner, draftOf(manner, [...texts])] as const));
  return read.map((one) => {
    const { changes, opening } = one;
    const own = opening.problems.flatMap(({ field, writing }) => {
      const draft = drafts.get(writing?.manner ?? '');
      return draft === undefined || !writing ? [] : [{ manner: writing.manner, draft: { ...draft, field } }];
    });
    if (own.length === 0) return one;
    for (const { manner, draft } of own) {
      const chosen = changes.ask(draft);
      if (chosen !== null && chosen.label !== EACH) changes.manners.set(manner, draft.choices.indexOf(chosen));
    }
    return { changes, opening: again(one) };
  });
}

function draftOf(manner: string, written: readonly string[]): Draft {
  const shown = written.slice(0, MOST_QUOTED).map(quote);
  const some = listed(written.length > MOST_QUOTED ? [...shown, 'more'] : shown);
  const { asks, labels } = ASKED[manner] ?? {
    asks: 'are they taken as the figures say?',
    labels: ['as the figures say'],
  };
  return {
    id: mannerId(manner),
    about: 'figures',
    text: `Figures are written ${some}; ${asks}`,
    choices: [...labels, EACH].map((label) => ({ label })),
    field: 'span',
  };
}

/** Manners that more can be said of than that the figure is meant. */
const ASKED: Readonly<Record<string, { readonly asks: string; readonly labels: readonly string[] }>> = {
  [POINT]: { asks: 'what is the mark between the digits?', labels: ['it parts thousands', 'a decimal mark'] },
  [DASHED_FEET]: { asks: 'are they feet and inches?', labels: ['feet and inches'] },
};
