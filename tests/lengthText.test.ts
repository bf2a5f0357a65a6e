import { describe, expect, it } from 'vitest';
import { lengthInWords, lengthText } from '../src/lengthText';

describe('a length as a shop reads it', () => {
  it('is inches as on a tape, to the nearest sixteenth unless another fraction is asked for', () => {
    expect(lengthText(19.6875, 'in')).toBe('19 11/16');
    expect(lengthText(19.97, 'in')).toBe('20');
    expect(lengthText(17.96875, 'in', 32)).toBe('17 31/32');
  });

  it('is millimeters to a tenth, an exact half going up, whatever fraction is asked for', () => {
    expect(lengthText(914.4, 'mm')).toBe('914.4');
    expect(lengthText(914.45, 'mm', 32)).toBe('914.5');
    expect(lengthText(914, 'mm')).toBe('914');
  });

  it('names its unit in a sentence where it is not inches', () => {
    expect(lengthInWords(19.6875, 'in')).toBe('19 11/16');
    expect(lengthInWords(17.96875, 'in', 32)).toBe('17 31/32');
    expect(lengthInWords(914.4, 'mm')).toBe('914.4 mm');
  });

  it('is the plain figure beyond a million million inches', () => {
    expect(lengthText(2e12, 'in')).toBe('2000000000000');
  });
});
