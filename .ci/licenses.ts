/**
 * `npm run licenses`: finds every package that the product is built with (what our own sources import, and what that needs),
 * refuses a license that can't stand under ours, prints the table, and puts the license texts beside the built files.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const PROJECT = fileURLToPath(new URL('../', import.meta.url));
const SHIPPED = ['src', 'functions', 'taskpane', 'cli'];
/** Shipped as files beside ours, without an import. */
const COPIED = ['@microsoft/office-js', 'pdfjs-dist'];
const NOT_SHIPPED = new Set(['esbuild', 'custom-functions-metadata', 'typescript', 'playwright-core']); // build scripts beside the sources
const ACCEPTED = new Set(
  [
    'MIT',
    'ISC',
    '0BSD',
    'BSD-2-Clause',
    'BSD-3-Clause',
    'Apache-2.0',
    'BlueOak-1.0.0',
    'CC0-1.0',
    'Unlicense',
    'Zlib',
  ].concat('Python-2.0', 'CC-BY-4.0'),
);

interface Package {
  readonly name: string;
  readonly version: string;
  readonly license: string;
  readonly text: string;
}
interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license?: string | { readonly type: string };
  readonly licenses?: readonly { readonly type: string }[];
  readonly dependencies?: Readonly<Record<string, string>>;
}

/** The packages that our sources import. */
function imported(): string[] {
  const names = new Set(COPIED);
  for (const folder of SHIPPED) {
    for (const file of readdirSync(join(PROJECT, folder), { recursive: true, encoding: 'utf8' })) {
      if (!/\.(ts|tsx|mjs|js)$/.test(file)) continue;
      const source = readFileSync(join(PROJECT, folder, file), 'utf8');
      for (const [, specifier] of source.matchAll(
        /^(?!\s*import type)[^'"\n]*\b(?:from|import)\s*\(?\s*'([^'.][^']*)'/gm,
      )) {
        const name = specifier!.split('/', specifier!.startsWith('@') ? 2 : 1).join('/');
        if (!name.startsWith('node:') && !builtinModules.includes(name) && !NOT_SHIPPED.has(name)) names.add(name);
      }
    }
  }
  return [...names];
}

/** Where Node would find the package from a folder. */
function find(name: string, from: string): string | null {
  const here = join(from, 'node_modules', name);
  if (existsSync(join(here, 'package.json'))) return here;
  return dirname(from) === from ? null : find(name, dirname(from));
}

function collect(name: string, from: string, found: Map<string, Package>): void {
  const folder = find(name, from);
  if (folder === null || found.has(folder)) return;
  const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Manifest;
  found.set(folder, {
    name: manifest.name,
    version: manifest.version,
    license: licenseOf(manifest, folder),
    text: licenseText(folder),
  });
  for (const dependency of Object.keys(manifest.dependencies ?? {})) collect(dependency, folder, found);
}

function licenseOf(manifest: Manifest, folder: string): string {
  if (typeof manifest.license === 'string') return manifest.license;
  const named = manifest.license?.type ?? manifest.licenses?.map(({ type }) => type).join(' OR ');
  return named ?? (/Apache License\s+Version 2\.0/.test(licenseText(folder)) ? 'Apache-2.0' : 'none named');
}

function licenseText(folder: string): string {
  const file = readdirSync(folder).find((name) => /^(licen[cs]e|copying)/i.test(name));
  return file === undefined
    ? '(The package names its license without the text.)'
    : readFileSync(join(folder, file), 'utf8');
}

/** "(MIT OR GPL-3.0)" is acceptable where one of the choices is; "MIT AND Zlib" where all are. */
function acceptable(license: string): boolean {
  const bare = license.replace(/[()]/g, '');
  return bare.split(' OR ').some((choice) => choice.split(' AND ').every((part) => ACCEPTED.has(part.trim())));
}

const found = new Map<string, Package>();
for (const name of imported()) collect(name, resolve(PROJECT), found);
const packages = [...found.values()].sort((a, b) => a.name.localeCompare(b.name, 'en'));

const refused = packages.filter(({ name, license }) => !acceptable(license) && name !== '@microsoft/office-js');
for (const { name, license } of refused)
  console.error(`${name} has the license "${license}", which this project can't ship.`);
process.exitCode = refused.length > 0 ? 1 : 0;

const text = packages.map((each) => `${each.name} ${each.version} (${each.license})\n\n${each.text.trim()}\n`);
for (const folder of ['dist/cli', 'dist/web'].filter((name) => existsSync(join(PROJECT, name)))) {
  writeFileSync(join(PROJECT, folder, 'THIRD-PARTY.txt'), text.join('\n' + '-'.repeat(80) + '\n\n'));
}
if (process.stdout.isTTY || process.argv.includes('--list')) {
  for (const { name, version, license } of packages) console.log(`${name} ${version}\t${license}`);
}
