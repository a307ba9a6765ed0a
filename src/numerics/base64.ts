/** Bytes written as letters (RFC 4648); the language itself cannot read them everywhere. */

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

export function bytesOfBase64(text: string): Uint8Array {
  const values = new Uint8Array(128);
  for (let i = 0; i < LETTERS.length; i += 1) values[LETTERS.charCodeAt(i)] = i;
  const padding = text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0;
  const bytes = new Uint8Array((text.length / 4) * 3 - padding);
  const sextet = (i: number): number => values[text.charCodeAt(i)]!;
  for (let i = 0, at = 0; i < text.length; i += 4, at += 3) {
    const triple = (sextet(i) << 18) | (sextet(i + 1) << 12) | (sextet(i + 2) << 6) | sextet(i + 3);
    // What lies beyond the end of an array is not written.
    bytes[at] = triple >> 16;
    bytes[at + 1] = triple >> 8;
    bytes[at + 2] = triple;
  }
  return bytes;
}
