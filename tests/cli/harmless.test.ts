import { describe, expect, it } from 'vitest';
import { harmless } from '../../cli/harmless';

describe('text for a terminal', () => {
  it('holds nothing that a terminal obeys', () => {
    expect(harmless('W1\u001b[2J\u0007\r\u009b31m\u202eabc\u007f')).toBe(
      'W1\\u001b[2J\\u0007\\u000d\\u009b31m\\u202eabc\\u007f',
    );
  });

  it('keeps line ends, tabs and every other character', () => {
    expect(harmless('W1\t36 ½\n“é” 水 😀')).toBe('W1\t36 ½\n“é” 水 😀');
  });

  it('stays the same value where it is JSON', () => {
    const value = { mark: 'W\u009b1\u202e\u007f' };
    expect(JSON.parse(harmless(JSON.stringify(value)))).toEqual(value);
  });
});
