/**
 * The spreadsheet grid's packages are 8 MB of source: webpack takes two minutes over them in production mode, esbuild two
 * seconds. They change only when their version does, so they are built apart, and the page's own code finds them as
 * globals. The build calls `buildGridLibrary('dist/web/grid-library', true)`, and workbench.html loads, in this order:
 *
 *   <link rel="stylesheet" href="grid-library/grid-library.css" />
 *   <script type="module" src="grid-library/grid-library.js"></script>
 *   <script defer src="workbench.js"></script>
 *
 * Module and deferred scripts run in document order, so the globals are there when workbench.js starts. The many small
 * files beside grid-library.js are hyphenation tables that the library asks for only when a text needs them.
 */
import { build } from 'esbuild';
import { fileURLToPath } from 'node:url';

/** @param {string} outdir @param {boolean} production */
export async function buildGridLibrary(outdir, production) {
  await build({
    entryPoints: { 'grid-library': fileURLToPath(new URL('./gridLibrary.ts', import.meta.url)) },
    outdir,
    bundle: true,
    splitting: true,
    format: 'esm',
    target: 'es2022',
    minify: production,
    legalComments: 'linked',
    define: { 'process.env.NODE_ENV': JSON.stringify(production ? 'production' : 'development') },
    logLevel: 'warning',
  });
}
