/** Builds the numbers of a seat of the kernel: arrays one behind the other, their offsets kept by the builder's caller. */

export class Image {
  private doubles = new Float64Array(4096);
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

  setCount(offset: number, value: number): void {
    this.integers[2 * offset] = value;
  }

  /** All that has been written. */
  words(): Float64Array {
    return this.doubles.slice(0, this.length);
  }

  private grow(): void {
    const doubles = new Float64Array(2 * this.length);
    doubles.set(this.doubles);
    this.doubles = doubles;
    this.integers = new Int32Array(doubles.buffer);
  }
}
