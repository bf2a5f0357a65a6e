import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

describe.skipIf(process.platform === 'win32')('the built command', () => {
  test('runs by its own name after any build, as npx runs it', () => {
    const { status, stdout, error } = spawnSync(resolve('dist/cli/archwright.cjs'), ['fn', 'RADIUS', '36', '6'], {
      encoding: 'utf8',
    });
    expect({ status, stdout, error }).toEqual({ status: 0, stdout: '30\n', error: undefined });
  });
});
