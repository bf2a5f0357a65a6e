import { describe, expect, it } from 'vitest';
import { isDark } from '../../../taskpane/pane/theme';

describe('the host’s ground', () => {
  it.each([
    ['#ffffff', false],
    ['#F0F0F0', false],
    ['#262626', true],
    ['nonsense', false],
    ['#1b1b1b', true],
  ])('%s is dark: %s', (color, dark) => {
    expect(isDark(color)).toBe(dark);
  });
});
