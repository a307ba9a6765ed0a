/**
 * Dash patterns [px] of the six inks. The colours stand in the style sheet as --ink-0 to --ink-5; every ink has its own
 * pattern too, so that lines are told apart in grey and by eyes that see colours differently.
 */
export const inkDashes: readonly (readonly number[])[] = [[], [12, 4], [5, 3], [10, 3, 2, 3], [2, 3], [1, 5]];
