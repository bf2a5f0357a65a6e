import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { OfficeAddinManifest } from 'office-addin-manifest';
import { afterAll, describe, expect, test } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'archwright-'));
afterAll(() => rmSync(folder, { recursive: true }));

const pack = (...args: string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'taskpane/excel/package.ts', ...args], { encoding: 'utf8' });

describe('npm run package', () => {
  test('gives a folder to host and a manifest that points at it', async () => {
    expect(pack('--origin', 'https://example.com/shop/')).toMatchObject({ status: 0, stderr: '' });
    const manifest = readFileSync('dist/manifest.xml', 'utf8');
    const read = await OfficeAddinManifest.readManifestFile('dist/manifest.xml');
    expect(read.defaultSettings?.sourceLocation).toBe('https://example.com/shop/taskpane.html');
    expect(manifest).not.toContain('localhost');
    // Every address that the manifest names is a file of the folder.
    const files = [...manifest.matchAll(/"https:\/\/example\.com\/shop\/([^"]+)"/g)].map((match) => match[1]!);
    expect(files.length).toBeGreaterThan(8);
    expect(files.filter((file) => !existsSync(join('dist/host', file)))).toEqual([]);
    const help = [...readFileSync('dist/host/functions.json', 'utf8').matchAll(/"helpUrl": "([^"#]+)/g)];
    expect(new Set(help.map((match) => match[1]))).toEqual(new Set(['https://example.com/shop/docs/functions.html']));
    const page = readFileSync('dist/host/docs/functions.html', 'utf8');
    const pictures = [...page.matchAll(/src="(pictures\/[^"]+)"/g)].map((match) => match[1]!);
    expect(pictures.filter((picture) => !existsSync(join('dist/host/docs', picture)))).toEqual([]);
    expect(pictures.length).toBeGreaterThan(3);
    // The store build: the same files, but office.js is Microsoft's.
    expect(files.filter((file) => !existsSync(join('dist/store', file)))).toEqual([]);
    expect(existsSync('dist/store/office')).toBe(false);
    expect(readFileSync('dist/store/taskpane.html', 'utf8')).toContain(
      '<script src="https://appsforoffice.microsoft.com/lib/1/hosted/office.js"></script>',
    );
  });

  test.each([
    [],
    ['--origin', 'http://example.com'],
    ['--origin', 'example.com'],
    ['--origin', 'https://example.com/?x'],
    ['--orign', 'https://example.com'],
  ])('refuses a missing or unfit origin: %s %s', (...args) => {
    const { status, stderr } = pack(...args.filter((arg) => arg !== undefined));
    expect(status).toBe(2);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });
});

describe('npm pack', () => {
  test('gives a package that runs elsewhere without any other package', () => {
    const env = { ...process.env, npm_config_cache: join(folder, 'cache') };
    const [{ filename, files }] = JSON.parse(
      execFileSync('npm', ['pack', '--ignore-scripts', '--json', '--pack-destination', folder], {
        encoding: 'utf8',
        env,
      }),
    ) as [{ filename: string; files: { path: string }[] }];
    expect(files.map(({ path }) => path)).toEqual(
      expect.arrayContaining([
        'LICENSE',
        'README.md',
        'package.json',
        'dist/cli/archwright.cjs',
        'dist/cli/THIRD-PARTY.txt',
      ]),
    );
    writeFileSync(join(folder, 'package.json'), '{"name":"elsewhere","private":true}');
    execFileSync('npm', ['install', '--offline', '--no-audit', '--no-fund', filename], { cwd: folder, env });
    expect(readdirSync(join(folder, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual(['archwright']);
    expect(execFileSync('npx', ['archwright', 'fn', 'RADIUS', '36', '6'], { cwd: folder, encoding: 'utf8', env })).toBe(
      '30\n',
    );
  });
});
