/** Files of a stranger who means harm: every text that a file can hold, and a folder to write into. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseDocument } from 'yaml';
import { emptyFolder, projectRoot } from '../end-to-end/command.ts';
import { tenOdds } from '../end-to-end/studies/toy.ts';

/** Each begins as a formula of a spreadsheet would. */
export const hostileTexts = [
  '=HYPERLINK("http://x.example","x")</title></script><script>document.title="ran"</script>',
  '+1<img src="http://x.example/x.png" onerror="document.title=`ran`"><!-- \u202e ]]>',
  '-1"\'`><svg onload=document.title="ran"><base href="http://x.example"> \u2028 \u001b[2J\u009b2J',
  '@SUM(A1)</style></noscript><iframe src="javascript:alert(1)"> \u0000\u0001\u0007 ../../CON',
  '\t=1+1 &lt;b&gt; <meta http-equiv="refresh" content="0;url=http://x.example"> {{x}} ${x} %s',
  '\r=1+1 <form action="http://x.example"><input name="x"><link rel="stylesheet" href="http://x.example">',
] as const;

type Texts = Readonly<Record<string, string>>;

/** Control characters as only quotation marks can hold them: written out they are refused at once. */
const escaped = (yaml: string): string =>
  yaml.replace(/[^\n\P{Cc}]/gu, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** A shipped file with texts of its own, by the paths of their keys. */
function withTexts(name: string, texts: Texts): string {
  const document = parseDocument(readFileSync(join(projectRoot, 'scenarios', name), 'utf8'));
  for (const [path, text] of Object.entries(texts))
    document.setIn(
      path.split('.').map((key) => (/^\d+$/u.test(key) ? Number(key) : key)),
      text,
    );
  // Quoted, so that every character comes through.
  return escaped(document.toString({ defaultStringType: 'QUOTE_DOUBLE', lineWidth: 0 }));
}

export function hostileFolder(): string {
  const [first, second, third, fourth, fifth, sixth] = hostileTexts;
  const folder = emptyFolder();
  mkdirSync(join(folder, 'bench'));
  const put = (name: string, text: string): void => writeFileSync(join(folder, name), text);
  put('press.yaml', withTexts('cider-press.yaml', { title: first, notes: second }));
  put('disc.yaml', withTexts('cider-press-disc.yaml', { title: third, notes: fourth }));
  put('coast.yaml', withTexts('bench/coast-down.yaml', { title: fifth, notes: first }));
  put(
    'notebook.yaml',
    withTexts('bench/attempts.yaml', {
      title: second,
      notes: third,
      'attempts.0.what': fourth.slice(0, 60),
      'attempts.0.when': first.slice(0, 30),
      'attempts.1.what': '=1+1</script>',
    }),
  );
  put('press-as-drawn.yaml', withTexts('bench/press-as-drawn.yaml', { title: sixth, notes: first }));
  put('coast-down.csv', readFileSync(join(projectRoot, 'scenarios/bench/coast-down.csv'), 'utf8'));
  put(
    'study.yaml',
    escaped(`title: ${JSON.stringify(fourth)}
notes: ${JSON.stringify(first)}
engine: disc.yaml
vary:
  - kind: values
    setting: title
    values: ${JSON.stringify(hostileTexts)}
`),
  );
  put(
    'asked.yaml',
    escaped(`title: ${JSON.stringify(fifth)}
notes: ${JSON.stringify(sixth)}
engine: press.yaml
vary:
  - kind: values
    setting: title
    values: ${JSON.stringify([first, third])}
best:
  aim:
    kind: highest speed
  most_engines: 10
limit:
  setting: leaks.0.clearance
  from: 5 um
  to: 20 um
${tenOdds}`),
  );
  return folder;
}
