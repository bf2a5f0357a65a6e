import { deflateSync } from 'node:zlib';
import { written } from './written';

/** A PDF of one page whose content is `text`, `times` over, packed twice: a few kilobytes that unpack to very much. */
export function packed(text: string, times: number): Uint8Array {
  const content = deflateSync(deflateSync(Buffer.from(text.repeat(times)), { level: 9 }), { level: 9 });
  return written(content, '/Filter [/FlateDecode /FlateDecode]');
}

/** A PDF of one page on which so many letters stand. */
export function crowded(letters: number): Uint8Array {
  return written(
    deflateSync(Buffer.from(`BT /F 4 Tf\n${'1 0 0 1 50 400 Tm (casings) Tj\n'.repeat(letters / 7)}ET`)),
    '/Filter /FlateDecode',
  );
}
