/**
 * Text from a file may hold characters that a terminal obeys: escape sequences, and marks that turn the writing round. They are
 * written as JSON writes them, so that the text stays readable and JSON stays the same value.
 */
export function harmless(text: string): string {
  return text.replace(
    /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
