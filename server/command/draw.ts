import { basename, resolve } from "node:path";
import { drawDiagram } from "../../library/documents/diagram/draw-diagram.ts";
import type { View } from "../../library/documents/diagram/drawing.ts";
import { shownColours, shownNumbers } from "../../library/documents/diagram/shown-numbers.ts";
import { numberedWires } from "../evaluate/files/kept-numbers.ts";
import { type AskedRevision, revisionOf } from "../evaluate/git/plan-revision.ts";
import { writeWhole } from "../output/atomic-write.ts";
import { drawingFile, drawingKinds } from "../output/drawing-file.ts";
import { createLayouts, type Layouts } from "../output/layouts.ts";
import type { PageSize } from "../output/page-size.ts";
import { readRevision } from "./asked-revision.ts";
import { askedScenario } from "./asked-scenario.ts";
import { eachCheckedPlan, type OpenedPlan } from "./checked-plans.ts";
import type { Command } from "./command.ts";
import { drawBoards } from "./draw-boards.ts";
import { DrawingTarget } from "./drawing-target.ts";
import type { ExitCode, Host } from "./host.ts";
import { interruptible } from "./interruption.ts";
import { printable } from "./terminal.ts";
import { reportUnreadNumbers } from "./unread-numbers.ts";
import { oneOfWords, UsageError } from "./usage.ts";

/** `loomwright draw`: the diagram or the front views of each plan, on standard output or as files. */
export const draw: Command = {
  name: "draw",
  usage: [
    { words: "[file]", does: "draw the wiring diagram as SVG on standard output" },
    { words: "[file] --view board", does: "draw the front view of a surface with the parts on it, to scale" },
    {
      words: "[file] --view board --template --out PATH",
      does: "write its drilling template in true size, to a file that ends in .pdf, .svg or .dxf",
    },
    {
      words: "[files or folders] --out PATH",
      does: "draw to a file that ends in .svg, .png or .pdf, or a file for each plan into a folder",
    },
  ],
  takes: [
    "view",
    "surface",
    "conductors",
    "template",
    "colours",
    "scenario",
    "out",
    "page",
    "revision",
    "commit",
    "force",
  ],
  run(names, given, outside) {
    const view = oneOfWords("view", given.view, ["wiring", "one-line", "board"]);
    if (view === "board") return drawBoards(names, given, outside);
    for (const option of ["surface", "conductors", "template"] as const)
      if (given[option] !== undefined) throw new UsageError(`--${option} is for --view board.`);
    const target =
      given.out === undefined ? undefined : new DrawingTarget(given.out, outside.cwd, drawingKinds);
    if (given.page !== undefined && target?.kind !== "pdf")
      throw new UsageError("--page is for a PDF: give a file that ends in .pdf with --out.");
    // A PDF without a stated page is a sheet as large as its drawing.
    const page =
      given.page === undefined ? undefined : oneOfWords("page", given.page, ["A4", "Letter", "A3"]);
    const { scenario, colours = false, force = false } = given;
    const revision = readRevision(given);
    const layouts = outside.layouts ?? createLayouts();
    const asked: Asked = { view, colours, target, page, scenario, revision, force, layouts };
    return interruptible(outside, (signal) =>
      eachCheckedPlan(names, outside, (opened) => drawPlan(opened, asked, outside, signal)),
    ).finally(() => layouts.dispose());
  },
};

interface Asked {
  readonly view: View;
  readonly colours: boolean;
  /** Undefined: standard output. */
  readonly target: DrawingTarget | undefined;
  readonly page: PageSize | undefined;
  readonly scenario: string | undefined;
  readonly revision: AskedRevision;
  readonly force: boolean;
  readonly layouts: Layouts;
}

async function drawPlan(
  opened: OpenedPlan,
  { view, colours, target, page, scenario: name, revision: wanted, force, layouts }: Asked,
  outside: Host,
  signal: AbortSignal,
): Promise<ExitCode> {
  const { plan, file, workspace, place, of } = opened;
  if (target === undefined && of > 1)
    throw new UsageError(
      `standard output takes one drawing, and there are ${of} plans: name one plan, or give a folder with --out.`,
    );
  const say = (why: string): ExitCode => {
    outside.err(`loomwright: ${printable(`${file}: ${why}`)}\n`);
    return 2;
  };
  const asked = askedScenario(plan.judgement, name);
  if ("why" in asked) return say(`${asked.why}.`);
  const stated = await revisionOf(wanted, plan, workspace);
  if ("why" in stated) return say(`${stated.why}.`);
  const { numbered, kept } = numberedWires(plan, workspace);
  reportUnreadNumbers(plan, kept, outside);
  const outcome = await drawDiagram(
    plan.judgement,
    {
      ...{ view, medium: "paper", title: basename(file), ...stated },
      ...(of > 1 ? { sheet: { number: place, of } } : {}),
      numbers: shownNumbers(numbered),
      ...(colours ? { colours: shownColours(numbered) } : {}),
      ...(asked.scenario === undefined ? {} : { scenario: asked.scenario }),
    },
    (graph) => layouts.layOut(graph),
  );
  signal.throwIfAborted();
  if (!outcome.drawn) return say(outcome.why);
  const { drawing } = outcome;
  if (!target) {
    outside.out(drawing.svg);
    return 0;
  }
  const path = await target.pathFor(opened, view);
  if (typeof path !== "string") return say(`no drawing was written: ${path.path} ${path.why}.`);
  const { bytes, missing } = await drawingFile(drawing, target.kind, page);
  const written = await writeWhole(resolve(outside.cwd, path), bytes, { force, signal });
  if (!written.written) return say(`no drawing was written: ${path} ${written.why}.`);
  if (missing.length > 0)
    outside.err(
      `loomwright: ${printable(path)}: drawn as empty boxes, because the typeface lacks them: ${printable(missing.join(" "))}\n`,
    );
  outside.out(`${printable(path)}: the ${viewWords[view]} of ${printable(file)}\n`);
  return 0;
}

const viewWords: Readonly<Record<View, string>> = {
  "one-line": "one-line diagram",
  wiring: "wiring diagram",
};
