/**
 * Quotes made at random in every layout, in plain and in odd words, with mistakes of every kind: `npm run bench -- quotes [EACH] [SEED]`.
 * A table by layout and one by kind of mistake; `SHOW=1` prints what isn't as it should be.
 */
import { checkTable } from '../src/check/quote';
import { random } from '../tests/random';
import { LAYOUTS } from '../tests/check/made/layouts';
import { makeQuote } from '../tests/check/made/makeQuote';
import { judged, takeoffOf } from '../tests/check/made/judge';
import { Tally } from '../tests/check/made/tally';

const SEED = 19;
const EACH = 48;

export function run(args: readonly string[]): void {
  const each = Number(args[0] ?? EACH);
  const from = random(Number(args[1] ?? SEED));
  const [layouts, kinds] = [new Tally(), new Tally()];
  let quotes = 0;
  const show = (text: string) => process.env.SHOW !== undefined && console.log(text);
  for (const layout of LAYOUTS)
    for (const style of ['plain', 'odd'] as const)
      for (let at = 0; at < each; at++) {
        const seed = from.whole(1, 2 ** 31);
        const quote = makeQuote(layout, style, random(seed));
        const read = checkTable(quote.table, takeoffOf(quote));
        quotes += 1;
        const name = `${style}: ${layout.name}`;
        if (!read.ok) {
          layouts.add(name, 'not read');
          show(`${name} ${seed}: ${read.message}`);
          continue;
        }
        for (const made of quote.rows) {
          const { verdict, named, texts } = judged(read.value, made);
          const where = `${name} ${seed} row ${made.row} ${made.what}`;
          const cells = quote.table.rows[made.row - 1]!.join(' | ');
          if (made.what === 'alternate') continue;
          if (made.planted === null) {
            const said = made.undecidable && verdict === "can't tell" ? 'no rate' : verdict;
            layouts.add(name, `right: ${said}`);
            if (said !== 'agrees' && said !== 'no rate')
              show(`RIGHT ${where} [${cells}]\n    ${texts.join('\n    ') || verdict}`);
          } else {
            layouts.add(name, `wrong: ${verdict}`);
            kinds.add(made.planted.kind, verdict);
            if (named) kinds.add(made.planted.kind, 'named');
            if (!named || verdict === 'agrees')
              show(`WRONG ${made.planted.kind}: ${where} [${cells}]\n    ${texts.join('\n    ') || verdict}`);
          }
        }
        for (const mark of quote.omitted) {
          const found = read.value.notQuoted.find(({ opening }) => opening.opening.mark === mark)?.finding.verdict;
          kinds.add('opening left out', found ?? 'agrees');
          if (found === 'differs') kinds.add('opening left out', 'named');
          else show(`OMITTED ${name} ${seed} ${mark}: ${found}`);
        }
        const extra = read.value.notQuoted.filter(
          ({ opening, finding }) => finding.verdict === 'differs' && !quote.omitted.includes(opening.opening.mark),
        );
        for (const one of extra) {
          layouts.add(name, 'said left out');
          show(`SAID LEFT OUT ${name} ${seed} ${one.opening.opening.mark}`);
        }
      }
  console.log(`${quotes} quotes, seed ${args[1] ?? SEED}. Rows by layout:`);
  layouts.print([
    'right: agrees',
    'right: differs',
    "right: can't tell",
    'right: no such row',
    'right: no rate',
    'said left out',
    'wrong: differs',
    "wrong: can't tell",
    'wrong: agrees',
    'wrong: no such row',
    'not read',
  ]);
  console.log('Mistakes by kind:');
  kinds.print(['differs', "can't tell", 'agrees', 'no such row', 'named']);
}
