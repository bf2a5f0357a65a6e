import { mkdirSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serve, type Serving } from '../../cli/serve';
import { ownFolder, put } from './folder';

const folder = ownFolder();
let serving: Serving;

beforeAll(async () => {
  mkdirSync(join(folder, 'web'));
  put(folder, 'web/workbench.html', '<p>here');
  put(folder, 'web/a b.js', '1');
  put(folder, 'secret.txt', 'secret');
  mkdirSync(join(folder, 'web-other'));
  put(folder, 'web-other/x.txt', 'other');
  serving = await serve(join(folder, 'web'));
});
afterAll(() => serving.close());

/** A request whose path is sent exactly as given, which fetch would tidy up. */
function ask(
  path: string,
  method = 'GET',
): Promise<{ status: number; body: string; headers: Record<string, unknown> }> {
  const { port } = new URL(serving.address);
  return new Promise((resolve, reject) => {
    request({ host: 'localhost', port, path, method }, (answer) => {
      let body = '';
      answer.on('data', (chunk: Buffer) => (body += chunk.toString()));
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, body, headers: answer.headers }));
    })
      .on('error', reject)
      .end();
  });
}

describe('the server behind npm start', () => {
  test('gives the page at its root, and files by name', async () => {
    expect(await ask('/')).toMatchObject({ status: 200, body: '<p>here' });
    expect(await ask('/a%20b.js?x=1')).toMatchObject({ status: 200, body: '1' });
    expect((await ask('/a%20b.js')).headers['content-type']).toContain('text/javascript');
  });

  test.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/..\\secret.txt',
    '/../web-other/x.txt',
    '//etc/passwd',
    '/%00',
    '/%zz',
    '/.',
    '/nowhere',
  ])('gives nothing outside its folder: %s', async (path) => {
    expect(await ask(path)).toMatchObject({ status: 404, body: '404\n' });
  });

  test('only reads: other methods are refused', async () => {
    expect((await ask('/', 'POST')).status).toBe(405);
    expect(await ask('/', 'HEAD')).toMatchObject({ status: 200, body: '' });
  });

  test('forbids the page every address but its own, and lets Excel show it in a frame', async () => {
    const { headers } = await ask('/');
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("connect-src 'self'");
    expect(policy).not.toMatch(/https?:|\*|'unsafe-eval'/);
    expect(headers).not.toHaveProperty('x-frame-options');
  });

  // Microsoft's page "Publish an add-in": functions.json and the scripts must come with this header.
  test('lets Excel on the web fetch every file from its own address, and answers what a browser asks before', async () => {
    for (const path of ['/', '/a%20b.js', '/nowhere']) {
      expect((await ask(path)).headers['access-control-allow-origin']).toBe('*');
    }
    expect(await ask('/a%20b.js', 'OPTIONS')).toMatchObject({
      status: 204,
      headers: { 'access-control-allow-origin': '*', 'access-control-allow-methods': 'GET, HEAD' },
    });
  });

  test('takes another port where the one wished for is taken', async () => {
    const port = Number(new URL(serving.address).port);
    await expect(serve(join(folder, 'web'), { port, onlyThatPort: true })).rejects.toThrow('EADDRINUSE');
    const second = await serve(join(folder, 'web'), { port });
    expect(second.address).not.toBe(serving.address);
    expect((await fetch(second.address)).status).toBe(200);
    await second.close();
  });
});
