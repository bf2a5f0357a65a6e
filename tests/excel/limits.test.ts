import { beforeAll, describe, expect, test } from 'vitest';
import { fillingCosts, sheetsOf } from '../../bench/excel';

/** Excel on the web takes so much in one request, and gives so much back (Microsoft's documentation). */
const LIMIT = 5_000_000;
/** The same few openings over and over: what grows then is the rows, as it does in a long list, and not the set-ups. */
const [KINDS, FEW, MANY] = [6, 24, 72];

type Costs = Awaited<ReturnType<typeof fillingCosts>>;
let few: Costs;
let many: Costs;
beforeAll(async () => {
  few = await fillingCosts(sheetsOf(FEW, KINDS));
  many = await fillingCosts(sheetsOf(MANY, KINDS));
}, 60_000);

/**
 * Most bytes, asked and answered, that each further opening may cost. Measured from 24 to 120 openings: 1,327 and 159 for
 * filling, 1,329 and 2,849 for filling again, 630 and 1,693 for entering anew, 225 and 3,626 for freezing; here with a quarter
 * of room. `npm run bench -- excel` measures 100, 1,000 and 5,000 openings (docs/excel.md).
 */
const MOST = {
  fill: { asked: 1_650, answered: 200 },
  again: { asked: 1_650, answered: 3_550 },
  reenter: { asked: 790, answered: 2_100 },
  freeze: { asked: 280, answered: 4_500 },
} as const;

describe.each(['fill', 'again', 'reenter', 'freeze'] as const)('on the line to Excel, to %s', (deed) => {
  test('takes as many requests for three times the openings, each far under 5 MB either way', () => {
    expect(many[deed].requests).toBe(few[deed].requests);
    expect(Math.max(many[deed].mostAsked, many[deed].mostAnswered)).toBeLessThan(LIMIT / 10);
  });

  test('grows with the rows by no more bytes than was measured', () => {
    const growth = (way: 'asked' | 'answered') => (many[deed][way] - few[deed][way]) / (MANY - FEW);
    expect(growth('asked')).toBeGreaterThan(0);
    expect(growth('asked')).toBeLessThan(MOST[deed].asked);
    expect(growth('answered')).toBeLessThan(MOST[deed].answered);
  });
});
