import { randomBytes } from 'node:crypto';
import { open, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** Ends the name of a file that is being written: what a killed run may leave beside the good one. */
export const UNFINISHED = '.unfinished';

/**
 * Writes a file whole or not at all: under a name of its own in the same folder, then renamed over the one that stood there. A
 * full disk, a kill or a power cut on the way leaves the old file as it was. Throws what the file system throws.
 */
export async function writeWhole(path: string, content: Uint8Array | string): Promise<void> {
  // What a link points at is written, not the link; a device or a pipe can't be renamed over.
  const target = await realpath(path).catch(() => path);
  const there = await stat(target).catch(() => null);
  if (there !== null && !there.isFile()) return writeFile(target, content);
  const aside = join(dirname(target), `.${basename(target)}.${randomBytes(4).toString('hex')}${UNFINISHED}`);
  try {
    const file = await open(aside, 'wx', there?.mode ?? 0o666);
    try {
      await file.writeFile(content);
      // On the disk before the name changes, or a power cut could leave an empty file of the right name.
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(aside, target);
  } catch (error) {
    await rm(aside, { force: true });
    throw error;
  }
}
