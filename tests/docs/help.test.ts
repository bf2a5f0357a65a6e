import { describe, expect, it } from 'vitest';
import { existsSync } from 'node:fs';
import { HELP_PAGES, helpPage, slug } from '../../docs/help';
import { METADATA } from '../../functions/metadata';
import { SETTING_GROUPS } from '../../src/standards';
import { functionHelp, HELP_OF_PLACE, HELP_OF_STEP, settingsHelp } from '../../taskpane/pane/help';

const PAGES = new Map(HELP_PAGES.map((source) => [source.page as string, helpPage(source)]));
const idsOf = (page: string) => [...PAGES.get(page)!.html.matchAll(/<h\d id="([^"]*)"/g)].map(([, id]) => id!);

describe('the pages of help', () => {
  it.each([...PAGES.keys()])(
    '%s: every link leads to a page and a heading that are there, every picture is there',
    (page) => {
      const { html, files } = PAGES.get(page)!;
      const hrefs = [...html.matchAll(/<a href="([^"]*)"/g)].map(([, href]) => href!);
      const lost = hrefs.filter((href) => {
        if (href.startsWith('https://')) return false;
        const [to, anchor] = href.split('#') as [string, string?];
        if (to !== '' && !PAGES.has(to)) return true;
        return anchor !== undefined && !idsOf(to === '' ? page : to).includes(anchor);
      });
      expect(lost).toEqual([]);
      expect(files.filter((file) => !existsSync(file))).toEqual([]);
      expect(new Set(idsOf(page)).size).toBe(idsOf(page).length);
      expect(html).not.toContain('&lt;!--');
    },
  );

  it('have a heading for every worksheet function, where its help address leads', () => {
    const addresses = METADATA.map(({ help }) => /\/docs\/(functions\.html)#(.*)$/.exec(help));
    expect(addresses.filter((address) => address === null || !idsOf(address[1]!).includes(address[2]!))).toEqual([]);
    expect(addresses.length).toBeGreaterThanOrEqual(30);
  });

  it('have the paragraphs that the pane leads to', () => {
    const addresses = [
      ...Object.values(HELP_OF_STEP),
      ...Object.values(HELP_OF_PLACE),
      ...SETTING_GROUPS.map((group) => settingsHelp(group).replace('docs/', '')),
      functionHelp('RADIUS').replace('docs/', ''),
    ];
    const lost = addresses.filter((address) => {
      const [page, id] = address.split('#') as [string, string];
      return !PAGES.has(page) || !idsOf(page).includes(id);
    });
    expect(lost).toEqual([]);
  });

  it('name headings as GitHub does', () => {
    expect(slug('1. The schedule')).toBe('1-the-schedule');
    expect(slug('Span, rise and head')).toBe('span-rise-and-head');
  });
});
