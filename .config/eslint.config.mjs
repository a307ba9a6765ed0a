import { fileURLToPath } from 'node:url';
import js from '@eslint/js';
import { defineConfig, globalIgnores } from 'eslint/config';
import tseslint from 'typescript-eslint';

const root = fileURLToPath(new URL('..', import.meta.url));

const noDefaultExport = {
  selector: 'ExportDefaultDeclaration',
  message: 'Export by name: a name stays the same wherever it is imported.',
};
const noSwitchOnKind = {
  selector: 'SwitchStatement[discriminant.property.name="kind"], SwitchStatement[discriminant.name="kind"]',
  message: 'A kind is known by its descriptor in the registry only; look it up there.',
};

/** Each JavaScript engine rounds these as it likes; those of ours are the same everywhere. */
const ownElementaryFunctions = [
  ...[
    'sin',
    'cos',
    'tan',
    'asin',
    'acos',
    'atan',
    'atan2',
    'sinh',
    'cosh',
    'tanh',
    'asinh',
    'acosh',
    'atanh',
  ],
  ...['exp', 'expm1', 'log', 'log1p', 'log2', 'log10', 'pow', 'cbrt', 'hypot'],
].map((property) => ({
  object: 'Math',
  property,
  message: 'Take the one of src/numerics/elementary: it gives the same bits on every machine.',
}));
const noPowerOperator = {
  selector: 'BinaryExpression[operator="**"], AssignmentExpression[operator="**="]',
  message: 'Take square, cube or pow of src/numerics/elementary: they give the same bits on every machine.',
};

/** Floors 0 to 5: the same input must give the same bytes. */
const core =
  'src/{kinds,quantity,kernel,numerics,gas,parts,model,run,study,measure,workshop,scenario,verdict,report}/**/*.ts';

export default defineConfig(
  // For AssemblyScript alone, and what it makes of them.
  globalIgnores([
    'dist/',
    'coverage/',
    'reports/',
    'node_modules/',
    'src/kernel/*.wasm.ts',
    'src/kernel/wasm/',
  ]),
  js.configs.recommended,
  tseslint.configs.strictTypeChecked,
  tseslint.configs.stylisticTypeChecked,
  {
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    languageOptions: { parserOptions: { project: ['tsconfig.json'], tsconfigRootDir: root } },
    rules: {
      eqeqeq: 'error',
      'no-restricted-syntax': ['error', noDefaultExport],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
    },
  },
  {
    files: ['src/**/*.ts'],
    rules: { 'no-restricted-syntax': ['error', noDefaultExport, noSwitchOnKind] },
  },
  {
    files: ['src/**/*.ts'],
    ignores: ['src/cli/**'],
    rules: { 'no-console': 'error' },
  },
  {
    files: [core],
    ignores: ['src/report/client/**'],
    rules: {
      'no-restricted-globals': ['error', { name: 'Date', message: 'Time of day is handed in.' }],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Random numbers come from a seeded generator.' },
        ...ownElementaryFunctions,
      ],
      'no-restricted-syntax': ['error', noDefaultExport, noSwitchOnKind, noPowerOperator],
    },
  },
  {
    // Reading a typed array at an index the loop has just checked.
    files: ['src/{kernel,numerics,gas,parts,model,run,study,measure,workshop}/**/*.ts', 'tests/**/*.ts'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    // To AssemblyScript `let sum = 0` is a whole number, and stays one.
    files: ['src/kernel/**/*.ts'],
    rules: { '@typescript-eslint/no-inferrable-types': 'off' },
  },
  {
    files: ['.config/**'],
    rules: { 'no-restricted-syntax': 'off' },
  },
  {
    files: ['**/*.{mjs,cjs}'],
    extends: [tseslint.configs.disableTypeChecked],
    languageOptions: {
      globals: {
        console: 'readonly',
        performance: 'readonly',
        process: 'readonly',
        URL: 'readonly',
        module: 'writable',
      },
    },
  },
);
