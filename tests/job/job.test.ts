import { describe, expect, it } from 'vitest';
import { BLANK_JOB, JOB_FIELDS, jobCellName, type JobField } from '../../src/job/fields';
import { jobJson, readJobJson } from '../../src/job/jobJson';
import { jobFieldText, readJobField } from '../../src/job/readField';
import { SETTINGS } from '../../src/standards';
import { refusalOf, valueOf } from '../value';

const field = (key: string) => (JOB_FIELDS as readonly JobField[]).find((one) => one.key === key)!;

describe('a job', () => {
  it('is blank at first: nothing invented appears on paper', () => {
    expect(
      Object.values(BLANK_JOB).filter(
        (held) =>
          !['', 0, 'opening', 'in the prices', 'everything', 'not shown', 'letter'].includes(held as never) &&
          !(Array.isArray(held) && held.length === 0),
      ),
    ).toEqual([]);
  });

  it('goes out as JSON and comes back the same', () => {
    const job = {
      ...BLANK_JOB,
      job: 'Lot 12',
      shopLines: ['1 Example Road', 'Example Town'],
      extras: [{ words: 'Blocks; corner', quantity: 4, unitPrice: -12.5 }],
      taxRate: 0.0625,
      taxOn: 'everything but delivery' as const,
    };
    expect(valueOf(readJobJson(jobJson(job), 'job.json'))).toEqual(job);
  });

  it('reads what a cell or a person says', () => {
    expect(valueOf(readJobField(field('taxRate'), '6.25%'))).toBe(0.0625);
    expect(valueOf(readJobField(field('minimum'), '$1,250.00'))).toBe(1250);
    expect(valueOf(readJobField(field('terms'), ' Net 30 \r\n\r\n Half down '))).toEqual(['Net 30', 'Half down']);
    expect(valueOf(readJobField(field('extras'), 'Straight casing; 120.5; 3.25\nTrade credit; 1; -50'))).toEqual([
      { words: 'Straight casing', quantity: 120.5, unitPrice: 3.25 },
      { words: 'Trade credit', quantity: 1, unitPrice: -50 },
    ]);
    expect(valueOf(readJobField(field('linesBy'), ' Place '))).toBe('place');
    for (const one of JOB_FIELDS) expect(valueOf(readJobField(one, '  '))).toEqual(BLANK_JOB[one.key]);
  });

  it('shows every value as a text that reads back as the same value', () => {
    const extras = [{ words: 'Blocks; corner', quantity: 4.25, unitPrice: 12.5 }];
    expect(valueOf(readJobField(field('extras'), jobFieldText(extras)))).toEqual(extras);
    expect(valueOf(readJobField(field('included'), jobFieldText(['One', 'Two'])))).toEqual(['One', 'Two']);
  });

  it.each([
    ['{"taxRate": 7}', 'Tax must be from 0% to 100%; got 7.'],
    ['{"minimum": 10.005}', 'Minimum charge must be in whole cents; got 10.005.'],
    ['{"minimum": -1}', 'Minimum charge must be a number from 0 to 1000000; got -1.'],
    ['{"taxOn": "wood"}', 'Tax is on must be one of: everything; everything but delivery. Got "wood".'],
    ['{"customer": {"name": "A"}}', 'Customer must be text.'],
    ['{"terms": [["a"]]}', 'Terms must be lines of text.'],
    [
      '{"extras": "Blocks, 4"}',
      'Other lines: a line is words; quantity; unit price, such as Blocks; 4; 12.50. Got "Blocks, 4".',
    ],
    [
      '{"extras": [{"words": "Blocks", "quantity": 0, "unitPrice": 1}]}',
      'Other lines: the quantity of "Blocks" must be a number from more than 0 to 1000000; got 0.',
    ],
    [
      '{"extras": [{"words": "Blocks", "quantity": 1, "unitPrice": 1.001}]}',
      'Other lines: the unit price of "Blocks" must be money in whole cents, at most 1000000; got 1.001.',
    ],
  ])('refuses %s', (text, sentence) => {
    expect(refusalOf(readJobJson(text, 'job.json'))).toBe(`"job.json": ${sentence}`);
  });

  it('refuses what is no job at all, and a field there is not', () => {
    expect(refusalOf(readJobJson('[]', 'j'))).toContain('must hold an object');
    expect(refusalOf(readJobJson('{', 'j'))).toContain('is not JSON');
    expect(refusalOf(readJobJson('{"costumer": "x"}', 'j'))).toContain('has the field "costumer", which a job has not');
    expect(refusalOf(readJobJson(`{"terms": "${'x'.repeat(6000)}"}`, 'j'))).toContain('at most 5000 characters');
  });

  it('has names of its own: no field is called as a setting of the shop, or as another field', () => {
    const labels = [...JOB_FIELDS.map(({ label }) => label), ...SETTINGS.map(({ label }) => label)];
    expect(labels.filter((label, at) => labels.indexOf(label) !== at)).toEqual([]);
    expect(jobCellName('taxRate')).toBe('Job_tax_rate');
  });
});
