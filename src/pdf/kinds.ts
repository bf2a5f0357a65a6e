import { readHeading, normalHeading, splitUnit } from '../schedule/headingText';
import { findLayout } from '../schedule/layout';
import { matchQuoteHeading } from '../quote/meanings';
import { quoteScore } from '../quote/headings';
import type { ListKind } from './found';

/** A table with fewer things named is no list of ours. */
const FEWEST_NAMED = 3;

export const SCHEDULE: ListKind = {
  name: 'schedule',
  of: 'an opening',
  isHeading: (text) => readHeading(text) !== null,
  fits: ({ rows }) => {
    const layout = findLayout(rows, 0, {});
    const named = new Set(layout?.columns.flatMap(({ key }) => (key === null ? [] : [key])));
    return layout !== null && named.size >= FEWEST_NAMED && rows.length > (layout.headingRows.at(-1) ?? 0) + 1;
  },
};

export const QUOTE: ListKind = {
  name: 'quote',
  of: 'a line of a quote',
  isHeading: (text) => matchQuoteHeading(normalHeading(splitUnit(text).name)) !== null,
  fits: (table) => quoteScore(table) >= FEWEST_NAMED && table.rows.length > 1,
};

export const KINDS: Readonly<Record<ListKind['name'], ListKind>> = { schedule: SCHEDULE, quote: QUOTE };
