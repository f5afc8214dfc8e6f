import { fileURLToPath } from "node:url";
import ts from "typescript";

/**
 * The TypeScript compiler over one small plan at a time, as a builder's editor runs it: strict, with the functions of a plan
 * imported from "loomwright". Files other than the plan are read and parsed once for all plans.
 */
export interface PlanCompiler {
  /** The compiler's diagnostics of a plan, syntax and types. */
  diagnostics(plan: string): readonly ts.Diagnostic[];
  /**
   * The same for each of many plans, as files of one program: the library's types are checked once and not once for each plan.
   */
  diagnosticsOfEach(plans: readonly string[]): readonly (readonly ts.Diagnostic[])[];
  /** Types that the compiler had to instantiate to check a plan: its work, counted without a clock. */
  instantiations(plan: string): number;
  /** The editor's proposals at the sign `|` in a plan, in the order of display. */
  completions(planWithCursor: string): readonly ts.CompletionEntry[];
  /** The documentation that the editor shows for the property that ends before the sign `|`. */
  hover(planWithCursor: string): string;
}

const house = fileURLToPath(new URL("../..", import.meta.url));
const planFile = `${house}tests/types/a-plan.ts`;

export function planCompiler(extraOptions: ts.CompilerOptions = {}): PlanCompiler {
  const options: ts.CompilerOptions = {
    strict: true,
    noEmit: true,
    target: ts.ScriptTarget.ES2022,
    lib: ["lib.es2022.d.ts"],
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    moduleDetection: ts.ModuleDetectionKind.Force,
    allowImportingTsExtensions: true,
    types: [],
    skipLibCheck: true,
    paths: { loomwright: [`${house}library/plan/index.ts`] },
    ...extraOptions,
  };
  let plan = "";
  let version = 0;
  let manyPlans: ReadonlyMap<string, string> = new Map();
  const host = ts.createCompilerHost(options, true);
  const { getSourceFile, fileExists } = host;
  const parsed = new Map<string, ts.SourceFile | undefined>();
  const textOf = (file: string) => (file === planFile ? plan : manyPlans.get(file));
  host.fileExists = (file) => textOf(file) !== undefined || fileExists(file);
  host.getSourceFile = (file, languageVersion) => {
    const text = textOf(file);
    if (text !== undefined) return ts.createSourceFile(file, text, languageVersion, true);
    if (!parsed.has(file)) parsed.set(file, getSourceFile(file, languageVersion));
    return parsed.get(file);
  };
  const programOf = (text: string) => {
    plan = text;
    return ts.createProgram([planFile], options, host);
  };
  const service = ts.createLanguageService({
    getCompilationSettings: () => options,
    getScriptFileNames: () => [planFile],
    getScriptVersion: (file) => (file === planFile ? String(version) : "0"),
    getScriptSnapshot: (file) => {
      const text = file === planFile ? plan : ts.sys.readFile(file);
      return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text);
    },
    getCurrentDirectory: () => house,
    getDefaultLibFileName: ts.getDefaultLibFilePath,
    fileExists: (file) => file === planFile || ts.sys.fileExists(file),
    readFile: ts.sys.readFile,
  });
  const open = (planWithCursor: string) => {
    const cursor = planWithCursor.indexOf("|");
    if (cursor < 0) throw new Error("the plan has no cursor sign |");
    plan = planWithCursor.slice(0, cursor) + planWithCursor.slice(cursor + 1);
    version++;
    return cursor;
  };
  const diagnosticsIn = (program: ts.Program, name: string) => {
    const file = program.getSourceFile(name);
    if (!file) throw new Error(`${name} is not in the program`);
    return [...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file)];
  };
  return {
    diagnostics: (text) => diagnosticsIn(programOf(text), planFile),
    diagnosticsOfEach(texts) {
      manyPlans = new Map(texts.map((text, index) => [planFile.replace(".ts", `-${index}.ts`), text]));
      const names = [...manyPlans.keys()];
      const program = ts.createProgram(names, options, host);
      return names.map((name) => diagnosticsIn(program, name));
    },
    instantiations(text) {
      const program = programOf(text);
      program.getSemanticDiagnostics(program.getSourceFile(planFile));
      return program.getInstantiationCount();
    },
    completions(planWithCursor) {
      const cursor = open(planWithCursor);
      const entries = service.getCompletionsAtPosition(planFile, cursor, {})?.entries ?? [];
      return [...entries].sort((a, b) => (a.sortText < b.sortText ? -1 : a.sortText > b.sortText ? 1 : 0));
    },
    hover(planWithCursor) {
      const cursor = open(planWithCursor);
      const info = service.getQuickInfoAtPosition(planFile, cursor - 1);
      return ts.displayPartsToString(info?.documentation);
    },
  };
}
