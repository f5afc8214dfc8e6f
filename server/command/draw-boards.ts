import { basename, resolve } from "node:path";
import { shownNumbers } from "../../library/documents/diagram/shown-numbers.ts";
import { drawFrontViews, drawTemplates } from "../../library/documents/front-view/draw-front-view.ts";
import { displayName } from "../../library/model/display-name.ts";
import { numberedWires } from "../evaluate/files/kept-numbers.ts";
import { revisionOf } from "../evaluate/git/plan-revision.ts";
import { surfacesLeftOut } from "../evaluate/surfaces-left-out.ts";
import { writeWhole } from "../output/atomic-write.ts";
import { frontViewsFile, type TemplateKind, templateKinds, templatesFile } from "../output/board-files.ts";
import { type DrawingFile, type DrawingKind, drawingKinds } from "../output/drawing-file.ts";
import type { PageSize } from "../output/page-size.ts";
import { readRevision } from "./asked-revision.ts";
import { eachCheckedPlan, type OpenedPlan } from "./checked-plans.ts";
import { DrawingTarget } from "./drawing-target.ts";
import type { ExitCode, Host } from "./host.ts";
import { interruptible } from "./interruption.ts";
import type { GivenOptions, OptionName } from "./options.ts";
import { printable } from "./terminal.ts";
import { reportUnreadNumbers } from "./unread-numbers.ts";
import { oneOfWords, UsageError } from "./usage.ts";

/**
 * The front views of a plan's surfaces, or their templates in true size: a sheet or more for each in a PDF, a file for each in a folder.
 * Standard output and any other file hold one: a sheet is hung where its surface is.
 */
export function drawBoards(names: readonly string[], given: GivenOptions, outside: Host): Promise<ExitCode> {
  const refused: readonly OptionName[] = given.template
    ? ["colours", "scenario", "conductors", "revision", "commit"]
    : ["colours", "scenario"];
  for (const option of refused)
    if (given[option] !== undefined)
      throw new UsageError(`--${option} is not for ${given.template ? "--template" : "--view board"}.`);
  const make = given.template ? templates(given, outside) : frontViews(given, outside);
  return interruptible(outside, (signal) =>
    eachCheckedPlan(names, outside, (opened) => make(opened, signal)),
  );
}

type Make = (opened: OpenedPlan, signal: AbortSignal) => Promise<ExitCode>;

function frontViews(given: GivenOptions, outside: Host): Make {
  const target =
    given.out === undefined ? undefined : new DrawingTarget(given.out, outside.cwd, drawingKinds);
  const page = pageOf(given, target);
  const { surface, conductors = false, force = false } = given;
  const wanted = readRevision(given);
  return async (opened, signal) => {
    const { plan, file, workspace } = opened;
    const stated = await revisionOf(wanted, plan, workspace);
    if ("why" in stated) return refusal(opened, outside, `${stated.why}.`);
    const { numbered, kept } = numberedWires(plan, workspace);
    reportUnreadNumbers(plan, kept, outside);
    const all = drawFrontViews(plan.judgement, {
      ...{ medium: "paper", title: basename(file), ...stated },
      ...{ numbers: shownNumbers(numbered), conductors },
    });
    const chosen = chosenOf(all, surface, reportLeftOut(opened, outside));
    if ("why" in chosen) return refusal(opened, outside, chosen.why);
    if (target)
      return writeBoards(opened, chosen.views, target, {
        ...{ kind: "board", words: "front view", force, outside, signal },
        contentOf: (views) => frontViewsFile(views, target.kind, page),
      });
    const [first, another] = chosen.views;
    if (another || opened.of > 1)
      return refusal(
        opened,
        outside,
        `standard output takes one drawing: name a surface with --surface, ${namesOf(all)}, or give --out.`,
      );
    outside.out(first!.svg);
    return 0;
  };
}

function templates(given: GivenOptions, outside: Host): Make {
  if (given.out === undefined)
    throw new UsageError("--template needs --out, with a file that ends in .pdf, .svg or .dxf, or a folder.");
  const target = new DrawingTarget<TemplateKind>(given.out, outside.cwd, templateKinds);
  const page = pageOf(given, target) ?? "A4";
  const { surface, force = false } = given;
  return async (opened, signal) => {
    const all = drawTemplates(opened.plan.judgement, basename(opened.file));
    const chosen = chosenOf(all, surface, reportLeftOut(opened, outside));
    if ("why" in chosen) return refusal(opened, outside, chosen.why);
    return writeBoards(opened, chosen.views, target, {
      ...{ kind: "template", words: "drilling template", force, outside, signal },
      contentOf: (views) => templatesFile(views, target.kind, page),
    });
  };
}

/** Undefined: a sheet as large as its drawing. */
function pageOf(
  { page }: GivenOptions,
  target: { readonly kind: DrawingKind | TemplateKind } | undefined,
): PageSize | undefined {
  if (page === undefined) return undefined;
  if (target?.kind !== "pdf")
    throw new UsageError("--page is for a PDF: give a file that ends in .pdf with --out.");
  return oneOfWords<PageSize>("page", page, ["A4", "Letter", "A3"]);
}

interface OfSurface {
  /** Index in the surfaces of the layout. */
  readonly surface: number;
  readonly surfaceName: string;
}

function namesOf(all: readonly OfSurface[]): string {
  return all.map(({ surfaceName }) => `"${surfaceName}"`).join(", ");
}

function chosenOf<View extends OfSurface>(
  all: readonly View[],
  surface: string | undefined,
  leftOut: readonly string[],
): { readonly views: readonly [View, ...View[]] } | { readonly why: string } {
  if (leftOut.some((name) => (surface === undefined ? all.length === 0 : name === displayName(surface))))
    return { why: "no surface that was asked for could be read." };
  if (all.length === 0)
    return {
      why: "the plan has no surface: describe a board with surface(), and place parts on it with at.",
    };
  const [first, ...others] =
    surface === undefined ? all : all.filter(({ surfaceName }) => surfaceName === displayName(surface));
  if (!first) return { why: `the plan has no surface called "${surface}". It has ${namesOf(all)}.` };
  return { views: [first, ...others] };
}

/** A surface that was not read is named, whether or not others are drawn. */
function reportLeftOut({ plan, file }: OpenedPlan, outside: Host): readonly string[] {
  const leftOut = surfacesLeftOut(plan);
  for (const name of leftOut)
    outside.err(
      `loomwright: ${printable(`${file}: the surface ${name} has a mistake, and is not drawn: see loomwright check.`)}\n`,
    );
  return leftOut;
}

interface Writing<View> {
  readonly kind: "board" | "template";
  readonly words: string;
  readonly force: boolean;
  readonly outside: Host;
  readonly signal: AbortSignal;
  contentOf(views: readonly [View, ...View[]]): Promise<DrawingFile | { readonly why: string }>;
}

async function writeBoards<View extends OfSurface>(
  opened: OpenedPlan,
  views: readonly [View, ...View[]],
  target: DrawingTarget<DrawingKind | TemplateKind>,
  { kind, words, force, outside, signal, contentOf }: Writing<View>,
): Promise<ExitCode> {
  const say = (why: string) => refusal(opened, outside, why);
  const inOne = target.toFile && target.kind === "pdf";
  if (target.toFile && !inOne && views.length > 1)
    return say(
      `only a PDF holds several surfaces: name one with --surface, ${namesOf(views)}, or give a .pdf or a folder with --out.`,
    );
  const files = inOne ? [views] : views.map((view) => [view] as const);
  for (const sheets of files) {
    signal.throwIfAborted();
    const path = await target.pathFor(opened, `${kind}-${sheets[0].surface + 1}`);
    if (typeof path !== "string") return say(`no ${words} was written: ${path.path} ${path.why}.`);
    const content = await contentOf(sheets);
    if ("why" in content) return say(`no ${words} was written: ${content.why}.`);
    const { bytes, missing } = content;
    const written = await writeWhole(resolve(outside.cwd, path), bytes, { force, signal });
    if (!written.written) return say(`no ${words} was written: ${path} ${written.why}.`);
    if (missing.length > 0)
      outside.err(
        `loomwright: ${printable(path)}: drawn as empty boxes, because the typeface lacks them: ${printable(missing.join(" "))}\n`,
      );
    const names = sheets.map(({ surfaceName }) => surfaceName).join(", ");
    outside.out(`${printable(path)}: the ${words} of ${printable(names)} in ${printable(opened.file)}\n`);
  }
  return 0;
}

function refusal({ file }: OpenedPlan, outside: Host, why: string): ExitCode {
  outside.err(`loomwright: ${printable(`${file}: ${why}`)}\n`);
  return 2;
}
