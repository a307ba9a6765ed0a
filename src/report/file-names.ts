/** What the files of one report are called; the page names its neighbours. */
export const reportFileNames = {
  page: 'report.html',
  cycle: 'cycle.csv',
  startUp: 'start-up.csv',
  summary: 'summary.json',
  supply: 'supply.csv',
  supplySummary: 'supply.json',
} as const;
