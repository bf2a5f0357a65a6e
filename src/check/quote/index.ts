/** The door of quote checking: a table and a takeoff in, verdicts out. */
export { checkQuote, checkTable, type CauseSum, type QuoteCheck } from './checkQuote';
export type { NotQuoted } from './notQuoted';
export { byStake } from './stakes';
export type { LineCheck } from './checkLine';
export type { About, Finding } from './finding';
export type { VerdictWord } from '../rules/verdict';
export {
  amountOf,
  type Quote,
  type QuoteCharge,
  type QuoteItem,
  type QuoteLine,
  type QuoteSum,
  type SetAside,
} from '../../quote/quote';
export { QUOTE_LABELS, type QuoteKey } from '../../quote/meanings';
export { chooseQuoteTable, readQuote } from '../../quote/readQuote';
export { amountText, correction } from './correction';
export { hangs, priceOff } from './stakes';
export { summaryText, totalTexts } from './summary';
export type { SumCheck } from './sums';
