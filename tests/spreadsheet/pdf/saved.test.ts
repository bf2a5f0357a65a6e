import { degrees, PDFDocument } from 'pdf-lib';
import { beforeAll, describe, expect, test } from 'vitest';
import { score } from '../../pdf/score';
import { savedAsPdf } from './save';
import { SHEETS } from './sheets';

const files = new Map<string, Uint8Array>();
beforeAll(async () => {
  const all = Object.entries(SHEETS);
  const saved = await savedAsPdf(all.map(([, { fods }]) => fods));
  all.forEach(([name], at) => files.set(name, saved[at]!));
});

async function turnedPages(bytes: Uint8Array): Promise<Uint8Array> {
  const document = await PDFDocument.load(bytes);
  document.getPages().forEach((each) => each.setRotation(degrees(90)));
  return document.save();
}

describe('a schedule saved as PDF by a spreadsheet is read as its author has it, or asked about', () => {
  test.each(Object.entries(SHEETS))('%s', async (name, sheet) => {
    const bytes = files.get(name)!;
    const printed = sheet.turned ? await turnedPages(bytes) : bytes;
    const { asked, right, ...others } = await score(printed, sheet.headings, sheet.rows);
    expect(others).toMatchObject({ wrong: [], lost: [], refused: null });
    expect(right).toBe(sheet.rows.length - asked);
    expect(asked).toBeLessThanOrEqual(sheet.asked ?? 0);
  });
});
