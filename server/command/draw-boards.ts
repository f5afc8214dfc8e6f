import { basename, resolve } from "node:path";
import { shownNumbers } from "../../library/documents/diagram/shown-numbers.ts";
import { drawFrontViews } from "../../library/documents/front-view/draw-front-view.ts";
import type { FrontView } from "../../library/documents/front-view/front-view.ts";
import { displayName } from "../../library/model/display-name.ts";
import { numberedWires } from "../evaluate/files/kept-numbers.ts";
import { type AskedRevision, revisionOf } from "../evaluate/git/plan-revision.ts";
import { writeWhole } from "../output/atomic-write.ts";
import { type DrawingFile, type DrawingKind, drawingFile } from "../output/drawing-file.ts";
import type { PageSize } from "../output/page-size.ts";
import type { OpenedPlan } from "./checked-plans.ts";
import type { DrawingTarget } from "./drawing-target.ts";
import type { ExitCode, Host } from "./host.ts";
import { printable } from "./terminal.ts";
import { reportUnreadNumbers } from "./unread-numbers.ts";

export interface AskedBoards {
  /** The name of the only surface; undefined: all of them. */
  readonly surface: string | undefined;
  readonly conductors: boolean;
  /** Undefined: standard output. */
  readonly target: DrawingTarget | undefined;
  readonly page: PageSize | undefined;
  readonly revision: AskedRevision;
  readonly force: boolean;
}

/**
 * The front views of a plan's surfaces: a page each in a PDF, a file each in a folder. Standard output, an SVG and a PNG hold one: a
 * sheet is hung where its surface is.
 */
export async function drawBoards(
  opened: OpenedPlan,
  { surface, conductors, target, page, revision: wanted, force }: AskedBoards,
  outside: Host,
  signal: AbortSignal,
): Promise<ExitCode> {
  const { plan, file, workspace } = opened;
  const say = (why: string): ExitCode => {
    outside.err(`loomwright: ${printable(`${file}: ${why}`)}\n`);
    return 2;
  };
  const stated = await revisionOf(wanted, plan, workspace);
  if ("why" in stated) return say(`${stated.why}.`);
  const { numbered, kept } = numberedWires(plan, workspace);
  reportUnreadNumbers(plan, kept, outside);
  const all = drawFrontViews(plan.judgement, {
    ...{ medium: "paper", title: basename(file), ...stated },
    ...{ numbers: shownNumbers(numbered), conductors },
  });
  if (all.length === 0)
    return say("the plan has no surface: describe a board with surface(), and place parts on it with at.");
  const views =
    surface === undefined ? all : all.filter(({ surfaceName }) => surfaceName === displayName(surface));
  const names = all.map(({ surfaceName }) => `"${surfaceName}"`).join(", ");
  if (views.length === 0) return say(`the plan has no surface called "${surface}". It has ${names}.`);
  const [first, another] = views;
  if (!target) {
    if (another || opened.of > 1)
      return say(
        `standard output takes one drawing: name a surface with --surface, ${names}, or give --out.`,
      );
    outside.out(first!.svg);
    return 0;
  }
  const sheets = target.toFile && target.kind === "pdf" ? [views] : views.map((view) => [view]);
  if (target.toFile && sheets.length > 1)
    return say(
      `an SVG or PNG holds one surface: name it with --surface, ${names}, or give a .pdf or a folder with --out.`,
    );
  for (const sheet of sheets) {
    signal.throwIfAborted();
    const path = await target.pathFor(opened, `board-${sheet[0]!.surface + 1}`);
    if (typeof path !== "string") return say(`no drawing was written: ${path.path} ${path.why}.`);
    const { bytes, missing } = await boardsFile(sheet, target.kind, page);
    const written = await writeWhole(resolve(outside.cwd, path), bytes, { force, signal });
    if (!written.written) return say(`no drawing was written: ${path} ${written.why}.`);
    if (missing.length > 0)
      outside.err(
        `loomwright: ${printable(path)}: drawn as empty boxes, because the typeface lacks them: ${printable(missing.join(" "))}\n`,
      );
    const drawn = sheet.map(({ surfaceName }) => surfaceName).join(", ");
    outside.out(`${printable(path)}: the front view of ${printable(drawn)} in ${printable(file)}\n`);
  }
  return 0;
}

/** Several views only as a PDF. */
async function boardsFile(
  views: readonly FrontView[],
  kind: DrawingKind,
  page: PageSize | undefined,
): Promise<DrawingFile> {
  const [view, another] = views;
  if (!view) throw new Error("There is no view to write.");
  if (!another) return drawingFile(view, kind, page);
  const { drawingsPdf } = await import("../output/paper.ts");
  return drawingsPdf(views, { title: view.title.replace(/, front view of .*$/, ", front views"), page });
}
