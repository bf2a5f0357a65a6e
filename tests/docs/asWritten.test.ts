import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { asWrittenPage } from '../../docs/asWrittenPage';

/** A table's cells without the blanks that its columns are filled up with. */
const bare = (page: string) => page.replace(/ *\| */g, '|').replace(/-{3,}/g, '---');

test('the page of what is written and what is read says what the reader gives', () => {
  expect(bare(readFileSync('docs/as-written.md', 'utf8'))).toBe(bare(asWrittenPage()));
});
