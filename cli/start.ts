/**
 * `npm start`: serves the built workbench to this machine and prints where. PORT wishes for a port.
 * `npm run excel`: serves the add-in over https on the port that manifest.xml names.
 */
import { readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve, type Certificate, type Serving } from './serve';

const WEB = fileURLToPath(new URL('../dist/web', import.meta.url));
const MANIFEST_PORT = 3000;

/** The certificate that `npx office-addin-dev-certs install` puts on a developer's machine. */
function developersCertificate(): Certificate {
  const folder = join(homedir(), '.office-addin-dev-certs');
  try {
    return {
      cert: readFileSync(join(folder, 'localhost.crt'), 'utf8'),
      key: readFileSync(join(folder, 'localhost.key'), 'utf8'),
    };
  } catch {
    throw new Error('Excel needs https, and there is no certificate yet. Run: npx office-addin-dev-certs install');
  }
}

/** The port that PORT wishes for, else the usual one. */
function wishedPort(given = '4180'): number {
  if (/^\d{1,5}$/.test(given) && Number(given) < 65_536) return Number(given);
  throw new Error(`PORT must be a whole number from 0 to 65535; got "${given}".`);
}

async function start(forExcel: boolean): Promise<Serving> {
  if (!forExcel) {
    const serving = await serve(WEB, { port: wishedPort(process.env['PORT']) });
    console.log(`\nArchwright's workbench, with an example schedule: ${serving.address}?example`);
    console.log(`The same with an empty workbook:                  ${serving.address}`);
    return serving;
  }
  const serving = await serve(WEB, { port: MANIFEST_PORT, onlyThatPort: true, certificate: developersCertificate() });
  console.log(`\nThe add-in is served at ${serving.address}; give Excel the file manifest.xml.`);
  return serving;
}

try {
  const { close } = await start(process.argv.includes('--excel'));
  console.log('Stop with Ctrl+C.');
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void close());
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
