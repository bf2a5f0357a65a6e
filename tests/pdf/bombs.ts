import { deflateSync } from 'node:zlib';
import { written } from './written';

/** A PDF of one page whose content is `text`, `times` over, packed twice: a few kilobytes that unpack to very much. */
export function packed(text: string, times: number): Uint8Array {
  const content = deflateSync(deflateSync(Buffer.from(text.repeat(times)), { level: 9 }), { level: 9 });
  return written(content, '/Filter [/FlateDecode /FlateDecode]');
}
