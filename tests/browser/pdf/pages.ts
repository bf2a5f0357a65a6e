import { grouped, HEADINGS, schedule, type Source } from '../../pdf/source';

/** A page for the browser to print, and the schedule that stands on it. */
export interface Printed extends Source {
  readonly html: string;
  /** The page turned by 90°, as viewers and plotters do. */
  readonly turned?: boolean;
  /** How many of its openings are asked about at the most. */
  readonly asked?: number;
}

const PAGE = `@page { size: 11in 8.5in; margin: 0.5in } body { font: 9pt "Liberation Sans", sans-serif; margin: 0 }
  table { border-collapse: collapse } th, td { padding: 2pt 4pt; text-align: left; vertical-align: top }`;

const escaped = (text: string) => text.replace(/&/g, '&amp;').replace(/</g, '&lt;');
const row = (cells: readonly string[], tag: string) =>
  `<tr>${cells.map((cell) => `<${tag}>${cell}</${tag}>`).join('')}</tr>`;
const html = (style: string, body: string) =>
  `<!doctype html><meta charset="utf-8"><style>${PAGE} ${style}</style>${body}`;

/** The table as markup; `show` changes how a cell's text is written, `head` replaces the heading rows. */
function table(
  { headings, rows }: Source,
  { show = escaped, head }: { show?: (text: string, column: number) => string; head?: string } = {},
): string {
  const body = rows.map((cells) => row(cells.map(show), 'td')).join('');
  return `<table><thead>${head ?? row(headings.map(escaped), 'th')}</thead><tbody>${body}</tbody></table>`;
}

const GRID = 'th, td { border: 0.75pt solid #000 }';

const withFractions = (write: (whole: string, over: string, under: string) => string) => (text: string) =>
  escaped(text).replace(/(?:(\d+) )?(\d+)\/(\d+)/g, (_all, whole: string | undefined, over: string, under: string) =>
    write(whole ?? '', over, under),
  );

const GROUPED_HEAD =
  '<tr><th rowspan="2">MARK<th rowspan="2">QTY<th colspan="2" style="text-align:center">ROUGH OPENING<th rowspan="2">HEAD<th rowspan="2">RISE<th rowspan="2">REMARKS</tr><tr><th>WIDTH<th>HEIGHT</tr>';

const DOORS = {
  headings: ['DOOR', 'LEAF', 'MATERIAL', 'HARDWARE'],
  rows: [
    ['D1', '3080', 'OAK', 'SET 1'],
    ['D2', '2868', 'PINE', 'SET 2'],
    ['D3', '2668', 'PINE', 'SET 2'],
  ],
};
const FINISHES = {
  headings: ['ROOM', 'FLOOR', 'BASE', 'CEILING'],
  rows: [
    ['101 HALL', 'OAK', 'WD-1', 'GYP'],
    ['102 STUDY', 'CARPET', 'WD-1', 'GYP'],
    ['103 BATH', 'TILE', 'TL-2', 'GYP'],
  ],
};

/** A plan: walls, dimension lines, room names, with the schedule, notes and a title block beside it. */
function planSheet(source: Source): string {
  const lines = Array.from({ length: 160 }, (_, at) => {
    const [x, y, long] = [(at * 97) % 1300, (at * 61) % 1400, 20 + ((at * 37) % 180)];
    return at % 2 ? `<path d="M${x} ${y}h${long}"/>` : `<path d="M${x} ${y}v${long}"/>`;
  }).join('');
  const texts = Array.from({ length: 70 }, (_, at) => {
    const says = [`12'-4 1/2"`, 'BEDROOM 2', 'SEE 4/A501', 'W3', 'UP 14R', 'CLG 9&apos;-0"'][at % 6];
    return `<text x="${(at * 89) % 1250}" y="${(at * 53) % 1400}"${at % 4 === 0 ? ` transform="rotate(-90 ${(at * 89) % 1250} ${(at * 53) % 1400})"` : ''}>${says}</text>`;
  }).join('');
  const notes = [
    'GENERAL NOTES',
    '1. All dimensions are to the face of studs unless noted.',
    '2. Window heads at 8&apos;-0" above the floor.',
    '3. Verify each rough opening in the field before the order.',
  ]
    .map((note) => `<div>${note}</div>`)
    .join('');
  const block = ['SHEET|A-601', 'DATE|3/4/2026', 'SCALE|1/4" = 1&apos;-0"', 'DRAWN|TK', 'WIDTH|36"']
    .map((line) => row(line.split('|'), 'td'))
    .join('');
  return html(
    `@page { size: 24in 18in } ${GRID} svg { position: absolute; left: 0; top: 0 } path { stroke: #000; fill: none } text { font-size: 9px }
     .schedule { position: absolute; left: 1400px; top: 40px } .notes { position: absolute; left: 1400px; top: 700px }
     .block { position: absolute; left: 1900px; top: 1300px } .side { position: absolute; left: 2150px; top: 900px; writing-mode: vertical-rl }`,
    `<svg width="1380" height="1500">${lines}${texts}</svg>
     <div class="schedule"><b>WINDOW SCHEDULE</b>${table(source)}</div><div class="notes">${notes}</div>
     <div class="block"><table>${block}</table></div><div class="side">RESIDENCE FOR A CLIENT — NOT FOR CONSTRUCTION</div>`,
  );
}

const TEN = schedule(10);
const GROUPED = grouped(9);
const LONG = schedule(75);

/** Pages as a builder's office prints them from a browser: schedule programs of that kind are web pages. */
export const PAGES: Readonly<Record<string, Printed>> = {
  ruled: { ...TEN, html: html(GRID, table(TEN)) },
  dotted: { ...TEN, html: html('th, td { border: 0.75pt dotted #000 }', table(TEN)) },
  dashed: { ...TEN, html: html('th, td { border: 0.75pt dashed #666 }', table(TEN)) },
  'white rules on bands': {
    ...TEN,
    html: html(
      'th { background: #345; color: #fff } th, td { border: 1.5pt solid #fff } tr:nth-child(even) td { background: #dde }',
      table(TEN),
    ),
  },
  'rules under the rows alone': { ...TEN, html: html('th, td { border-bottom: 0.5pt solid #888 }', table(TEN)) },
  'rules between the columns alone': { ...TEN, html: html('th, td { border-left: 0.5pt solid #888 }', table(TEN)) },
  'a rule under the headings alone': { ...TEN, html: html('thead { border-bottom: 1pt solid #000 }', table(TEN)) },
  'no rules': { ...TEN, html: html('', table(TEN)) },
  'bands without rules': {
    ...TEN,
    html: html('tr:nth-child(odd) td { background: #eee }', table(TEN)),
  },
  'boxes with space between them': {
    ...TEN,
    html: html(
      'table { border-collapse: separate; border-spacing: 2pt } th, td { border: 0.5pt solid #000 }',
      table(TEN),
    ),
  },
  'merged headings': { ...GROUPED, html: html(GRID, table(GROUPED, { head: GROUPED_HEAD })) },
  'merged headings without rules': { ...GROUPED, html: html('', table(GROUPED, { head: GROUPED_HEAD })) },
  'a title across the table': {
    ...TEN,
    html: html(
      GRID,
      table(TEN, {
        head: `<tr><th colspan="7" style="text-align:center">WINDOW SCHEDULE</tr>${row(HEADINGS, 'th')}`,
      }),
    ),
  },
  'headings on two lines': {
    ...TEN,
    html: html(
      `${GRID} th { text-align: center }`,
      table(TEN, { head: row(['MARK', 'QTY', 'LOCATION', 'HEAD', 'WIDTH<br>(IN)', 'RISE<br>(IN)', 'REMARKS'], 'th') }),
    ),
  },
  'headings turned upright': {
    ...TEN,
    html: html(`${GRID} th { writing-mode: vertical-rl; transform: rotate(180deg) }`, table(TEN)),
  },
  'a page turned': { ...TEN, html: html(GRID, table(TEN)), turned: true },
  'a table turned on its page': {
    ...TEN,
    html: html(`${GRID} body { writing-mode: vertical-rl }`, table(TEN)),
  },
  'several tables below one another': {
    ...TEN,
    html: html(
      `${GRID} table { margin: 0 0 12pt }`,
      `<h3>DOOR SCHEDULE</h3>${table(DOORS)}<h3>WINDOW SCHEDULE</h3>${table(TEN)}<h3>FINISHES</h3>${table(FINISHES)}`,
    ),
  },
  'several tables beside one another': {
    ...TEN,
    html: html(
      `body { display: flex; gap: 24pt; align-items: flex-start; font-size: 7pt } ${GRID}`,
      `<div>${table(TEN)}</div><div>${table(DOORS)}</div><div>${table(FINISHES)}</div>`,
    ),
  },
  'several tables beside one another without rules': {
    asked: 5,
    ...TEN,
    html: html(
      'body { display: flex; gap: 24pt; align-items: flex-start; font-size: 7pt }',
      `<div>${table(TEN)}</div><div>${table(DOORS)}</div><div>${table(FINISHES)}</div>`,
    ),
  },
  'over pages, headings repeated': { ...LONG, html: html(GRID, table(LONG)) },
  'over pages, headings once': { ...LONG, html: html(`${GRID} thead { display: table-row-group }`, table(LONG)) },
  'over pages without rules': { ...LONG, html: html('', table(LONG)) },
  'a plan sheet with title block and notes': { ...TEN, html: planSheet(TEN) },
  'stacked fractions': {
    ...TEN,
    html: html(
      `${GRID} .f { display: inline-flex; flex-direction: column; font-size: 60%; line-height: 1; vertical-align: middle; text-align: center }
       .f i { font-style: normal; border-bottom: 0.5pt solid #000 }`,
      table(TEN, {
        show: withFractions((whole, over, under) => `${whole}<span class="f"><i>${over}</i>${under}</span>`),
      }),
    ),
  },
  'fractions set high and low': {
    ...TEN,
    html: html(
      GRID,
      table(TEN, { show: withFractions((whole, over, under) => `${whole}<sup>${over}</sup>⁄<sub>${under}</sub>`) }),
    ),
  },
  'fractions high and low without rules': {
    ...TEN,
    html: html(
      '',
      table(TEN, {
        show: withFractions((whole, over, under) => `${whole} <sup>${over}</sup>/<sub>${under}</sub>`),
      }),
    ),
  },
  'fractions as characters': {
    ...TEN,
    html: html(
      GRID,
      table(TEN, {
        show: (text) =>
          escaped(text).replace(
            / ([1357]\/[248])\b/g,
            (all, one: string) => ({ '1/2': '½', '1/4': '¼', '5/8': '⅝', '7/8': '⅞' })[one] ?? all,
          ),
      }),
    ),
  },
  'small type': { ...TEN, html: html(`${GRID} body { font-size: 4pt } th, td { padding: 0.5pt 1.5pt }`, table(TEN)) },
  'small type without rules': { ...TEN, html: html('body { font-size: 4.5pt }', table(TEN)) },
  'wrapped cells': {
    ...TEN,
    html: html(`${GRID} table { width: 4.2in } `, table(TEN)),
  },
  'wrapped cells on bands': {
    asked: 5,
    ...TEN,
    html: html('table { width: 4.4in } tr:nth-child(odd) td { background: #eee }', table(TEN)),
  },
  'wrapped cells without rules': {
    asked: 5,
    ...TEN,
    html: html('table { width: 4.4in } td { padding-bottom: 6pt }', table(TEN)),
  },
  'wrapped cells, middle, without rules': {
    // Which cells wrap, and with them how many rows are asked about, hangs on the fonts that the machine has: 8 or 9 so far.
    asked: 10,
    ...TEN,
    html: html('table { width: 4.4in } td { padding-bottom: 6pt; vertical-align: middle }', table(TEN)),
  },
  'centered cells without rules': {
    ...TEN,
    html: html('th, td { text-align: center; padding: 3pt 9pt }', table(TEN)),
  },
  'type of one width': { ...TEN, html: html(`body { font-family: "Liberation Mono" }`, table(TEN)) },
  'floors between the rows': {
    ...TEN,
    html: html(GRID, table(TEN).replace('<tbody>', '<tbody><tr><td colspan="7"><b>FIRST FLOOR</b></tr>')),
  },
};
