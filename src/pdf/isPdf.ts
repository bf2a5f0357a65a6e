/** Whether bytes are a PDF's: its mark stands among the first of them, not always at the very start. */
export function isPdf(bytes: Uint8Array): boolean {
  let head = '';
  for (const byte of bytes.subarray(0, 1024)) head += String.fromCharCode(byte);
  return head.includes('%PDF-');
}
