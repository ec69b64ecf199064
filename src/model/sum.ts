/** A short sum of a text: to see that it is still the one that was put there. It keeps no secret. */

/** FNV-1a of the text's UTF-16 units, folded to 24 bits, as six hexadecimal digits. */
export function sumOf(text: string): string {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    sum ^= text.charCodeAt(i);
    sum = Math.imul(sum, 0x01000193);
  }
  return (((sum >>> 24) ^ sum) & 0xffffff).toString(16).padStart(6, '0');
}
