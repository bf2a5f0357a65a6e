/** Ways to count wrong: how many pieces a quote has where `right` are wanted. Left out are those that give the right count. */
export function knownQuantities(right: number): readonly { readonly mistake: string; readonly figure: number }[] {
  return [
    { mistake: 'one piece counted for a pair', figure: right / 2 },
    { mistake: 'a pair counted for one piece', figure: right * 2 },
    { mistake: 'quantity of one', figure: 1 },
  ].filter(({ figure }) => Number.isInteger(figure) && figure > 0 && figure !== right);
}
