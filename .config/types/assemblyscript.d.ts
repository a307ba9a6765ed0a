/** As much of the compiler to WebAssembly as is used here; its own types change those of the language. */
interface CompilerFiles {
  readFile(name: string): string | null;
  writeFile(name: string, contents: Uint8Array | string): void;
  listFiles(): readonly string[];
}

interface Compiled {
  readonly error: Error | null;
  readonly stderr: { toString(): string };
}

declare const asc: {
  main(words: readonly string[], files: CompilerFiles): Promise<Compiled>;
};

export default asc;
