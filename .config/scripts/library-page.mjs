/**
 * The reference page of the library: every export of the built package with its words and its declaration, as the
 * compiler reads them from dist/index.d.ts. What has no words of its own is found out by a house test.
 */
import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { projectRoot } from './steps.mjs';

/** @typedef {{ name: string, doc: string, kind: 'function' | 'value' | 'type', text: string }} Entry */

/** @returns {Entry[]} */
export function libraryEntries() {
  const index = join(projectRoot, 'dist/index.d.ts');
  const program = ts.createProgram([index], {
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    target: ts.ScriptTarget.ES2023,
    skipLibCheck: true,
    noLib: true,
    types: [],
  });
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(index);
  const module = source && checker.getSymbolAtLocation(source);
  if (!module) throw new Error(`${index} is not there; build first`);
  return checker.getExportsOfModule(module).map((exported) => {
    const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
    const declarations = symbol.declarations ?? [];
    const [first] = declarations;
    if (!first) throw new Error(`${exported.name} is declared nowhere`);
    return {
      name: exported.name,
      doc: ts.displayPartsToString(symbol.getDocumentationComment(checker)).trim() || openingOf(first),
      kind: kindOf(checker, symbol),
      text: declarations.map(declarationText).join('\n'),
    };
  });
}

/**
 * @param {ts.TypeChecker} checker
 * @param {ts.Symbol} symbol
 * @returns {Entry['kind']}
 */
function kindOf(checker, symbol) {
  if (symbol.flags & ts.SymbolFlags.Function) return 'function';
  if (!(symbol.flags & ts.SymbolFlags.Variable)) return 'type';
  return checker.getTypeOfSymbol(symbol).getCallSignatures().length > 0 ? 'function' : 'value';
}

/**
 * The first paragraph with which its file opens: every file of ours says there what it is about.
 * @param {ts.Declaration} declaration
 */
function openingOf(declaration) {
  const built = relative(join(projectRoot, 'dist'), declaration.getSourceFile().fileName);
  const source = readFileSync(join(projectRoot, 'src', built.replace(/\.d\.ts$/u, '.ts')), 'utf8');
  const [, comment = ''] = /^\/\*\*([\s\S]*?)\*\//u.exec(source) ?? [];
  const text = comment.replace(/^ ?\* ?/gmu, '').trim();
  return (text.split(/\n\s*\n/u)[0] ?? '').replace(/\s+/gu, ' ');
}

/**
 * A declaration without the words above it, which the page shows by themselves; those inside stay.
 * @param {ts.Declaration} declaration
 */
function declarationText(declaration) {
  const statement = ts.isVariableDeclaration(declaration) ? declaration.parent.parent : declaration;
  return statement
    .getText()
    .replace(/^export (?:declare )?/u, '')
    .replaceAll('    ', '  ')
    .trim();
}

const HEAD = `# The library

Generated from the declarations of the package. \`import { … } from 'tickover'\` gives what the command line is made of. Every
function here is pure: files, clock and console belong to you, the same input gives the same output. Values are SI with
absolute pressures and radians unless a name says otherwise at its end (\`speed_rpm\`); the
[conventions](../conventions.md) define the words, the [model](../model.md) names the sources. What a user can put right
comes back as a value with reasons (\`ok: false\`); an exception is a mistake in the program that calls.

\`\`\`ts program
import { problemListing, readScenario, runEngine, verdictOf } from 'tickover';
import { readFileSync } from 'node:fs';

const file = 'scenarios/cider-press.yaml';
const reading = readScenario(readFileSync(file, 'utf8'), file);
if (!reading.ok) throw new Error(problemListing(reading.problems));
const result = runEngine(reading.spec);
const speed_rpm = ((result.settled?.speed ?? NaN) * 30) / Math.PI;
console.log(verdictOf(result).headline);
console.log(Math.round(speed_rpm));
\`\`\`
`;

const headings = { function: 'Functions', value: 'Values', type: 'Types' };

export function libraryPage() {
  const entries = libraryEntries().sort((a, b) => (a.name < b.name ? -1 : 1));
  const sections = /** @type {const} */ (['function', 'value', 'type']).map((kind) =>
    [
      `## ${headings[kind]}\n`,
      ...entries
        .filter((entry) => entry.kind === kind)
        .map(({ name, doc, text }) => {
          return `### ${name}\n\n${doc}\n\n\`\`\`ts\n${text}\n\`\`\`\n`;
        }),
    ].join('\n'),
  );
  return [HEAD, ...sections].join('\n');
}
