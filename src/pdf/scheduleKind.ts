import { readHeading } from '../schedule/headingText';
import { findLayout } from '../schedule/layout';
import type { ListKind } from './found';

/** A table with fewer things named is no list of ours. */
export const FEWEST_NAMED = 3;

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
