/**
 * The play of a rod in its bore, as people know it: a radial gap "8 um", an ISO fit "H7/g6" or "12 H7/g6", two finishes
 * "reamed / turned". The nominal diameter of a fit is in millimetres unless it says otherwise, as on drawings.
 */
import type { Clearance, ClearanceWords } from '../kinds/parameter.ts';
import { readNumber } from './number.ts';
import { parseQuantity } from './parse-quantity.ts';
import { refusal, write, type Refusal } from './refusal.ts';

export interface ParsedClearance {
  readonly ok: true;
  readonly value: Clearance;
}

const maxLength = 80;
const symbol = String.raw`([A-Za-z]{1,2})\s?(\d{1,2})`;
const fitForm = new RegExp(String.raw`^(.*?)\s*${symbol}\s*/\s*${symbol}$`, 'u');
const finishForm = /^([a-z ]+?)\s*\/\s*([a-z ]+)$/iu;

const fitExample = 'H7/g6';
const finishExample = 'reamed / turned';

export function parseClearance(
  written: string,
  words: ClearanceWords,
  example: string,
): ParsedClearance | Refusal {
  const text = written.trim();
  const hint = write(example, fitExample, finishExample);
  if (text.length > maxLength) return refusal('too long', hint);
  const fit = fitForm.exec(text);
  if (fit !== null) return parseFit(fit, words);
  const [, bore, rod] = finishForm.exec(text) ?? [];
  if (bore !== undefined && rod !== undefined)
    return parseFinishes(bore.toLowerCase(), rod.toLowerCase(), words);
  return (
    half(text, words) ?? (/^[\d.+\-−]/u.test(text) ? parseGap(text, example) : refusal('none of these', hint))
  );
}

function parseGap(text: string, example: string): ParsedClearance | Refusal {
  const gap = parseQuantity(text, 'length', example);
  return gap.ok ? { ok: true, value: { by: 'gap', gap: gap.value } } : gap;
}

/** One half of a pair, or both without a slash between them. */
function half(text: string, words: ClearanceWords): Refusal | undefined {
  const { holes, shafts, boreFinishes, rodFinishes } = words;
  if (new RegExp(String.raw`(^|[\s\d-])(${[...holes, ...shafts].join('|')})\s?\d{1,2}$`, 'u').test(text))
    return refusal('no hole and shaft with a slash between', write(fitExample));
  const word = text.toLowerCase();
  if (boreFinishes.includes(word))
    return refusal('no finish of the rod', write(`${word} / ${rodFinishes[0] ?? ''}`));
  return rodFinishes.includes(word)
    ? refusal('no finish of the bore', write(`${boreFinishes[0] ?? ''} / ${word}`))
    : undefined;
}

const pressLetters = 'js j k m n p r s t u v x y z za zb zc'.split(' ');

const known = (letters: readonly string[], grades: readonly string[]): string =>
  `${letters.join(', ')} with grades ${grades.join(', ')}`;

function parseFit(match: RegExpExecArray, words: ClearanceWords): ParsedClearance | Refusal {
  const [, nominal = '', holeLetter = '', holeGrade = '', shaftLetter = '', shaftGrade = ''] = match;
  const { holes, shafts, grades } = words;
  const hole = holeLetter + holeGrade;
  const shaft = shaftLetter + shaftGrade;
  if (shafts.includes(holeLetter) && holes.includes(shaftLetter))
    return refusal('the shaft before the hole', write(`${shaft}/${hole}`));
  if (!holes.includes(holeLetter) || !grades.includes(holeGrade))
    return refusal(`unknown hole "${hole}"`, `Known for holes: ${known(holes, grades)}.`);
  if (pressLetters.includes(shaftLetter)) return pressFit(shaft, shafts);
  if (!shafts.includes(shaftLetter) || !grades.includes(shaftGrade))
    return refusal(`unknown shaft "${shaft}"`, `Known for shafts: ${known(shafts, grades)}.`);
  if (nominal === '') return { ok: true, value: { by: 'fit', hole, shaft } };
  const diameter = parseNominal(nominal);
  return diameter.ok ? { ok: true, value: { by: 'fit', hole, shaft, nominal: diameter.value } } : diameter;
}

const pressFit = (shaft: string, shafts: readonly string[]): Refusal =>
  refusal(
    `a shaft "${shaft}" may be larger than its hole`,
    `Nothing slides in a transition or an interference fit; shafts that do are ${shafts.join(', ')}.`,
  );

function parseNominal(text: string): { readonly ok: true; readonly value: number } | Refusal {
  const example = '12 mm';
  const bare = text.replace(/^[Øø⌀]\s*/u, '');
  const number = readNumber(bare, example);
  if (!number.ok) return number;
  return parseQuantity(number.rest === '' ? `${bare} mm` : bare, 'length', example);
}

function parseFinishes(bore: string, rod: string, words: ClearanceWords): ParsedClearance | Refusal {
  const { boreFinishes, rodFinishes } = words;
  if (boreFinishes.includes(bore) && rodFinishes.includes(rod))
    return { ok: true, value: { by: 'process', bore, rod } };
  if (boreFinishes.includes(rod) && rodFinishes.includes(bore))
    return refusal('the rod before the bore', write(`${rod} / ${bore}`));
  return boreFinishes.includes(bore)
    ? refusal(`unknown finish of a rod "${rod}"`, `Known are ${rodFinishes.join(', ')}.`)
    : refusal(`unknown finish of a bore "${bore}"`, `Known are ${boreFinishes.join(', ')}.`);
}
