/** `npm run proof:pdf [-- COUNT [SEED]]`: reads random tables, 2,000 where no count is given, and says how many openings went wrong. */
import { proof } from './tally';

const [count = '2000', seed = '0'] = process.argv.slice(2);
let since = Date.now();
const tally = await proof(Number(seed), Number(count), true, (done, so) => {
  if (Date.now() - since < 30_000) return;
  since = Date.now();
  console.log(`${done} tables: ${so.wrong.length} openings wrong, ${so.lost.length} lost so far`);
});
const part = ([right, all]: readonly [number, number]) => `${((100 * right) / all).toFixed(2)} % of ${all}`;
console.log(
  `${tally.tables} tables, ${tally.openings} openings: ${tally.right} right, ${tally.asked} asked about, ${tally.wrong.length} wrong, ${tally.lost.length} lost. ` +
    `Cells right: ${part(tally.ruled)} between rules, ${part(tally.open)} without.`,
);
for (const each of [...tally.wrong, ...tally.lost]) console.log(each);
if (tally.wrong.length + tally.lost.length > 0) process.exitCode = 1;
