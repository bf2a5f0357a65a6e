import { matchQuoteHeading } from '../quote/meanings';
import { quoteScore } from '../quote/headings';
import { normalHeading, splitUnit } from '../schedule/headingText';
import type { ListKind } from './found';
import { FEWEST_NAMED } from './scheduleKind';

export const QUOTE: ListKind = {
  name: 'quote',
  of: 'a line of a quote',
  isHeading: (text) => matchQuoteHeading(normalHeading(splitUnit(text).name)) !== null,
  fits: (table) => quoteScore(table) >= FEWEST_NAMED && table.rows.length > 1,
};
