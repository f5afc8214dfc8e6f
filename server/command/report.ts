import { basename, join, resolve } from "node:path";
import { type ReportEdition, reportEditions } from "../../library/documents/report/chapter.ts";
import { type AskedRevision, revisionOf } from "../evaluate/git/plan-revision.ts";
import { makeNamedFolder, writeWhole } from "../output/atomic-write.ts";
import { createLayouts, type Layouts } from "../output/layouts.ts";
import type { PageSize } from "../output/page-size.ts";
import { PlanFileNames } from "../output/plan-file-names.ts";
import { planReport, reportKind } from "../output/plan-report.ts";
import { readRevision } from "./asked-revision.ts";
import { eachCheckedPlan, type OpenedPlan } from "./checked-plans.ts";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";
import { interruptible } from "./interruption.ts";
import { printable } from "./terminal.ts";
import { oneOfWords, UsageError } from "./usage.ts";

/** `loomwright report`: everything about each plan in one file, to hand out. */
export const report: Command = {
  name: "report",
  usage: [
    {
      words: "[files or folders]",
      does: "everything about a plan in one file to hand out: a page of HTML, or with --out FILE.pdf a PDF",
    },
  ],
  takes: ["edition", "out", "page", "revision", "commit", "force"],
  run(names, given, outside) {
    const edition = oneOfWords("edition", given.edition, reportEditions);
    const page = oneOfWords("page", given.page, ["A4", "Letter", "A3"]);
    if (given.out === "") throw new UsageError("--out takes the name of a file or a folder.");
    const target = new Target(given.out, outside.cwd, edition);
    if (given.page !== undefined && target.kind === "html")
      throw new UsageError("--page is for a PDF: give a file that ends in .pdf with --out.");
    const layouts = outside.layouts ?? createLayouts();
    const revision = readRevision(given);
    const asked = { edition, revision, target, page, force: given.force ?? false, layouts };
    return interruptible(outside, (signal) =>
      eachCheckedPlan(names, outside, (opened) => reportPlan(opened, { ...asked, signal }, outside)),
    ).finally(() => layouts.dispose());
  },
};

interface Asked {
  readonly revision: AskedRevision;
  readonly edition: ReportEdition;
  readonly target: Target;
  readonly page: PageSize;
  readonly force: boolean;
  readonly layouts: Layouts;
  readonly signal: AbortSignal;
}

async function reportPlan(opened: OpenedPlan, asked: Asked, outside: Host): Promise<ExitCode> {
  const { plan, file, workspace } = opened;
  const { edition, target, page, force, layouts, signal } = asked;
  const name = await target.nameFor(opened);
  const say = (why: string): ExitCode => {
    outside.err(`loomwright: ${printable(why)}\n`);
    return 2;
  };
  if (typeof name !== "string") return say(`${name.path} ${name.why}; no report was written.`);
  const stated = await revisionOf(asked.revision, plan, workspace);
  if ("why" in stated) return say(`${file}: ${stated.why}; no report was written.`);
  showProgress(opened, outside);
  const { bytes, missing } = await planReport({
    plan,
    workspace,
    edition,
    ...stated,
    kind: target.kind,
    page,
    layOut: (graph) => layouts.layOut(graph),
    signal,
  });
  const written = await writeWhole(resolve(outside.cwd, name), bytes, { force, signal });
  clearProgress(outside);
  if (!written.written) return say(`${name} ${written.why}; no report was written.`);
  if (missing.length > 0)
    outside.err(
      `loomwright: ${printable(name)}: drawn as empty boxes, because the typeface lacks them: ${printable(missing.join(" "))}\n`,
    );
  outside.out(`${printable(name)}: the report of ${printable(file)}\n`);
  return 0;
}

/** The destination of reports: a named file, or a file named after each plan, in a folder or where the command runs. */
class Target {
  readonly kind: "html" | "pdf";
  private readonly file: string | undefined;
  private readonly names = new PlanFileNames();

  constructor(
    private readonly out: string | undefined,
    private readonly cwd: string,
    private readonly edition: ReportEdition,
  ) {
    const kind = out === undefined ? undefined : reportKind(out);
    const isFolder = kind === undefined && out !== undefined;
    const ending = isFolder && /[^.]\.[A-Za-z0-9]{1,5}$/.exec(basename(out));
    if (ending)
      throw new UsageError(`--out takes a file that ends in .html or .pdf, or a folder, not '${out}'.`);
    this.kind = kind ?? "html";
    this.file = kind && out;
  }

  /** The path as shown and written, relative to where the command runs; or the reason why there is none. */
  async nameFor({ file, of }: OpenedPlan): Promise<string | { readonly path: string; readonly why: string }> {
    if (this.file !== undefined) {
      if (of > 1)
        throw new UsageError(
          `--out names one file, and there are ${of} plans: name one plan, or a folder with --out.`,
        );
      return this.file;
    }
    if (this.out !== undefined) {
      const folder = await makeNamedFolder(resolve(this.cwd, this.out));
      if (!folder.written) return { path: this.out, why: folder.why };
    }
    const name = this.names.nameFor(file, endings[this.edition]);
    return this.out === undefined ? name : join(this.out, name);
  }
}

const endings: Readonly<Record<ReportEdition, string>> = {
  inspector: ".report.html",
  bench: ".bench.html",
};

function showProgress({ file, place, of }: OpenedPlan, { terminal, err }: Host): void {
  if (!terminal.progress) return;
  err(`\r\u001b[Kwriting the report of ${printable(file)}${of > 1 ? `, ${place} of ${of}` : ""}`);
}

function clearProgress({ terminal, err }: Host): void {
  if (terminal.progress) err("\r\u001b[K");
}
