import { describe, expect, it } from 'vitest';
import { lengthText, onTape, typedLength, withPoint } from '../../../taskpane/pane/format';

describe('lengths in the pane', () => {
  it.each([
    [36, 'in', '36″'],
    [35.4375, 'in', '35\u00a07/16″'],
    [0.1875, 'in', '3/16″'],
    [36.1, 'in', '36.1″'],
    [914.4, 'mm', '914.4 mm'],
  ] as const)('%s %s read as %s', (length, unit, text) => {
    expect(lengthText(length, unit, 'en-US')).toBe(text);
  });

  it('typed back lose nothing', () => {
    expect(typedLength(36.03, 'in', 'en-US')).toBe('36.03');
    expect(typedLength(914.45, 'mm', 'de-DE')).toBe('914,45');
  });

  it('as lengths are read off a tape', () => {
    expect(onTape(43.3558872, 'in', 'en-US')).toBe('43\u00a03/8″');
    expect(onTape(914.449, 'mm', 'en-US')).toBe('914.4 mm');
  });
});

describe('a decimal comma', () => {
  it('is a point where the locale writes one, and stays where it does not', () => {
    expect(withPoint('36,5', 'de-DE')).toBe('36.5');
    expect(withPoint('36,5', 'en-US')).toBe('36,5');
  });
});
