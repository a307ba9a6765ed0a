/** What the files of one report are called; the page names its neighbours. */
export const reportFileNames = {
  page: 'report.html',
  cycle: 'cycle.csv',
  startUp: 'start-up.csv',
  summary: 'summary.json',
} as const;

/** And those of one bench test. */
export const benchFileNames = { page: 'bench.html', finding: 'bench.json' } as const;
