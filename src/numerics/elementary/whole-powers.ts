/** Whole powers as products. `x ** 2` is Math.pow to the language, which need not round it like a product. */
export const square = (x: number): number => x * x;

export const cube = (x: number): number => x * x * x;
