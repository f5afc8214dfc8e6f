import type { ImportLine } from "./import-lines.ts";

/** The imports of one file's text. They depend on the text alone, so they can be stored with a digest of it. */
export interface FileImports {
  /** The file is half typed, or refused; its imports are unknown. */
  readonly broken: boolean;
  /** Reading exceeded its time limit. It may succeed another time, or with more time: do not store this result. */
  readonly outOfTime: boolean;
  readonly lines: readonly AskedImport[];
  /** It loads the library by a call, `require("loomwright")` or `import("loomwright")`, which is not run. */
  readonly callsForLibrary: boolean;
}

type AskedImport = Pick<ImportLine, "specifier" | "typesOnly" | "typesDeclared">;

/** True if an import shows that a file is part of a plan. A plan that does not call its imported `circuit` yet is already one. */
export function isPlansOwn({ specifier, typesOnly, typesDeclared }: AskedImport): boolean {
  return !(specifier === "loomwright" ? typesDeclared : typesOnly);
}
