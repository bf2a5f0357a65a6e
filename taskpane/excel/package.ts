/**
 * `npm run package -- --origin https://…`: a folder to host (dist/host) and a manifest that points at it (dist/manifest.xml).
 * Beside it dist/store, the same for Microsoft's store, which wants office.js from Microsoft's own address. The version is
 * package.json's; nothing in the built scripts depends on the origin.
 */
import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));
const DEVELOPMENT_ORIGIN = 'https://localhost:3000';
/** As the built page has it: the build takes quotes off where they are not needed. */
const OWN_OFFICE = /src="?office\/office\.js"?/;
/** Where Microsoft hosts it; an add-in in its store must load it from there. */
const STORE_OFFICE = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';

function readOrigin(): string {
  const { values } = parseArgs({ options: { origin: { type: 'string' } } });
  const given = values.origin ?? '';
  const url = URL.canParse(given) ? new URL(given) : null;
  if (url === null || url.protocol !== 'https:' || url.search !== '' || url.hash !== '') {
    throw new Error(`--origin must be an https address such as https://example.com/archwright; got "${given}".`);
  }
  return given.replace(/\/+$/, '');
}

function main(): void {
  const origin = readOrigin();
  const host = join(PROJECT, 'dist/host');
  rmSync(host, { recursive: true, force: true });
  cpSync(join(PROJECT, 'dist/web'), host, { recursive: true });
  cpSync(join(PROJECT, 'LICENSE'), join(host, 'LICENSE.txt'));

  const functions = join(host, 'functions.json');
  writeFileSync(functions, readFileSync(functions, 'utf8').replaceAll(DEVELOPMENT_ORIGIN, origin));

  const store = join(PROJECT, 'dist/store');
  rmSync(store, { recursive: true, force: true });
  cpSync(host, store, { recursive: true, filter: (path) => !path.startsWith(join(host, 'office')) });
  const page = readFileSync(join(host, 'taskpane.html'), 'utf8');
  if (!OWN_OFFICE.test(page)) throw new Error('taskpane.html does not load office/office.js');
  writeFileSync(join(store, 'taskpane.html'), page.replace(OWN_OFFICE, `src="${STORE_OFFICE}"`));

  const { version } = JSON.parse(readFileSync(join(PROJECT, 'package.json'), 'utf8')) as { version: string };
  const manifest = readFileSync(join(PROJECT, 'manifest.xml'), 'utf8')
    .replace(/<!--.*?-->\n/s, '')
    .replace(/<AppDomain>.*<\/AppDomain>/, `<AppDomain>${new URL(origin).origin}</AppDomain>`)
    .replaceAll(DEVELOPMENT_ORIGIN, origin)
    .replace(/<Version>.*<\/Version>/, `<Version>${version}.0</Version>`);
  writeFileSync(join(PROJECT, 'dist/manifest.xml'), manifest);
  console.log(`Host the folder dist/host at ${origin}/ and give Excel dist/manifest.xml.`);
  console.log('For Microsoft’s store host dist/store there instead: it takes office.js from Microsoft.');
}

try {
  main();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 2;
}
