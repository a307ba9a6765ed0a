/** Builds the numbers of a seat of the kernel: arrays one behind the other, their offsets kept by the builder's caller. */

/** Room to build in, all zeros, that is used again and again: most images are short, and zeros cost time too. */
const spare: Float64Array[] = [];
const USUAL_LENGTH = 4096;

export class Image {
  private doubles = spare.pop() ?? new Float64Array(USUAL_LENGTH);
  private integers = new Int32Array(this.doubles.buffer);
  private length = 0;

  /** So many words, zero; the offset of the first. */
  zeros(count: number): number {
    const offset = this.length;
    this.length += count;
    if (this.length > this.doubles.length) this.grow();
    return offset;
  }

  numbers(values: ArrayLike<number>): number {
    const offset = this.zeros(values.length);
    this.doubles.set(values, offset);
    return offset;
  }

  /** Whole numbers. */
  counts(values: ArrayLike<number>): number {
    const offset = this.zeros(values.length);
    for (let i = 0; i < values.length; i += 1) this.integers[2 * (offset + i)] = values[i]!;
    return offset;
  }

  setNumber(offset: number, value: number): void {
    this.doubles[offset] = value;
  }

  /** The value, as most are the offset of an array just made. */
  setCount(offset: number, value: number): number {
    this.integers[2 * offset] = value;
    return value;
  }

  /** All that has been written; the image is then empty. */
  words(): Float64Array {
    const words = this.doubles.slice(0, this.length);
    spare.push(this.doubles.fill(0, 0, this.length));
    this.doubles = new Float64Array(0);
    this.length = 0;
    return words;
  }

  private grow(): void {
    const doubles = new Float64Array(2 * this.length);
    doubles.set(this.doubles);
    this.doubles = doubles;
    this.integers = new Int32Array(doubles.buffer);
  }
}
