/** Where the build puts the script of a worker: beside that of the command. */
export const workerScript = new URL('./study-worker.js', import.meta.url);
