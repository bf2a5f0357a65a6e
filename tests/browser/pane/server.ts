import { build } from 'esbuild';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** What the product's own pages allow: nothing but their origin. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; worker-src 'self'; " +
  "form-action 'none'; base-uri 'none'";

const PAGE = `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>Archwright</title>
    <link rel="icon" href="data:," />
    <link rel="stylesheet" href="/page.css" />
    <script type="module" src="/page.js"></script>
  </head>
  <body class="alone">
    <main id="pane" aria-label="Archwright"></main>
  </body>
</html>
`;

const TYPES: Readonly<Record<string, string>> = {
  css: 'text/css',
  js: 'text/javascript',
  ts: 'text/javascript',
  mjs: 'text/javascript',
  csv: 'text/csv',
  json: 'application/json',
};
const PROJECT = fileURLToPath(new URL('../../../', import.meta.url));

export interface PaneServer {
  readonly address: string;
  /** The sheets of the workbook the next page opens with. */
  sheets: Readonly<Record<string, readonly (readonly (string | number | null)[])[]>>;
  close(): Promise<void>;
}

/** Builds the pane on a workbook in memory and serves it under the product's content policy. */
export async function servePane(): Promise<PaneServer> {
  const folder = mkdtempSync(join(tmpdir(), 'pane-'));
  await build({
    entryPoints: {
      page: join(PROJECT, 'tests/browser/pane/page.ts'),
      worker: join(PROJECT, 'taskpane/pane/build/worker.ts'),
      pdfWorker: join(PROJECT, 'taskpane/pane/pdf/pdfWorker.ts'),
    },
    bundle: true,
    splitting: true,
    format: 'esm',
    minify: true,
    outdir: folder,
    logLevel: 'silent',
  });
  const own: PaneServer = {
    address: '',
    sheets: { List: [] },
    close: () =>
      new Promise((done) => {
        rmSync(folder, { recursive: true });
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
  const server: Server = createServer((request, response) => {
    const path = (request.url ?? '/').split('?')[0] ?? '/';
    response.setHeader('content-security-policy', POLICY);
    response.setHeader('content-type', TYPES[path.split('.').pop() ?? ''] ?? 'text/html');
    try {
      if (path === '/') response.end(PAGE);
      else if (path === '/sheets.json') response.end(JSON.stringify(own.sheets));
      else if (path.endsWith('.mjs'))
        response.end(readFileSync(join(PROJECT, 'node_modules/pdfjs-dist/legacy/build', path)));
      // The worker of a script is asked for by its source's name.
      else if (path.endsWith('.ts')) response.end(readFileSync(join(folder, path.replace(/ts$/, 'js'))));
      else response.end(readFileSync(join(path.startsWith('/examples/') ? PROJECT : folder, path)));
    } catch {
      response.statusCode = 404;
      response.end();
    }
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  return Object.assign(own, { address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` });
}
