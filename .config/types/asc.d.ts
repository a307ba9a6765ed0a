/** As much of AssemblyScript's compiler as is used; its own types change those of the language for the whole project. */
interface Files {
  readonly readFile: (name: string) => string | null;
  readonly writeFile: (name: string, contents: Uint8Array | string) => void;
  readonly listFiles: () => string[];
}

interface Outcome {
  readonly error: Error | null;
  readonly stderr: { toString(): string };
}

declare const asc: { main(options: readonly string[], files: Files): Promise<Outcome> };
export default asc;
