import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkTable, type LineCheck } from '../../../src/check/quote';
import { defaultStandards } from '../../../src/standards';
import { takeoff, type OpeningTakeoff } from '../../../src/takeoff/takeoff';
import { random } from '../../random';
import { randomOpenings } from '../../takeoff/openings';
import { valueOf } from '../../value';
import { plant, rightLine, tableByFoot, tableOf, withSums, withUnknown, type MadeLine } from './planted';

/** `PLANTED_TIMES=10` tries ten times as many quotes: more than 10,000 lines. */
const TIMES = Number(process.env['PLANTED_TIMES'] ?? 1);
const RUNS = 6 * TIMES;
const OPENINGS = 200;

/** Why the verdict on a line is not the one it was made for; null where it is. */
function fault(made: MadeLine, check: LineCheck): string | null {
  const said = `${made.mark} ${JSON.stringify(made.planted)}: ${check.verdict}, ${check.findings.map(({ text }) => text).join(' | ')}`;
  const { planted } = made;
  if (planted === null) return check.verdict === 'agrees' ? null : said;
  const found = check.findings.find(({ about }) => about === planted.about);
  if (found === undefined || found.verdict === 'agrees') return said;
  if (planted.mistake !== '' && !found.mistakes.includes(planted.mistake)) return said;
  const others = check.findings.filter(({ about, verdict }) => about !== planted.about && verdict === 'differs');
  return others.length === 0 ? null : said;
}

describe('mistakes planted at random in right quotes', () => {
  it('are all found when above the tolerance, and no right line is accused', () => {
    let lines = 0;
    let planted = 0;
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const from = random(seed);
        const taken = takeoff(randomOpenings(OPENINGS, from), defaultStandards());
        const whole = taken.openings.filter((row) => row.own !== null);
        const made = whole.map((row) => {
          const line = rightLine(row, from);
          if (from.between(0, 1) < 0.5) plant(line, row, taken, from);
          return line;
        });
        const check = valueOf(checkTable(tableOf(made, from), taken));
        lines += made.length;
        planted += made.filter((line) => line.planted !== null).length;
        expect(check.lines).toHaveLength(made.length);
        expect(made.flatMap((line, at) => fault(line, check.lines[at]!) ?? [])).toEqual([]);
        expect(check.notQuoted.map(({ opening }) => opening)).toEqual(taken.openings.filter((row) => row.own === null));
      }),
      { numRuns: RUNS },
    );
    expect(lines).toBeGreaterThan(900 * TIMES);
    expect(planted).toBeGreaterThan(350 * TIMES);
  }, 120_000);

  it('priced by the foot are none: no right line is accused', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const from = random(seed);
        const taken = takeoff(randomOpenings(60, from), defaultStandards());
        const made = taken.openings.filter((row) => row.own !== null).map((row) => rightLine(row, from));
        const check = valueOf(checkTable(tableByFoot(made, from), taken));
        const accused = check.lines.filter(({ verdict }) => verdict === 'differs');
        expect(accused.map(({ findings }) => findings.map(({ text }) => text))).toEqual([]);
        // A length of all pieces may be another mistake's for one: that can't be told, all else agrees.
        for (const { findings } of check.lines)
          expect(findings.find(({ about }) => about === 'extension')!.verdict).toBe('agrees');
      }),
      { numRuns: RUNS },
    );
  }, 60_000);

  it('are found beside a column that isn’t understood, and no line with a figure in it is called right', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const from = random(seed);
        const taken = takeoff(randomOpenings(60, from), defaultStandards());
        const made = taken.openings.flatMap((row) => {
          if (row.own === null) return [];
          const line = rightLine(row, from);
          if (from.between(0, 1) < 0.5) plant(line, row, taken, from);
          return [line];
        });
        const check = valueOf(checkTable(withUnknown(tableOf(made, from), from), taken));
        expect(check.quote.setAside.filter(({ unread }) => unread)).toHaveLength(1);
        const wanted = made.map(({ planted }) =>
          planted === null || planted.about === 'extension' ? "can't tell" : 'differs',
        );
        const verdicts = check.lines.map(({ verdict, findings }) => {
          // An extension that is off may have its reason in that column, unless a usual mistake explains it.
          const only = findings.filter((one) => one.verdict === 'differs').every(({ about }) => about === 'extension');
          return only ? "can't tell" : verdict;
        });
        expect(verdicts).toEqual(wanted);
        expect(check.lines.filter(({ verdict }) => verdict === 'agrees')).toEqual([]);
      }),
      { numRuns: RUNS },
    );
  }, 60_000);

  it('in the subtotal alone are said once, with their money once', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 5, max: 5000 }), fc.boolean(), (seed, off, wrong) => {
        const from = random(seed);
        const taken = takeoff(randomOpenings(30, from), defaultStandards());
        const made = taken.openings.filter((row) => row.own !== null).map((row) => rightLine(row, from));
        const table = withSums(tableOf(made, from), made, wrong ? off : 0);
        const check = valueOf(checkTable(table, taken));
        expect(check.sums).toHaveLength(5);
        const faults = check.sums.filter(({ finding }) => finding.verdict !== 'agrees');
        expect(faults.map(({ finding }) => [finding.about, Math.round(finding.dollars!)])).toEqual(
          wrong ? [['subtotal', off]] : [],
        );
      }),
      { numRuns: RUNS },
    );
  }, 60_000);

  it('such as lines left out, written twice or for no opening are found and nothing else is', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const from = random(seed);
        const taken = takeoff(randomOpenings(60, from), defaultStandards());
        const whole = taken.openings.filter((row) => row.own !== null);
        const left = new Set<OpeningTakeoff>(whole.filter(() => from.between(0, 1) < 0.1));
        const made = whole.filter((row) => !left.has(row)).map((row) => rightLine(row, from));
        const twice = made.filter(() => from.between(0, 1) < 0.1);
        const strangers = [1, 2].map((number): MadeLine => ({ ...rightLine(whole[0]!, from), mark: `Z${number}` }));
        const table = tableOf([...made, ...twice, ...strangers], from);
        const check = valueOf(checkTable(table, taken));
        const verdicts = check.lines.map(({ verdict }) => verdict);
        expect(verdicts.slice(0, made.length).filter((verdict) => verdict !== 'agrees')).toEqual([]);
        for (const { findings } of check.lines.slice(made.length, made.length + twice.length))
          expect(findings.map(({ cause }) => cause)).toContain('quoted twice');
        // Named in the mark's column it is no opening; named in words it can't be told.
        for (const { verdict } of check.lines.slice(made.length + twice.length)) expect(verdict).not.toBe('agrees');
        const missing = check.notQuoted.filter(({ opening }) => opening.own !== null);
        expect(new Set(missing.map(({ opening }) => opening))).toEqual(left);
        // A line that names nothing may be for any of them: then no money is missing for certain.
        const unnamed = check.lines.some(({ line, places }) => line.mark === '' && places.length === 0);
        const certain = missing.filter(({ opening }) => !unnamed && opening !== whole[0]);
        for (const { finding } of certain) expect(finding.verdict).toBe('differs');
        if (unnamed) expect(missing.filter(({ finding }) => finding.dollars !== null)).toEqual([]);
      }),
      { numRuns: RUNS },
    );
  }, 60_000);
});
