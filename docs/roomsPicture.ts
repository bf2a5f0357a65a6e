import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import ts from 'typescript';

/** Folders whose folders are rooms of their own; all others are one room, however deep. */
const OF_ROOMS = ['src', 'taskpane'];
const PRODUCT = ['src', 'functions', 'taskpane', 'cli'];
/** The single files of src/ stand together: the shop's settings, which know heads and blanks, and what these rest on. */
const SETTINGS = ['standards', 'standardsJson', 'shopRange', 'stockList', 'onHand', 'extras', 'settingUnit', 'notSet'];

function roomOf(path: string): string {
  const [top = '', next = '', ...deeper] = path.split('/');
  if (!OF_ROOMS.includes(top)) return top;
  if (deeper.length > 0) return `${top}/${next}`;
  if (top !== 'src') return top;
  return SETTINGS.includes(next.replace(/\.tsx?$/, '')) ? 'src: settings' : 'src: arcs, figures';
}

/** By room the others that it imports, as the imports stand now. */
function importsOfRooms(): ReadonlyMap<string, ReadonlySet<string>> {
  const found = new Map<string, Set<string>>();
  for (const top of PRODUCT) {
    for (const entry of readdirSync(top, { recursive: true, withFileTypes: true })) {
      if (!entry.isFile() || !/\.tsx?$/.test(entry.name) || entry.name.endsWith('.d.ts')) continue;
      const path = join(entry.parentPath, entry.name).replaceAll('\\', '/');
      const room = roomOf(path);
      const uses = found.get(room) ?? new Set();
      found.set(room, uses);
      for (const { fileName } of ts.preProcessFile(readFileSync(path, 'utf8'), true, true).importedFiles) {
        if (!fileName.startsWith('.')) continue;
        const used = roomOf(normalize(join(dirname(path), fileName + '.ts')).replaceAll('\\', '/'));
        if (used !== room && PRODUCT.some((one) => used.startsWith(one))) uses.add(used);
      }
    }
  }
  return found;
}

type Rooms = ReturnType<typeof importsOfRooms>;

/** Every room that one stands on, however far down. */
function below(name: string, all: Rooms, seen = new Set<string>()): Set<string> {
  for (const used of all.get(name) ?? []) {
    if (seen.has(used)) continue;
    seen.add(used);
    below(used, all, seen);
  }
  return seen;
}

/** How many rooms stand below one another, at most, under this one. */
function level(name: string, all: Rooms, way: readonly string[] = []): number {
  if (way.includes(name)) throw new Error(`Rooms import in a circle: ${[...way, name].join(' → ')}.`);
  return Math.max(0, ...[...all.get(name)!].map((used) => 1 + level(used, all, [...way, name])));
}

const [WIDE, HIGH, GAP_X, GAP_Y, EDGE] = [140, 34, 20, 40, 12];

/** The rooms as boxes, each above all that it imports; a line leads to those that no other line leads to by a detour. */
export function roomsPicture(): string {
  const all = importsOfRooms();
  const rows: string[][] = [];
  for (const room of all.keys()) (rows[level(room, all)] ??= []).push(room);
  const most = Math.max(...rows.map((row) => row.length));
  const width = most * (WIDE + GAP_X) - GAP_X + 2 * EDGE;
  const height = rows.length * (HIGH + GAP_Y) - GAP_Y + 2 * EDGE;
  const at = new Map<string, { x: number; y: number }>();
  rows.forEach((row, up) => {
    row.sort();
    const left = (width - row.length * (WIDE + GAP_X) + GAP_X) / 2;
    row.forEach((name, across) => {
      at.set(name, { x: left + across * (WIDE + GAP_X), y: height - EDGE - HIGH - up * (HIGH + GAP_Y) });
    });
  });
  const lines = [...all].flatMap(([name, uses]) =>
    [...uses]
      .filter((used) => ![...uses].some((other) => other !== used && below(other, all).has(used)))
      .map((used) => {
        const [from, to] = [at.get(name)!, at.get(used)!];
        const [x1, y1, x2, y2] = [from.x + WIDE / 2, from.y + HIGH, to.x + WIDE / 2, to.y];
        const bend = (y2 - y1) / 2;
        return `<path d="M${x1} ${y1}C${x1} ${y1 + bend} ${x2} ${y2 - bend} ${x2} ${y2}"/>`;
      }),
  );
  const boxes = [...at].map(
    ([name, { x, y }]) =>
      `<rect x="${x}" y="${y}" width="${WIDE}" height="${HIGH}" rx="4"/>` +
      `<text x="${x + WIDE / 2}" y="${y + HIGH / 2 + 4}">${name}</text>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img">`,
    '<title>The rooms of the code</title>',
    '<desc>Each box is a folder; it imports only from boxes below it, to which its lines lead.</desc>',
    '<style>rect{fill:#fff;stroke:#3b4a57}path{fill:none;stroke:#8796a3}',
    'text{font:13px sans-serif;text-anchor:middle;fill:#1d2329}</style>',
    `<rect width="${width}" height="${height}" style="stroke:none"/>`,
    ...lines,
    ...boxes,
    '</svg>',
    '',
  ].join('\n');
}
