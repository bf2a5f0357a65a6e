import { generateCustomFunctionsMetadata } from 'custom-functions-metadata';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { readExample } from './example';
import { GROUPS } from './groups';
import type { FunctionMetadata } from './metadata';

/**
 * `npm run functions` writes functions.json (for Excel) and metadata.json (for argument help, the command line and the
 * reference page) from the JSDoc of the worksheet functions.
 */

const HERE = fileURLToPath(new URL('.', import.meta.url));
const sourceOf = (group: string) => `${HERE}${group}.ts`;

async function excelMetadata(): Promise<string> {
  const made = await generateCustomFunctionsMetadata(GROUPS.map((group) => sourceOf(group.file)));
  // The generator reports errors and still succeeds.
  if (made.errors.length > 0) throw new Error(made.errors.join('\n'));
  return `${made.metadataJson}\n`;
}

function readFunctions(group: (typeof GROUPS)[number]): FunctionMetadata[] {
  const path = sourceOf(group.file);
  const source = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  return source.statements
    .filter((statement): statement is ts.FunctionDeclaration => ts.isFunctionDeclaration(statement))
    .filter((declared) => tagTexts(declared, 'customfunction').length > 0)
    .map((declared) => readFunction(declared, group.title));
}

function readFunction(declared: ts.FunctionDeclaration, group: string): FunctionMetadata {
  const name = declared.name?.text ?? '';
  const needed = (tag: string): string => {
    const [text, ...more] = tagTexts(declared, tag);
    if (!text || more.length > 0) throw new Error(`${name} must have one @${tag}`);
    return text;
  };
  const comments = ts.getJSDocCommentsAndTags(declared).filter(ts.isJSDoc);
  const examples = tagTexts(declared, 'example').map(readExample);
  if (examples.length === 0) throw new Error(`${name} must have an @example`);
  return {
    name,
    group,
    description: plain(ts.getTextOfJSDocComment(comments[0]?.comment)),
    help: needed('helpurl'),
    parameters: declared.parameters.map((parameter) => {
      const [tag] = ts.getJSDocParameterTags(parameter);
      const description = plain(ts.getTextOfJSDocComment(tag?.comment));
      if (!description) throw new Error(`${name} must describe ${parameter.name.getText()}`);
      return {
        name: parameter.name.getText(),
        description,
        optional: parameter.questionToken !== undefined,
        range: parameter.type !== undefined && ts.isArrayTypeNode(parameter.type),
      };
    }),
    returns: needed('returns'),
    spills: declared.type !== undefined && ts.isArrayTypeNode(declared.type),
    refuses: needed('throws'),
    remarks: needed('remarks'),
    examples,
  };
}

function tagTexts(declared: ts.FunctionDeclaration, tag: string): string[] {
  return ts
    .getJSDocTags(declared)
    .filter((found) => found.tagName.text === tag)
    .map((found) => plain(ts.getTextOfJSDocComment(found.comment)));
}

function plain(text: string | undefined): string {
  return (text ?? '').replace(/\s+/g, ' ').trim();
}

/** A file that would be the same is left alone: others may be reading it. */
function write(name: string, text: string): void {
  const path = HERE + name;
  if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeFileSync(path, text);
}

async function main(): Promise<void> {
  const metadata = GROUPS.flatMap(readFunctions);
  write('functions.json', await excelMetadata());
  write('metadata.json', `${JSON.stringify(metadata, null, 2)}\n`);
  console.log(`${metadata.length} worksheet functions written`);
}

try {
  await main();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
