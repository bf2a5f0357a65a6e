import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { GROUPS } from '../functions/groups';
import { METADATA, type Answer, type FunctionMetadata } from '../functions/metadata';
import { toSvg } from '../src/drawing/svg';
import { FIGURES, type Figure } from '../src/takeoff/figures';
import { asWrittenPage } from './asWrittenPage';
import { settingsPage } from './settingsPage';
import { PICTURE_OF, PICTURES } from './pictures';
import { roomsPicture } from './roomsPicture';

/**
 * `npm run docs` writes functions.md from the JSDoc of the worksheet functions, as `npm run functions` gathered it, settings.md and as-written.md, and the
 * drawings of all pages, that of the code's rooms among them.
 */

const HERE = fileURLToPath(new URL('.', import.meta.url));

function page(): string {
  const groups = GROUPS.map(({ title }) => {
    const functions = METADATA.filter((one) => one.group === title);
    return [`## ${title}`, ...functions.map(section)].join('\n\n');
  });
  return `${[HEAD, contents(), ...groups].join('\n\n')}\n`;
}

const HEAD = `# Worksheet functions

<!-- Written by npm run docs from the functions' own comments; edit those. -->

Every function is typed with its name space, \`=ARCH.RADIUS(36, 6)\`, and gives the same answer in Excel, in the workbench
and from \`archwright fn RADIUS 36 6\`. Arguments in [brackets] may be left out.

- **Lengths** are numbers in any one unit, and the answer is in the same unit; or dimension text such as \`3'-6 1/2"\`,
  \`36-1/2\` or \`914 mm\`, and the answer is in inches.
- **A blank cell** counts as left out. Excel on the desktop hands it over as 0: where 0 can't be meant (\`grain\`, \`ratio\`,
  \`arcs\`, \`denominator\`, \`passes\`, the two radii of \`CUTSPERINCH\`, the rise of a head that has its own), 0 is left out too.
- **An argument that can't be right** gives \`#VALUE!\` with one sentence that names it, what it was and what is accepted:
  truth values, ranges where one cell is wanted, sizes of more than 1,000,000, and what each function lists below.
- **Nothing is rounded** unless the function says so.`;

function contents(): string {
  const groups = GROUPS.map(({ title }) => {
    const names = METADATA.filter((one) => one.group === title).map(({ name }) => `[${name}](#${name.toLowerCase()})`);
    return `- ${title}: ${names.join(', ')}`;
  });
  return groups.join('\n');
}

function section(one: FunctionMetadata): string {
  const picture = PICTURE_OF[one.name];
  return [
    `### ${one.name}`,
    one.description,
    `\`=ARCH.${one.name}(${signature(one)})\``,
    argumentTable(one),
    ...(one.name === 'OPENING' ? [figureTable()] : []),
    `**Gives** ${lowerFirst(one.returns)}`,
    `**Refuses** ${lowerFirst(one.refuses)}`,
    `**Formula and notes** ${one.remarks}`,
    ...(picture ? [`![${PICTURES[picture]!().description}](pictures/${picture}.svg)`] : []),
    ['```text', ...one.examples.map(({ formula, answer }) => `${formula}  →  ${shown(answer)}`), '```'].join('\n'),
  ].join('\n\n');
}

/** Optional arguments in brackets, as `span, rise, [offset]`. */
function signature({ parameters }: FunctionMetadata): string {
  return parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(', ');
}

function argumentTable({ parameters }: FunctionMetadata): string {
  const rows = parameters.map(({ name, description }) => `| \`${name}\` | ${description.replaceAll('|', '\\|')} |`);
  return ['| argument | |', '| --- | --- |', ...rows].join('\n');
}

/** What each measure is counted in, where a figure's words leave it open. */
const COUNTED_IN: Readonly<Record<Figure['measure'], string>> = {
  ...{ text: 'text', 'length text': 'text', length: "the workbook's unit", number: 'a number', count: 'a count' },
  ...{ degrees: 'degrees', cuts: 'cuts per inch', minutes: 'minutes', boardFeet: 'board feet', money: 'money' },
};

/** Every figure by its name: what `ARCH.OPENING` gives, as its one description has it. */
function figureTable(): string {
  const rows = FIGURES.map(({ name, about, measure }) => `| \`${name}\` | ${about} | ${COUNTED_IN[measure]} |`);
  return ['| figure | | in |', '| --- | --- | --- |', ...rows].join('\n');
}

function shown(answer: Answer): string {
  if (typeof answer === 'number') return String(answer);
  if (typeof answer === 'string') return `"${answer}"`;
  return `{${answer.map((row) => row.map(shown).join(', ')).join('; ')}}`;
}

/** A sentence that goes on after a bold word; names in capitals and quoted words stay. */
function lowerFirst(text: string): string {
  return /^[A-Z][a-z ]/.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text;
}

mkdirSync(`${HERE}pictures`, { recursive: true });
writeFileSync(`${HERE}functions.md`, page());
writeFileSync(`${HERE}settings.md`, settingsPage());
writeFileSync(`${HERE}as-written.md`, asWrittenPage());
for (const [name, picture] of Object.entries(PICTURES)) {
  writeFileSync(`${HERE}pictures/${name}.svg`, `${toSvg(picture(), { ownColors: true, border: 0.04 })}\n`);
}
writeFileSync(`${HERE}pictures/rooms.svg`, roomsPicture());
console.log(`functions.md, settings.md, as-written.md and ${Object.keys(PICTURES).length + 1} drawings written`);
