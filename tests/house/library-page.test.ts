/** The page of the library says what the declarations say. `npm run reference` writes it anew. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { libraryEntries, libraryPage } from '../../.config/scripts/library-page.mjs';

it('docs/reference holds the page of the library', () => {
  const page = readFileSync(new URL('../../docs/reference/library.md', import.meta.url), 'utf8');
  expect(page).toBe(libraryPage());
});

it('everything that the library exports says what it is', () => {
  const entries = libraryEntries();
  expect(entries.length).toBeGreaterThan(40);
  expect(entries.filter(({ doc }) => doc === '').map(({ name }) => name)).toEqual([]);
});
