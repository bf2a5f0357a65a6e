import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import { extname, resolve, sep } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.xml': 'application/xml',
  '.woff2': 'font/woff2',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

/**
 * A page may load, run and ask for nothing but what this server gives it. Styles set by scripts (the grid draws with them)
 * and pictures made in the page are the exceptions. There is no X-Frame-Options: Excel shows the pane in a frame.
 */
const HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "connect-src 'self'",
    "worker-src 'self' blob:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; '),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  // Excel on the web fetches the list of functions and their script from its own address; without this it knows none of them.
  'Access-Control-Allow-Origin': '*',
  'Cache-Control': 'no-cache',
};

export interface Serving {
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** A certificate and its key, as text: Excel loads add-ins over https only. */
export interface Certificate {
  readonly cert: string;
  readonly key: string;
}

export interface ServeOptions {
  /** The port wished for; where it is taken, a free one is used. */
  readonly port?: number;
  /** Fail rather than use another port. */
  readonly onlyThatPort?: boolean;
  readonly certificate?: Certificate;
}

/** Page given for the folder itself. */
const START = 'workbench.html';

/** Serves a folder to this machine only. */
export async function serve(folder: string, options: ServeOptions = {}): Promise<Serving> {
  const { port = 0, onlyThatPort = false, certificate } = options;
  const root = resolve(folder);
  const onRequest = (request: IncomingMessage, response: ServerResponse) => {
    answer(root, request, response).catch(() => refuse(response, 500));
  };
  const server = certificate ? createSecureServer(certificate, onRequest) : createServer(onRequest);
  await listen(server, port).catch((error: NodeJS.ErrnoException) => {
    if (onlyThatPort || (error.code !== 'EADDRINUSE' && error.code !== 'EACCES')) throw error;
    return listen(server, 0);
  });
  return {
    address: `${certificate ? 'https' : 'http'}://localhost:${(server.address() as AddressInfo).port}/`,
    close: () =>
      new Promise((done) => {
        server.closeAllConnections();
        server.close(() => done());
      }),
  };
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((listening, failed) => {
    server.once('error', failed);
    server.listen(port, 'localhost', () => {
      server.off('error', failed);
      listening();
    });
  });
}

async function answer(root: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (request.method === 'OPTIONS') return allow(response);
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405);
  const path = fileOf(root, request.url ?? '/');
  if (path === null) return refuse(response, 404);
  const found = await stat(path).catch(() => null);
  if (!found?.isFile()) return refuse(response, 404);
  response.writeHead(200, {
    ...HEADERS,
    'Content-Type': TYPES[extname(path)] ?? 'application/octet-stream',
    'Content-Length': found.size,
  });
  if (request.method === 'HEAD') return void response.end();
  createReadStream(path)
    .on('error', () => response.destroy())
    .pipe(response);
}

/** A browser asks this first where a page of the internet wants something of this machine. */
function allow(response: ServerResponse): void {
  const allowed = { 'Access-Control-Allow-Methods': 'GET, HEAD', 'Access-Control-Allow-Private-Network': 'true' };
  response.writeHead(204, { ...HEADERS, ...allowed }).end();
}

/** The file that an address names; null where it lies outside the folder or can't be read as a path. */
function fileOf(root: string, url: string): string | null {
  let path: string;
  try {
    path = decodeURIComponent(url.split(/[?#]/, 1)[0]!);
  } catch {
    return null;
  }
  if (path.includes('\0') || path.includes('\\')) return null;
  const file = resolve(root, '.' + (path === '/' ? '/' + START : path));
  return file.startsWith(root + sep) ? file : null;
}

function refuse(response: ServerResponse, status: number): void {
  if (response.headersSent) return void response.destroy();
  response.writeHead(status, { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8' }).end(`${status}\n`);
}
