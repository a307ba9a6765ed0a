/**
 * Who may import whom. Rooms of src stand on floors and look downward only:
 *
 *   0 kinds, quantity, kernel, numerics   1 gas   2 parts   3 model   4 run
 *   5 study, measure, workshop, scenario, verdict, report   6 index.ts   7 cli, page
 *
 * `allow` lists what a room may use at run time, `types` what it may name in types besides that.
 */
/** Sine, power and the like stand in for those of `Math` everywhere. */
const elementary = 'numerics/elementary/';

const rooms = {
  kinds: { allow: [], types: [] },
  quantity: { allow: [elementary], types: ['kinds'] },
  kernel: { allow: [], types: [] },
  numerics: { allow: ['kernel'], types: [] },
  gas: { allow: ['kinds', 'numerics'], types: [] },
  parts: { allow: ['gas', 'kinds', 'numerics'], types: [] },
  model: { allow: ['parts', 'gas', 'kinds', 'quantity', 'numerics', 'kernel'], types: [] },
  run: { allow: ['model', 'parts', 'gas', 'kinds', 'quantity', 'numerics'], types: [] },
  study: { allow: ['run', 'model', 'parts', 'gas', 'kinds', 'quantity', 'numerics'], types: [] },
  measure: { allow: ['run', 'model', 'parts', 'gas', 'kinds', 'quantity', 'numerics'], types: [] },
  workshop: { allow: ['parts', 'kinds', 'quantity', 'numerics'], types: [] },
  scenario: {
    // The description of the whole engine is the registry of registries; those of a study and a bench sheet are such too.
    allow: [
      'kinds',
      'quantity',
      '((gas|parts)/.*registry|parts/engine-description)[.]ts$',
      'measure/(sheet|attempts)-description[.]ts$',
      'study/(study-description|plan|.*registry)[.]ts$',
    ],
    types: ['gas', 'parts', 'model', 'run', 'study', 'measure', 'workshop'],
  },
  verdict: {
    allow: ['quantity', elementary],
    types: ['run', 'study', 'measure', 'workshop', 'model', 'parts', 'kinds'],
  },
  report: {
    allow: ['quantity', 'verdict', elementary],
    types: ['run', 'study', 'measure', 'workshop', 'model', 'parts', 'kinds'],
  },
  cli: { allow: ['index[.]ts$'], types: [] },
  page: { allow: ['index[.]ts$'], types: [] },
};

/** Regular expressions for places inside src; a bare name means that room. */
function inside(places) {
  return places.map((place) => (/^\w+$/.test(place) ? `^src/${place}/` : `^src/${place}`));
}

/** Two rules per room: what it may import at all, and what it may import only as a type. */
function roomRules([room, { allow, types }]) {
  const rule = (name, pathNot, to) => ({
    name: `${room}-${name}`,
    severity: 'error',
    from: { path: `^src/${room}/` },
    to: { path: '^src/', pathNot: inside([room, ...pathNot]), ...to },
  });
  const typesOnly = rule('types-only', allow, { dependencyTypesNot: ['type-only'] });
  typesOnly.to.path = inside(types);
  return [rule('imports', [...allow, ...types]), ...(types.length > 0 ? [typesOnly] : [])];
}

/** One package, one room that may use it. */
function packageRule([name, room]) {
  return {
    name: `${name}-only-in-${room.replaceAll('/', '-')}`,
    severity: 'error',
    from: { path: '^src/', pathNot: `^src/${room}/` },
    to: { path: [`(^|/)node_modules/(@types/)?${name}/`, `^${name}(/|$)`] },
  };
}

const packages = {
  mathjs: 'quantity',
  yaml: 'scenario',
  'csv-parse': 'scenario',
  'ml-levenberg-marquardt': 'numerics',
  'ml-matrix': 'numerics',
  odex: 'numerics',
  '@tarikjabiri/dxf': 'workshop',
  'cli-progress': 'cli',
  'pure-rand': 'study',
  'simple-statistics': 'study',
  yargs: 'cli',
  uplot: 'report/client',
};

module.exports = {
  forbidden: [
    ...Object.entries(rooms).flatMap(roomRules),
    ...Object.entries(packages).map(packageRule),
    {
      name: 'known-rooms',
      comment: 'A new room of src needs a line in the table above.',
      severity: 'error',
      from: { path: `^src/(?!index[.]ts$|(?:${Object.keys(rooms).join('|')})/)` },
      to: {},
    },
    {
      name: 'index-imports',
      severity: 'error',
      from: { path: '^src/index[.]ts$' },
      to: { path: '^src/(cli|page)/' },
    },
    {
      name: 'only-index-re-exports',
      comment: 'What a compiled kernel offers is what its main file exports.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/(index|kernel/main)[.]ts$' },
      to: { dependencyTypes: ['export'] },
    },
    {
      name: 'node-only-in-cli',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/cli/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'client-is-a-bundle',
      comment: 'The browser script is built on its own; the rest of src must not reach into it.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/report/client/' },
      to: { path: '^src/report/client/' },
    },
    {
      name: 'no-tests-in-src',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^(tests|[.]config|dist)/' },
    },
    {
      name: 'no-development-packages',
      severity: 'error',
      from: { path: '^src/' },
      to: { dependencyTypes: ['npm-dev'], dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'kernel-through-its-door',
      comment:
        'The kernel runs compiled: others take what stands where from it, and types, but none of its functions.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/kernel/' },
      to: {
        path: '^src/kernel/',
        pathNot: '^src/kernel/(((step|tangent)-)?header|state-slots|fixed-places|wasm/kernel-bytes)[.]ts$',
        dependencyTypesNot: ['type-only'],
      },
    },
    { name: 'no-cycles', severity: 'error', from: { path: '^src/' }, to: { circular: true } },
    { name: 'no-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    tsPreCompilationDeps: true,
    doNotFollow: { path: '(^|/)node_modules/' },
    // For AssemblyScript alone.
    exclude: { path: '^src/kernel/.*[.]wasm[.]ts$' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
