import { deflateSync } from 'node:zlib';
import { random } from '../random';
import { written } from './written';

/** A PDF of one page whose content is `text`, `times` over, packed twice: a few kilobytes that unpack to very much. */
export function packed(text: string, times: number): Uint8Array {
  const content = deflateSync(deflateSync(Buffer.from(text.repeat(times)), { level: 9 }), { level: 9 });
  return written(content, '/Filter [/FlateDecode /FlateDecode]');
}

/** A PDF of one page on which so many texts stand at odd places that no search for a table gets through them in seconds. */
export function crowded(texts: number): Uint8Array {
  const from = random(1);
  const said = Array.from(
    { length: texts },
    (_, index) => `1 0 0 1 ${from.between(10, 580)} ${from.between(10, 780)} Tm (W${index % 100}) Tj`,
  );
  return written(deflateSync(Buffer.from(`BT /F 4 Tf\n${said.join('\n')}\nET`)), '/Filter /FlateDecode');
}
