import type { Ends, HeadShape } from '../../../src/head/head';
import { blankOpening, type Opening, type OpeningField } from '../../../src/schedule/opening';
import type { Standards } from '../../../src/standards';
import { fixOpening, hasOwnRise } from '../fix';
import { withPoint } from '../format';

/** One opening as typed into the calculator: texts, so that what is half typed can stand. */
export interface OpeningAsk {
  readonly head: HeadShape;
  readonly span: string;
  readonly rise: string;
  readonly reveal: string;
  readonly face: string;
  readonly ends: Ends;
}
export type AskField = keyof OpeningAsk;

export function firstAsk(standards: Standards): OpeningAsk {
  const [span, rise] = standards.unit === 'in' ? ['36', '6'] : ['914', '152'];
  return { head: 'segmental', span, rise, reveal: '', face: '', ends: standards.ends };
}

/** The opening asked about, as far as the texts can be read, and the sentence against each one that can't. */
export function readAsk(
  ask: OpeningAsk,
  standards: Standards,
  locale?: string,
): { readonly opening: Opening; readonly refused: Readonly<Partial<Record<AskField, string>>> } {
  let opening: Opening = { ...blankOpening(0), head: ask.head, ends: ask.ends };
  const refused: Partial<Record<AskField, string>> = {};
  const fields: readonly (AskField & OpeningField)[] = hasOwnRise(ask.head)
    ? ['span', 'rise', 'reveal', 'face']
    : ['span', 'reveal', 'face'];
  for (const field of fields) {
    const read = fixOpening([opening], 0, field, withPoint(ask[field], locale), standards);
    if (read.ok) opening = read.value;
    else refused[field] = read.message;
  }
  for (const problem of opening.problems) {
    if (problem.field === 'span' || problem.field === 'rise') refused[problem.field] ??= problem.message;
  }
  return { opening, refused };
}
