/** JSON as commands print and write it. */

const disturbing = /[^\n\P{Cc}]|[\p{Cf}\p{Zl}\p{Zp}]/gu;

const unicodeEscape = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** Characters that could disturb a terminal are escaped; whoever reads the JSON gets them back. */
export const jsonText = (value: unknown): string =>
  JSON.stringify(value, null, 2).replace(disturbing, (character) =>
    character.split('').map(unicodeEscape).join(''),
  );
