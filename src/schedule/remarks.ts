import type { Ends, HeadShape } from '../head/head';
import { readEnds, readHead } from '../head/words';
import { straightMarks } from './straightMarks';

/** What a row's remarks say beyond doubt; anything else in them is left alone. */
export interface RemarkFacts {
  readonly head: { readonly shape: HeadShape; readonly said: string } | null;
  readonly ends: { readonly ends: Ends; readonly said: string } | null;
  readonly legsToFloor: boolean;
}

/** Words that take an opening out of the job. */
const WITHDRAWN =
  'void(?:ed)?|del\\.?|deleted?|omit(?:ted)?|cancel(?:l?ed)?|reserved|number not used|not used|n\\.?i\\.?c\\.?|not in contract|by others';
const WHOLLY_WITHDRAWN = new RegExp(`^(?:${WITHDRAWN})$`, 'i');
const MARKED_WITHDRAWN = new RegExp(`[\\s([-](${WITHDRAWN})[)\\]]?$`, 'i');
/** Legs whose length only the jamb's drawing tells. */
const HAS_LEGS = /^(?:with )?(?:casing )?legs?(?: (?:down )?to (?:the )?(?:window )?(?:sill|stool|apron))?$/i;
const LEGS_TO_FLOOR = /^(?:with )?(?:casing )?legs? (?:down )?to (?:the )?(?:finish(?:ed)? )?floor$/i;

/** Words that name a head even in a remark; "flat", "plain" or "radius" alone may speak of anything. */
const NAMES_A_HEAD =
  /half|quarter|1\/[24]|semi|segment|eyebrow|ellip|three|basket|gothic|pointed|lancet|full (?:round|circle)|(?:straight|square|flat) (?:head|top)/i;
const NAMES_ENDS = /ends?\b|cut\b|legs?\b|miter/i;

/**
 * Facts in free text, clause by clause ("half round; legs to floor"). A clause counts only when the whole of it is the
 * name of a head or of an end cut, and only when no other clause names another one.
 */
export function readRemarks(text: string): RemarkFacts {
  const clauses = text
    .split(/[;,.\n]|\s[-–—]\s/)
    .map((clause) => clause.trim())
    .filter((clause) => clause !== '' && clause.length <= 40);
  const heads = new Map<HeadShape, string>();
  const ends = new Map<Ends, string>();
  let legsToFloor = false;
  for (const clause of [...clauses, text.trim()]) {
    if (LEGS_TO_FLOOR.test(clause)) legsToFloor = true;
    if (clause.length > 40) continue;
    const shape = NAMES_A_HEAD.test(clause) ? readHead(clause) : null;
    if (shape?.ok) heads.set(shape.value, clause);
    if (HAS_LEGS.test(clause)) ends.set('legs', clause);
    const end = NAMES_ENDS.test(clause) ? readEnds(clause) : null;
    if (end?.ok) ends.set(end.value, clause);
  }
  const [head] = heads;
  const [end] = ends;
  return {
    head: heads.size === 1 && head ? { shape: head[0], said: head[1] } : null,
    ends: ends.size === 1 && end ? { ends: end[0], said: end[1] } : null,
    legsToFloor,
  };
}

/** The clause of a free text that takes the opening out of the job ("void", "by others"), or null. */
export function withdrawnBy(text: string): string | null {
  if (!/[a-z]/i.test(text)) return null;
  // A period ends a clause, but not one of N.I.C.
  const clauses = text.split(/[;,\n()]|\.(?=\s|$)|\s[-–—]\s/).map((clause) => clause.trim());
  return clauses.find((clause) => clause.length <= 40 && WHOLLY_WITHDRAWN.test(clause)) ?? null;
}

/** The same words behind a mark: `W5 (VOID)`, `W5 - deleted`. */
export function withdrawnMark(mark: string): string | null {
  return mark.length <= 80 ? (MARKED_WITHDRAWN.exec(straightMarks(mark))?.[1] ?? null) : null;
}
