import { describe, expect, it } from 'vitest';
import { parseClearance } from '../../../src/quantity/clearance.ts';

const words = {
  holes: ['H'],
  shafts: ['f', 'g', 'h'],
  grades: ['6', '7', '11'],
  boreFinishes: ['drilled', 'rough bored', 'ground'],
  rodFinishes: ['drawn', 'rough turned', 'ground'],
};
const parse = (text: string) => parseClearance(text, words, '8 um');

describe('a clearance', () => {
  it.each([
    ['8 um', { by: 'gap', gap: 8e-6 }],
    ['0.3 thou', { by: 'gap', gap: 7.62e-6 }],
    ['0 mm', { by: 'gap', gap: 0 }],
    ['H7/g6', { by: 'fit', hole: 'H7', shaft: 'g6' }],
    [' H 11 / h 11 ', { by: 'fit', hole: 'H11', shaft: 'h11' }],
    ['12 H7/g6', { by: 'fit', hole: 'H7', shaft: 'g6', nominal: 0.012 }],
    ['Ø12H7/g6', { by: 'fit', hole: 'H7', shaft: 'g6', nominal: 0.012 }],
    ['12.5 mm H7/g6', { by: 'fit', hole: 'H7', shaft: 'g6', nominal: 0.0125 }],
    ['0.5 in H7/f7', { by: 'fit', hole: 'H7', shaft: 'f7', nominal: 0.0127 }],
    ['drilled / drawn', { by: 'process', bore: 'drilled', rod: 'drawn' }],
    ['Rough bored/Rough turned', { by: 'process', bore: 'rough bored', rod: 'rough turned' }],
    ['ground / ground', { by: 'process', bore: 'ground', rod: 'ground' }],
  ])('%s', (text, value) => {
    expect(parse(text)).toEqual({ ok: true, value });
  });

  const shafts = 'Known for shafts: f, g, h with grades 6, 7, 11.';
  const holes = 'Known for holes: H with grades 6, 7, 11.';
  const slides = 'Nothing slides in a transition or an interference fit; shafts that do are f, g, h.';
  const any = 'Write "8 um" or "H7/g6" or "reamed / turned".';
  it.each([
    ['8', 'no unit', 'Write "8 um".'],
    ['8,5 um', 'a decimal comma', 'Write "8.5 um".'],
    ['8 g', 'a mass', 'Write "8 um".'],
    ['H7', 'no hole and shaft with a slash between', 'Write "H7/g6".'],
    ['12 H7', 'no hole and shaft with a slash between', 'Write "H7/g6".'],
    ['H7g6', 'no hole and shaft with a slash between', 'Write "H7/g6".'],
    ['H7-g6', 'no hole and shaft with a slash between', 'Write "H7/g6".'],
    ['g6/H7', 'the shaft before the hole', 'Write "H7/g6".'],
    ['H7/a11', 'unknown shaft "a11"', shafts],
    ['H7/g5', 'unknown shaft "g5"', shafts],
    ['G7/h6', 'unknown hole "G7"', holes],
    ['H12/h6', 'unknown hole "H12"', holes],
    ['H7/p6', 'a shaft "p6" may be larger than its hole', slides],
    ['H7/js6', 'a shaft "js6" may be larger than its hole', slides],
    ['round H7/g6', 'not a number', 'Write "12 mm".'],
    ['12 g H7/g6', 'a mass', 'Write "12 mm".'],
    ['drilled', 'no finish of the rod', 'Write "drilled / drawn".'],
    ['drawn', 'no finish of the bore', 'Write "drilled / drawn".'],
    ['drawn / drilled', 'the rod before the bore', 'Write "drilled / drawn".'],
    ['filed / drawn', 'unknown finish of a bore "filed"', 'Known are drilled, rough bored, ground.'],
    ['drilled / filed', 'unknown finish of a rod "filed"', 'Known are drawn, rough turned, ground.'],
    ['snug', 'none of these', any],
    ['', 'none of these', any],
    ['x'.repeat(81), 'too long', any],
  ])('refuses %s', (text, reason, hint) => {
    expect(parse(text)).toEqual({ ok: false, reason, hint });
  });
});
