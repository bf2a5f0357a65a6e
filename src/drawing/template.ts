import { ok, refuse, type Result } from '../result';
import type { Standards } from '../standards';
import { marksOf, type Setup } from '../takeoff/setups';
import { perInch, unitName, type Unit } from '../unit';
import { lengthText } from '../lengthText';
import { bounds } from './bounds';
import { explode } from './dimension';
import { toDxf } from './dxf';
import { radiusText } from './figureText';
import { guideLayout, guideOrdinates, laidOutByOrdinates, type GuideBoards } from './guideLayout';
import { guideScene, LETTERS } from './guideScene';
import { guideOverview, LETTER_PAGE } from './overview';
import { pictureSheet, type Picture } from './pictureSheet';
import { text, type Scene } from './scene';
import { toSvg } from './svg';

export interface TemplateFile {
  readonly name: string;
  readonly content: string;
}

/** The guide boards of a set-up; refused for a straight one, which has none. */
export function guideBoardsOf(setup: Setup, standards: Standards): Result<GuideBoards> {
  if (setup.insideRadius === null) return refuse(`${setup.name} is run straight, without guide boards`);
  return ok({
    marks: marksOf(setup.pieces),
    profile: setup.profile,
    radius: setup.insideRadius,
    face: setup.face,
    margin: standards.margin,
    clearance: standards.clearance,
    thinEdge: standards.thinEdge,
    bedLine: standards.bedLine,
    unit: standards.unit,
  });
}

/**
 * The files to make one pair of guide boards from: a full-size DXF and SVG, a letter-size overview that is not for tracing,
 * and a table of ordinates where the radius is beyond a trammel. `name` begins each file's name; what a file name can't
 * hold becomes a hyphen.
 */
export function templateFiles(boards: GuideBoards, name: string): Result<readonly TemplateFile[]> {
  const scene = fullSizeScene(boards);
  if (!scene.ok) return scene;
  const overview = guideOverview(boards);
  if (!overview.ok) return overview;
  const start = fileName(name);
  const files: TemplateFile[] = [
    { name: `${start}-guides.dxf`, content: toDxf(scene.value) },
    { name: `${start}-guides.svg`, content: toSvg(scene.value, { size: 'true size', ownColors: true }) + '\n' },
    {
      name: `${start}-overview.svg`,
      content: toSvg(overview.value, { size: 'true size', page: LETTER_PAGE, ownColors: true }) + '\n',
    },
  ];
  if (!laidOutByOrdinates(boards)) return ok(files);
  const table = ordinatesCsv(boards);
  return table.ok ? ok([...files, { name: `${start}-ordinates.csv`, content: table.value }]) : table;
}

/** A pair with the name that its files begin with. */
export interface NamedPair {
  readonly name: string;
  readonly boards: GuideBoards;
}

/** The guide boards of these set-ups, each pair under a file name of its own: names that differ only in signs that a file name can't hold get a number. */
export function pairsOf(
  setups: readonly Setup[],
  standards: Standards,
  asked: Partial<Pick<GuideBoards, 'bedLine' | 'trammel'>> = {},
): Result<readonly NamedPair[]> {
  const pairs: NamedPair[] = [];
  for (const [at, setup] of setups.entries()) {
    const before = setups.slice(0, at).filter((other) => fileName(other.name) === fileName(setup.name)).length;
    const boards = guideBoardsOf(setup, standards);
    if (!boards.ok) return boards;
    pairs.push({
      name: before === 0 ? setup.name : `${setup.name} ${before + 1}`,
      boards: { ...boards.value, ...asked },
    });
  }
  return ok(pairs);
}

/** All pairs of a job together: pictures on pages to look through, and one table of the ordinates of every arc. */
export function jobFiles(pairs: readonly NamedPair[]): Result<readonly TemplateFile[]> {
  const pictures: Picture[] = [];
  const tables: string[] = [];
  for (const { name, boards } of pairs) {
    const scene = guideScene(boards);
    if (!scene.ok) return scene;
    const layout = guideLayout(boards);
    if (!layout.ok) return layout;
    const [inside, outside] = [layout.value.inside, layout.value.outside].map(({ radius }) =>
      radiusText(radius, boards.unit),
    );
    const caption = `${name}: ${boards.marks.join(', ')}. Inside guide R ${inside}, outside guide R ${outside}`;
    pictures.push({ scene: scene.value, caption });
    const rows = ordinateLines(boards);
    if (!rows.ok) return rows;
    tables.push(...rows.value.map((row) => `${csvText(name)},${row}`));
  }
  const [first] = pairs;
  if (first === undefined) return ok([]);
  const notes = ['Not for tracing: print the full-size drawings at 100 percent.'];
  const group = { title: `Pairs: ${pairs.length}`, columns: 2, pictures, notes } as const;
  return ok([
    { name: 'all-guides-overview.html', content: pictureSheet('Guide boards of the job', [group]) },
    {
      name: 'all-guides-ordinates.csv',
      content: ['guide set', ordinateHeading(first.boards.unit)].join(',') + '\r\n' + tables.join('\r\n') + '\r\n',
    },
  ]);
}

/** As one field of a table: a spreadsheet takes nothing in it for a formula. */
function csvText(words: string): string {
  return `"${words.replace(/^[=+@-]/, "'$&").replaceAll('"', '""')}"`;
}

/** The pair as it is to be printed or cut, with its unit and a length to check the print by. */
function fullSizeScene(boards: GuideBoards): Result<Scene> {
  const scene = guideScene(boards);
  if (!scene.ok) return scene;
  const layout = guideLayout(boards);
  if (!layout.ok) return layout;
  const { unit } = boards;
  const letters = LETTERS * perInch(unit);
  const apart = lengthText(2 * layout.value.bedLine, unit, 32);
  const said = `Full size, ${unitName(unit)}. The bed lines must measure ${apart} apart.`;
  const low = bounds(explode(scene.value.shapes)).bottom;
  return ok({ ...scene.value, shapes: [...scene.value.shapes, text({ x: 0, y: low - 1.6 * letters }, said, letters)] });
}

function ordinatesCsv(boards: GuideBoards): Result<string> {
  const lines = ordinateLines(boards);
  return lines.ok ? ok([ordinateHeading(boards.unit), ...lines.value, ''].join('\r\n')) : lines;
}

function ordinateLines(boards: GuideBoards): Result<string[]> {
  const found = guideOrdinates(boards);
  if (!found.ok) return found;
  return ok(
    found.value.flatMap(({ guide, radius, rows }) =>
      rows.map(([x, height]) => [guide, Number(radius.toFixed(6)), x, Number(height.toFixed(6))].join(',')),
    ),
  );
}

function ordinateHeading(unit: Unit): string {
  return [
    'guide',
    `radius (${unit})`,
    `from center line (${unit})`,
    `height over the straight line between the ends (${unit})`,
  ].join(',');
}

/** Letters, digits, dots and hyphens only, so that a mark can't name another folder. */
export function fileName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/[^\p{ASCII}]/gu, '')
    .replace(/[^A-Za-z0-9.]+/g, '-')
    .replace(/\.{2,}/g, '.')
    .replace(/^[-.]+|[-.]+$/g, '');
  if (plain === '') return 'template';
  // The radius stands at the end of a guide set's name.
  return plain.length <= 80 ? plain : `${plain.slice(0, 50)}-${plain.slice(-29)}`;
}
