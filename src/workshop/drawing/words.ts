/** Numbers as a drawing shows them. */
export const mm = (length: number, digits = 2): string => {
  const text = (length * 1e3).toFixed(digits);
  return `${Number(text) === 0 ? '0' : Number(text)}`;
};

export const degrees = (angle: number, digits = 1): string => {
  const text = Number(((angle * 180) / Math.PI).toFixed(digits));
  return `${text === 0 ? 0 : text}°`;
};

/** With its unit, for tables. */
export const inMm = (length: number, digits = 2): string => `${mm(length, digits)} mm`;

/** What the mark of an end's dead centre stands for. */
export const deadCentreWords = { TDC: 'top dead centre', BDC: 'bottom dead centre' } as const;
