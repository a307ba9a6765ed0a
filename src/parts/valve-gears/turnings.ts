/** Ways to turn, as seen on a drawing. */
export const turnings = ['clockwise', 'anticlockwise'] as const;
