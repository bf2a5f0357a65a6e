import { createHash } from 'node:crypto';
import { CONTENT, written } from './written';

/** ISO 32000-1, 7.6.3.3: what fills a password up to 32 bytes. */
const FILLING = Buffer.from('28bf4e5e4e758a4164004e56fffa01082e2e00b6d0683e802f0ca9fe6453697a', 'hex');
const PERMISSIONS = -4;

const md5 = (...parts: readonly Uint8Array[]) => createHash('md5').update(Buffer.concat(parts)).digest();
const filled = (password: string) => Buffer.concat([Buffer.from(password), FILLING]).subarray(0, 32);

/** RC4, as published. */
function rc4(key: Uint8Array, data: Uint8Array): Buffer {
  const state = Array.from({ length: 256 }, (_, at) => at);
  const swap = (one: number, other: number) => ([state[one], state[other]] = [state[other]!, state[one]!]);
  for (let at = 0, other = 0; at < 256; at += 1) {
    other = (other + state[at]! + key[at % key.length]!) % 256;
    swap(at, other);
  }
  let [at, other] = [0, 0];
  return Buffer.from(
    data.map((byte) => {
      at = (at + 1) % 256;
      other = (other + state[at]!) % 256;
      swap(at, other);
      return byte ^ state[(state[at]! + state[other]!) % 256]!;
    }),
  );
}

/** A PDF of one page encrypted with 40 bits (ISO 32000-1, 7.6.3, revision 2), opened by `password`; "" opens without asking. */
export function locked(content: string, password: string): Uint8Array {
  const id = Buffer.from('0123456789abcdef');
  const owner = rc4(md5(filled('owner')).subarray(0, 5), filled(password));
  const permissions = Buffer.alloc(4);
  permissions.writeInt32LE(PERMISSIONS);
  const key = md5(filled(password), owner, permissions, id).subarray(0, 5);
  const ofObject = md5(key, Buffer.from([CONTENT, 0, 0, 0, 0])).subarray(0, 10);
  const hex = (bytes: Buffer) => `<${bytes.toString('hex')}>`;
  const encrypt = `/Encrypt << /Filter /Standard /V 1 /R 2 /O ${hex(owner)} /U ${hex(rc4(key, FILLING))} /P ${PERMISSIONS} >>`;
  return written(rc4(ofObject, Buffer.from(content)), '', `${encrypt} /ID [${hex(id)} ${hex(id)}]`);
}
