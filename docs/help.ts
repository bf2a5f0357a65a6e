import { readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import markdownIt from 'markdown-it';

/** The Markdown pages that are served as web pages, in the order of their menu. */
export const HELP_PAGES = [
  { source: 'docs/guide.md', page: 'guide.html', name: 'Guide' },
  { source: 'docs/functions.md', page: 'functions.html', name: 'Worksheet functions' },
  { source: 'docs/schedules.md', page: 'schedules.html', name: 'How a schedule is read' },
  { source: 'docs/settings.md', page: 'settings.html', name: 'Settings' },
  { source: 'README.md', page: 'about.html', name: 'About' },
  { source: 'docs/limits.md', page: 'limits.html', name: 'Limits' },
  { source: 'docs/exactness.md', page: 'exactness.html', name: 'How exact it is' },
  { source: 'docs/install-excel.md', page: 'install-excel.html', name: 'In Excel' },
  { source: 'docs/excel-trial.md', page: 'excel-trial.html', name: 'A trial in Excel' },
  { source: 'docs/excel.md', page: 'excel.html', name: 'What is known of Excel' },
  { source: 'docs/many.md', page: 'many.html', name: 'Many schedules' },
] as const;

export interface HelpPage {
  readonly html: string;
  /** Files of the project that the page shows, from its folder: pictures. */
  readonly files: readonly string[];
}

type Source = (typeof HELP_PAGES)[number];

/** A heading's address within its page, as GitHub makes it: "1. The schedule" → `1-the-schedule`. */
export function slug(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, '')
    .replaceAll(' ', '-');
}

/** One page of help from its Markdown. Links to other pages of help lead to them; to other files of the project: none. */
export function helpPage({ source, page, name }: Source): HelpPage {
  const files: string[] = [];
  const markdown = markdownIt({ html: false });
  const fromProject = (href: string) => normalize(join(dirname(source), href)).replaceAll('\\', '/');
  const { rules } = markdown.renderer;

  markdown.core.ruler.push('help', ({ tokens }) => {
    const used = new Map<string, number>();
    tokens.forEach((token, at) => {
      if (token.type === 'heading_open') {
        const id = slug(tokens[at + 1]!.children!.map(({ content }) => content).join(''));
        const before = used.get(id) ?? 0;
        used.set(id, before + 1);
        token.attrSet('id', before === 0 ? id : `${id}-${before}`);
      }
      // A heading of a table's column that says nothing is none to a reader of screens.
      if (token.type === 'th_open' && tokens[at + 1]!.content === '') {
        token.tag = 'td';
        tokens[at + 2]!.tag = 'td';
      }
      for (const inner of token.children ?? []) {
        const href = inner.attrGet('href');
        const src = inner.attrGet('src');
        if (inner.type === 'image' && src !== null && !/^https?:/.test(src)) {
          const file = fromProject(src);
          files.push(file);
          inner.attrSet('src', file.replace(/^docs\//, ''));
        }
        if (inner.type !== 'link_open' || href === null || /^(https?:|#)/.test(href)) continue;
        const [path = '', anchor] = href.split('#');
        const other = HELP_PAGES.find((each) => each.source === fromProject(path));
        if (other) inner.attrSet('href', other.page + (anchor === undefined ? '' : `#${anchor}`));
        else inner.meta = 'no link';
      }
      token.children &&= unlinked(token.children);
    });
  });
  rules.fence = (tokens, at) => `<pre><code>${markdown.utils.escapeHtml(tokens[at]!.content)}</code></pre>\n`;

  const text = readFileSync(source, 'utf8').replace(/<!--[\s\S]*?-->\n*/g, '');
  return { html: framed(name, page, markdown.render(text)), files };
}

/** Without the links to what is not served; their words stay. */
function unlinked<T extends { type: string; meta: unknown }>(children: T[]): T[] {
  const kept: T[] = [];
  let dropped = false;
  for (const child of children) {
    if (child.type === 'link_open' && child.meta === 'no link') dropped = true;
    else if (child.type === 'link_close' && dropped) dropped = false;
    else kept.push(child);
  }
  return kept;
}

const STYLE = `
body { margin: 0; font: 16px/1.55 'Segoe UI', system-ui, sans-serif; color: #1d2329; background: #fff; }
header, main { max-width: 60em; margin: 0 auto; padding: 0 1.2em; }
header { padding-top: 1em; border-bottom: 1px solid #c9ced4; }
header ul { display: flex; flex-wrap: wrap; gap: .3em 1.2em; margin: 0; padding: 0 0 .8em; list-style: none; }
a { color: #0b5a73; } a[aria-current] { color: inherit; font-weight: 600; text-decoration: none; }
h1, h2, h3 { line-height: 1.25; color: #1f4e5f; } h2 { margin-top: 2em; } h3 { margin-top: 1.8em; }
:target { background: #fff3c9; }
table { border-collapse: collapse; margin: 1em 0; width: 100%; }
th, td { border: 1px solid #c9ced4; padding: .35em .6em; text-align: left; vertical-align: top; overflow-wrap: anywhere; }
thead tr { background: #eef1f4; }
code { font: .92em/1.45 ui-monospace, Consolas, monospace; overflow-wrap: anywhere; }
pre { background: #f4f6f8; padding: .8em 1em; white-space: pre-wrap; }
img { max-width: 100%; height: auto; }
@media print {
  header { display: none; } body { font-size: 10.5pt; } main { max-width: none; padding: 0; } a { color: inherit; }
  h1, h2, h3 { break-after: avoid; } tr, img, pre { break-inside: avoid; } thead { display: table-header-group; }
}`;

function framed(name: string, page: string, body: string): string {
  const menu = HELP_PAGES.map(
    (each) => `<li><a href="${each.page}"${each.page === page ? ' aria-current="page"' : ''}>${each.name}</a></li>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${name} – Archwright help</title>
<link rel="icon" href="../icons/icon-32.png">
<style>${STYLE}</style>
</head>
<body>
<header><nav aria-label="Help"><ul>${menu.join('')}</ul></nav></header>
<main>
${body}</main>
</body>
</html>
`;
}
