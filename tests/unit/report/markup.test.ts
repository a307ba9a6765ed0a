import { expect, test } from 'vitest';
import { html, inertJson } from '../../../src/report/html/markup.ts';
import { prose } from '../../../src/report/html/prose.ts';

test('text in a template is inert, markup and lists pass through, nothing leaves nothing', () => {
  const text = `<b class="x">'&`;
  expect(html`<i title="${text}">${text}</i>`.text).toBe(
    '<i title="&lt;b class=&quot;x&quot;&gt;&#39;&amp;">&lt;b class=&quot;x&quot;&gt;&#39;&amp;</i>',
  );
  expect(html`${[html`<b>${1}</b>`, ['<', undefined]]}`.text).toBe('<b>1</b>&lt;');
});

test('JSON in a script element cannot end it or open a comment', () => {
  const value = { text: '</script><!-- ]]> \u2028\u2029 &' };
  expect(inertJson(value)).not.toMatch(/[<>&\u2028\u2029]/u);
  expect(JSON.parse(inertJson(value))).toEqual(value);
});

test('a number stays with its unit, but not with any word', () => {
  expect(prose('315 rpm, 62 % of 5 turns from 1.6 bar gauge')).toBe(
    '315\u00a0rpm, 62\u00a0% of 5\u00a0turns from 1.6\u00a0bar gauge',
  );
  expect(prose('after 9 revolutions')).toBe('after 9 revolutions');
});
