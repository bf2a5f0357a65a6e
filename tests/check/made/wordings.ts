import { readFileSync } from 'node:fs';
import type { Random } from '../../random';

/** Words of suppliers by kind, written by somebody who hadn't read the reader; see README.md beside them. */
export interface Wording {
  readonly text: string;
  readonly kind: string;
  readonly plain: boolean;
  /** Of a description: what its words say, in inches unless the name says otherwise. */
  readonly reads?: Readonly<Record<string, unknown>>;
}

export const WORDINGS: readonly Wording[] = (
  JSON.parse(readFileSync(new URL('../suppliers/wordings.json', import.meta.url), 'utf8')) as {
    readonly wordings: readonly Wording[];
  }
).wordings;

export type Style = 'plain' | 'odd';

/** Words of one kind, "heading: span" or "line: freight", in the style asked for, or plain ones where it has none that fit. */
export function wording(
  kind: string,
  style: Style,
  random: Random,
  fits: (text: string) => boolean = () => true,
): string {
  const all = WORDINGS.filter((one) => one.kind === kind && fits(one.text));
  const own = all.filter(({ plain }) => plain === (style === 'plain'));
  const from = own.length > 0 ? own : all;
  if (from.length === 0) throw new Error(`no wording of "${kind}" fits`);
  return random.pick(from).text;
}
