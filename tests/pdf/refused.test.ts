import { degrees, PDFDocument, StandardFonts } from 'pdf-lib';
import { describe, expect, test } from 'vitest';
import { isPdf } from '../../src/pdf/isPdf';
import { crowded } from './bombs';
import { drawn, SCHEDULE_ROWS } from './plan';
import { locked } from './locked';
import { written } from './written';
import { blanks, read, rowsOf, schedule } from './reading';

describe('a PDF that can not be read is refused in a sentence', () => {
  test('protected with a password; one that only may not be changed opens without', async () => {
    const content = SCHEDULE_ROWS.flatMap((row, line) =>
      row.map((cell, column) => `BT /F 9 Tf ${50 + column * 80} ${700 - line * 18} Td (${cell}) Tj ET`),
    ).join('\n');
    expect(await read(locked(content, 'casing'))).toEqual({
      ok: false,
      message: 'The PDF is protected with a password: please ask for a copy without one.',
    });
    expect(await rowsOf(locked(content, ''))).toEqual([blanks(SCHEDULE_ROWS)]);
  });

  test('damaged, cut short, or no PDF inside', async () => {
    const whole = await drawn(schedule);
    for (const bytes of [whole.slice(0, 200), new TextEncoder().encode('%PDF-1.7\nnothing of the kind')]) {
      expect(isPdf(bytes)).toBe(true);
      expect(await read(bytes)).toEqual({
        ok: false,
        message: 'The PDF is damaged or cut short: please ask for it again.',
      });
    }
  });

  test('text at a slant', async () => {
    const document = await PDFDocument.create();
    const font = await document.embedFont(StandardFonts.Helvetica);
    const page = document.addPage();
    SCHEDULE_ROWS.forEach((row, line) =>
      row.forEach((cell, column) =>
        page.drawText(cell, {
          x: 60 + column * 80,
          y: 500 - line * 18 + column * 3,
          size: 9,
          font,
          rotate: degrees(2),
        }),
      ),
    );
    expect(await read(await document.save())).toEqual({ ok: false, message: expect.stringMatching(/askew/) });
  });

  test('letters drawn as lines', async () => {
    const document = await PDFDocument.create();
    const page = document.addPage();
    for (let letter = 0; letter < 300; letter += 1)
      page.drawSvgPath('M 0,0 Q 5,5 10,0 L 3,8', {
        x: 20 + (letter % 30) * 15,
        y: 700 - Math.floor(letter / 30) * 20,
        borderWidth: 0.5,
      });
    expect(await read(await document.save())).toEqual({ ok: false, message: expect.stringMatching(/drawn as lines/) });
  });

  test('a page scanned whole, which the library leaves out for its size', async () => {
    const content = Buffer.from(
      'q 612 0 0 792 0 0 cm BI /W 16 /H 16 /BPC 8 /CS /G /F /AHx ID ' + '80'.repeat(256) + '> EI Q',
    );
    expect(await read(written(content))).toEqual({
      ok: false,
      message: expect.stringMatching(/^It holds no text, or hardly any: it is blank or a picture of text/),
    });
  });

  test('a picture of text', async () => {
    const document = await PDFDocument.create();
    const pixel = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==';
    const image = await document.embedPng(pixel);
    document.addPage().drawImage(image, { x: 0, y: 0, width: 600, height: 800 });
    expect(await read(await document.save())).toEqual({ ok: false, message: expect.stringMatching(/picture of text/) });
  });

  test('more letters than any schedule has', async () => {
    expect(await read(crowded(400_001 + 6))).toEqual({
      ok: false,
      message: expect.stringMatching(/^It holds more than 400,000 letters/),
    });
  });

  test('text without a schedule', async () => {
    const bytes = await drawn((sheet) =>
      sheet.say('Dear builder, thank you for your interest in our arched casings.', 50, 50),
    );
    expect(await read(bytes)).toEqual({
      ok: false,
      message: expect.stringMatching(/^No schedule was found on its page/),
    });
  });
});
