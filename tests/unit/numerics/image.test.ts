import { describe, expect, it } from 'vitest';
import { Image } from '../../../src/numerics/image.ts';

const wholes = (words: Float64Array): number[] => {
  const integers = new Int32Array(words.buffer, words.byteOffset, 2 * words.length);
  return [...words.keys()].map((i) => integers[2 * i]!);
};

describe('the numbers of a seat', () => {
  it('stand one behind the other, and each array knows where it begins', () => {
    const image = new Image();
    expect([image.zeros(2), image.numbers([1.5, -0]), image.counts([7, -1]), image.zeros(0)]).toEqual([
      0, 2, 4, 6,
    ]);
    const words = image.words();
    expect([...words.subarray(0, 4)]).toEqual([0, 0, 1.5, -0]);
    expect(wholes(words).slice(4)).toEqual([7, -1]);
  });

  it('can be set afterwards', () => {
    const image = new Image();
    image.zeros(3);
    image.setNumber(0, Math.PI);
    image.setCount(2, -5);
    const words = image.words();
    expect(words[0]).toBe(Math.PI);
    expect(wholes(words).slice(1)).toEqual([0, -5]);
  });

  it('may be more than were thought of at first', () => {
    const image = new Image();
    const first = image.numbers([1, 2]);
    const offsets = Array.from({ length: 30 }, (_, i) => image.numbers(new Float64Array(1000).fill(i)));
    const last = image.counts([9]);
    image.setCount(first, 3);
    const words = image.words();
    expect(words.length).toBe(30_003);
    expect(wholes(words)[first]).toBe(3);
    expect(wholes(words)[last]).toBe(9);
    for (const [i, offset] of offsets.entries())
      expect(words.subarray(offset, offset + 1000).every((value) => value === i)).toBe(true);
  });

  it('are a copy: what is set later does not change them', () => {
    const image = new Image();
    image.numbers([1]);
    const words = image.words();
    image.setNumber(0, 2);
    expect(words[0]).toBe(1);
  });
});
