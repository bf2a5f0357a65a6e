import { execFileSync, spawnSync } from 'node:child_process';
import { findChromium } from './browser/chromium';
import { findUnoPython } from './spreadsheet/python';

/** A program that some tests need and the project can't bring as a package. */
interface Tool {
  readonly name: string;
  /** The project of tests that needs it. */
  readonly project: 'browser' | 'spreadsheet';
  /** Debian packages that hold it. */
  readonly packages: readonly string[];
  readonly present: () => boolean;
  /** What to do where it can't be installed from here. */
  readonly advice: string;
}

const TOOLS: readonly Tool[] = [
  {
    name: 'Chromium',
    project: 'browser',
    packages: ['chromium', 'fonts-dejavu-core'],
    present: () => findChromium() !== null,
    advice: 'no Chromium found: install it (Debian: apt-get install chromium) or set CHROMIUM_PATH to one.',
  },
  {
    name: 'LibreOffice Calc',
    project: 'spreadsheet',
    packages: ['libreoffice-calc', 'python3-uno'],
    present: () => spawnSync('soffice', ['--version']).status === 0 && findUnoPython() !== null,
    advice:
      'no LibreOffice Calc found that a Python can drive: install both (Debian: apt-get install libreoffice-calc python3-uno).',
  },
];

/** Installs what is missing where this can be done without asking (as root on Debian); gives what is still missing. */
export function missingTools(): Tool[] {
  const missing = TOOLS.filter((tool) => !tool.present());
  if (missing.length === 0 || process.getuid?.() !== 0 || spawnSync('apt-get', ['--version']).status !== 0)
    return missing;
  const packages = missing.flatMap((tool) => tool.packages);
  console.log(`\nInstalling ${packages.join(', ')} …`);
  try {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    execFileSync('apt-get', ['update', '-qq'], { env, stdio: 'ignore' });
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], { env, stdio: 'ignore' });
  } catch (error) {
    console.log(`apt-get could not install them: ${error instanceof Error ? error.message : String(error)}`);
  }
  return missing.filter((tool) => !tool.present());
}
