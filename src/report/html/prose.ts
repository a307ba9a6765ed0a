/** Sentences for the page: a number is not parted from its unit at the end of a line. */
const beforeUnit = /(?<=\d) (?=(?:%|[°µ]?\p{L}[\p{L}·²³/]{0,4})(?!\p{L}))/gu;

export const prose = (sentence: string): string => sentence.replace(beforeUnit, '\u00a0');
