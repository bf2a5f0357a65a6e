import { OfficeAddinManifest } from 'office-addin-manifest';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const text = readFileSync('manifest.xml', 'utf8');
const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
const functions = (
  JSON.parse(readFileSync('functions/functions.json', 'utf8')) as { functions: { id: string; helpUrl?: string }[] }
).functions;

const all = (pattern: RegExp): string[] => [...text.matchAll(pattern)].map((match) => match[1]!);
const resources = new Map(
  [...text.matchAll(/<bt:(?:Image|Url|String) id="([^"]+)" DefaultValue="([^"]+)"/g)].map((match) => [
    match[1]!,
    match[2]!,
  ]),
);

/** Width and height as a .png file says them: big-endian at bytes 16 and 20 (PNG specification, IHDR). */
function sizeOf(path: string): [number, number] {
  const bytes = readFileSync(path);
  return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
}

describe('the add-in manifest', () => {
  test("is read by Microsoft's own manifest reader", async () => {
    const read = await OfficeAddinManifest.readManifestFile('manifest.xml');
    expect(read.displayName).toBe('Archwright');
    expect(read.hosts).toEqual(['Workbook']);
    expect(read.permissions).toBe('ReadWriteDocument');
  });

  test('has a GUID as its id, and the version of package.json, which is no less than 1.0', () => {
    expect(all(/<Id>(.*?)<\/Id>/g)[0]).toMatch(/^[\da-f]{8}-[\da-f]{4}-4[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/);
    expect(all(/<Version>(.*?)<\/Version>/g)).toEqual([`${version}.0`]);
    expect(Number(version.split('.')[0])).toBeGreaterThanOrEqual(1); // Microsoft's validator refuses less
  });

  test('offers support on a page of its own that says where to turn', () => {
    const [support] = all(/<SupportUrl DefaultValue="https:\/\/localhost:3000\/([^"]+)"/g);
    const page = readFileSync(`taskpane/excel/${support}`, 'utf8');
    expect(page).toMatch(/^<!doctype html>[^]*<h1>/);
    expect(page).not.toContain('<script');
    expect(resources.get('Support.Url')).toContain(support);
  });

  test('names https addresses only', () => {
    const addresses = all(/(?:DefaultValue="|<AppDomain>)(\w+:\/\/[^"<]+)/g);
    expect(addresses.length).toBeGreaterThan(8);
    expect(addresses.filter((address) => !address.startsWith('https://'))).toEqual([]);
  });

  test('uses no resource that is not there, and has none that is not used', () => {
    const used = new Set(all(/resid="([^"]+)"/g));
    expect([...used].filter((id) => !resources.has(id))).toEqual([]);
    expect([...resources.keys()].filter((id) => !used.has(id))).toEqual([]);
    expect([...resources.keys()].filter((id) => id.length > 32)).toEqual([]);
  });

  test('one page serves the runtime, the functions, the ribbon and the pane', () => {
    const page = 'Taskpane.Url';
    expect(all(/<Runtime resid="([^"]+)" lifetime="long"/g)).toEqual([page]);
    expect(all(/<Page>\s*<SourceLocation resid="([^"]+)"/g)).toEqual([page]);
    expect(all(/<FunctionFile resid="([^"]+)"/g)).toEqual([page]);
    expect(all(/"ShowTaskpane">\s*<SourceLocation resid="([^"]+)"/g)).toEqual([page]);
    expect(text).not.toContain('<TaskpaneId>'); // a shared runtime's pane has none
  });

  test('asks for a shared runtime, custom functions 1.3 and ExcelApi 1.9, under the namespace ARCH', () => {
    const sets = [...text.matchAll(/<Set Name="(\w+)" MinVersion="([\d.]+)"/g)].map(
      ([, name, least]) => `${name} ${least}`,
    );
    expect(sets).toEqual(['SharedRuntime 1.1', 'CustomFunctionsRuntime 1.3', 'ExcelApi 1.9']);
    expect(resources.get('Functions.Namespace')).toBe('ARCH');
  });

  test('every icon is a picture of the size it is named for', () => {
    const named = new Set(all(/\/icons\/icon-(\d+)\.png/g).map(Number));
    expect([...named].sort((a, b) => a - b)).toEqual([16, 32, 64, 80]);
    for (const size of named) expect(sizeOf(`taskpane/excel/icons/icon-${size}.png`)).toEqual([size, size]);
    for (const [, size, resid] of text.matchAll(/<bt:Image size="(\d+)" resid="([^"]+)"/g)) {
      expect(resources.get(resid!)).toContain(`icon-${size}.png`);
    }
  });

  test('texts fit where Excel shows them: labels and tips', () => {
    for (const label of ['Group.Label', 'ShowPane.Label', 'GetStarted.Title']) {
      expect(resources.get(label)!.length).toBeLessThanOrEqual(125);
    }
    for (const tip of ['ShowPane.Tip', 'GetStarted.Description']) {
      expect(resources.get(tip)!.length).toBeLessThanOrEqual(250);
    }
    expect(all(/<Description DefaultValue="([^"]+)"/g)[0]!.length).toBeLessThanOrEqual(250);
  });

  test('every worksheet function has a help address', () => {
    expect(functions.length).toBeGreaterThanOrEqual(27);
    expect(functions.filter(({ helpUrl }) => !helpUrl?.startsWith('https://')).map(({ id }) => id)).toEqual([]);
  });
});
