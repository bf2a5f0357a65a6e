import { number } from './rules/expression';
import { miscounts } from './rules/lineRules';

/** How many pieces a quote has, by each way to count wrong, where `right` are wanted. Left out are those that give the right count. */
export function knownQuantities(right: number): readonly { readonly mistake: string; readonly figure: number }[] {
  return miscounts(number(right))
    .map(([mistake, wrong]) => ({ mistake, figure: wrong.of({})! }))
    .filter(({ figure }) => Number.isInteger(figure) && figure > 0 && figure !== right);
}
