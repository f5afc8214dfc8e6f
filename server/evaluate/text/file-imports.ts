import type { ImportLine } from "./import-lines.ts";

/** What the text of one file asks of others. It follows from the text alone, so that it can be kept beside a digest of it. */
export interface FileImports {
  /** The file is half typed, or refused; its imports are unknown. */
  readonly broken: boolean;
  /** Reading it was given up for want of time. Another time, or with more time, it may be read: this is not to be kept. */
  readonly outOfTime: boolean;
  readonly lines: readonly AskedImport[];
  /** It loads the library by a call, `require("loomwright")` or `import("loomwright")`, which is not run. */
  readonly callsForLibrary: boolean;
}

type AskedImport = Pick<ImportLine, "specifier" | "typesOnly" | "typesDeclared">;

/** Whether an import says what a file is a part of. A plan whose `circuit` is not called yet is one already. */
export function isPlansOwn({ specifier, typesOnly, typesDeclared }: AskedImport): boolean {
  return !(specifier === "loomwright" ? typesDeclared : typesOnly);
}
