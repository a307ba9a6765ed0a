import { describe, expect, it } from 'vitest';
import { bytesOfBase64 } from '../../../src/numerics/base64.ts';
import { noise } from '../../support/noise.ts';

const letters = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

describe('bytes written as letters', () => {
  it('are read as in RFC 4648', () => {
    const read = (text: string): string => Buffer.from(bytesOfBase64(text)).toString();
    // The test vectors of its section 10 (from memory).
    expect(['', 'Zg==', 'Zm8=', 'Zm9v', 'Zm9vYg==', 'Zm9vYmE=', 'Zm9vYmFy'].map(read)).toEqual([
      ...['', 'f', 'fo', 'foo', 'foob', 'fooba', 'foobar'],
    ]);
  });

  it('may be any, in threes', () => {
    const all = Uint8Array.from({ length: 3 * 256 }, (_, i) => (i % 3 === 1 ? 255 - (i >> 2) : i >> 1));
    expect(bytesOfBase64(letters(all))).toEqual(all);
  });

  it('may be any number, of any value', () => {
    const { uniform } = noise(1);
    for (let length = 0; length < 200; length += 1) {
      const bytes = Uint8Array.from({ length }, () => 256 * uniform());
      expect(bytesOfBase64(letters(bytes))).toEqual(bytes);
    }
  });
});
