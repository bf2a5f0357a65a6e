/**
 * A text of 16 hexadecimal digits that two texts share only by chance, about one in 10^19: two 32-bit hashes by multiplication and
 * exclusive or (FNV-1a with two starting values and primes). Not meant against tampering.
 */
export function fingerprint(text: string): string {
  let one = 0x811c9dc5;
  let other = 0x9e3779b9;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    one = Math.imul(one ^ code, 0x01000193);
    other = Math.imul(other ^ code, 0x85ebca6b);
    other ^= other >>> 13;
  }
  return [one, other].map((hash) => (hash >>> 0).toString(16).padStart(8, '0')).join('');
}
