/** What is seen and heard of an engine that will not run. */
export const symptoms = {
  'hisses at rest': 'Air escapes while the engine stands under pressure.',
  'moves and stops': 'It moves off and stops, always near the same angle.',
  'runs then dies': 'It starts and runs, and dies after seconds or minutes.',
  'runs only fast': 'It keeps running once it is fast, and will not run slowly or pull away.',
  'kicks back': 'It jerks against its running direction when started.',
} as const;

/** One of them. */
export type Symptom = keyof typeof symptoms;

/** In the order of the help. */
export const symptomNames = Object.keys(symptoms) as Symptom[];
