/** What the files of a report or a comparison are called; the pages name their neighbours. */
export const reportFileNames = {
  page: 'report.html',
  cycle: 'cycle.csv',
  startUp: 'start-up.csv',
  summary: 'summary.json',
  supply: 'supply.csv',
  supplySummary: 'supply.json',
  torque: 'torque.csv',
  starts: 'starts.csv',
  comparison: 'comparison.html',
  comparedFigures: 'comparison.csv',
  comparedTurns: 'compared-turns.csv',
} as const;

/** And those of one bench test. */
export const benchFileNames = { page: 'bench.html', finding: 'bench.json' } as const;
