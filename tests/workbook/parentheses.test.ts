import { expect, it } from 'vitest';
import { HEAD_SHAPES } from '../../src/head/head';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { random } from '../random';
import { randomOpenings, scheduleOf } from '../takeoff/openings';
import { quickSheets } from '../takeoff/quickPlan';

/** Parentheses that are open at the end, and the deepest that closes more than is open. */
function open(formula: string): { readonly atEnd: number; readonly least: number } {
  let [atEnd, least] = [0, 0];
  for (const sign of formula.replace(/"[^"]*"/g, '')) {
    if (sign === '(') atEnd += 1;
    if (sign === ')') atEnd -= 1;
    least = Math.min(least, atEnd);
  }
  return { atEnd, least };
}

it.each([true, false])(
  'every formula closes its parentheses, which Calc forgives and Excel refuses (plain: %s)',
  (plain) => {
    const standards = defaultStandards();
    const openings = HEAD_SHAPES.flatMap((head) => randomOpenings(3, random(9), standards, [head]));
    const sheets = quickSheets(scheduleOf(openings), takeoff(openings, standards), { plain });
    const formulas = sheets.flatMap((sheet) => sheet.rows.flat()).flatMap((cell) => cell?.formula ?? []);
    expect(formulas.length).toBeGreaterThan(900);
    expect(formulas.filter((formula) => open(formula).atEnd !== 0 || open(formula).least < 0)).toEqual([]);
    // Excel takes no formula of more than 8192 characters.
    expect(Math.max(...formulas.map((formula) => formula.length))).toBeLessThan(8192);
  },
);
