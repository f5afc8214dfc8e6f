import type { Judgement } from "../../judge.ts";
import { displayName } from "../../model/display-name.ts";
import type { Box } from "../diagram/drawing.ts";
import { elementIds } from "../diagram/element-ids.ts";
import { drawMark, type MarkKind, markPx, worstOf } from "../diagram/finding-mark.ts";
import { type FindingsByPlace, findingsByPlace } from "../diagram/found-here.ts";
import type { Point } from "../diagram/graph.ts";
import type { FoundHere } from "../diagram/schematic.ts";
import { createPen, type GroupWords, type SvgWriter } from "../diagram/svg-writer.ts";
import type { FrontElement, FrontViewOptions } from "./front-view.ts";
import { LabelPlacer } from "./labels.ts";
import type { TapeUnit } from "./lengths-on-tape.ts";
import { type Scale, scaleOf, trueSize } from "./scale.ts";
import type { SurfaceContent } from "./surface-content.ts";

/** Something that can be pointed at. */
interface Thing {
  readonly kind: FrontElement["kind"];
  readonly name: string;
  readonly record: number;
  /** A further piece that makes its ids unique: the role of a conductor, the end of a channel. */
  readonly role?: string | undefined;
  readonly elementId?: string;
  /** The first sentence of its description; its findings follow. */
  readonly sentence: string;
  readonly box?: Box;
  readonly found: readonly FoundHere[];
}

/** The state of one drawing while it is made: the room that words have taken, the marks in it, and the elements so far. */
export class FrontDrawing {
  readonly pen: SvgWriter;
  readonly unit: TapeUnit;
  /** The surface, px; its top left corner is the origin. */
  readonly board: Box;
  readonly placer: LabelPlacer;
  /** Ask for the conductors first: a part takes all findings of its record that are left. */
  readonly found: FindingsByPlace;
  readonly elements: FrontElement[] = [];
  readonly marks = new Set<MarkKind>();
  readonly #waiting: (readonly [kind: MarkKind, places: readonly Point[], own: readonly Box[]])[] = [];
  readonly #idOf = elementIds();

  constructor(
    readonly plan: Judgement,
    readonly content: SurfaceContent,
    readonly options: FrontViewOptions,
    readonly scale: Scale = scaleOf(content.surface),
  ) {
    const { surface } = content;
    this.pen = createPen(options.medium);
    this.unit = surface.writtenIn;
    this.board = scale.box({ x: 0, y: 0, width: surface.width, height: surface.height });
    this.placer = new LabelPlacer(this.board);
    this.found = findingsByPlace(plan);
  }

  get isTemplate(): boolean {
    return this.scale === trueSize;
  }

  get planName(): string {
    return displayName(this.plan.model.build.name ?? this.options.title ?? "") || "plan without a name";
  }

  /** Width that labels need on the right of the surface. */
  get columnPx(): number {
    const right = this.board.x + this.board.width;
    return this.placer.taken.reduce((most, { x, width }) => Math.max(most, x + width - right), 0);
  }

  /** The bottom of the surface, or of parts and labels beyond it. */
  get lowestPx(): number {
    return this.placer.taken.reduce((most, { y, height }) => Math.max(most, y + height), this.board.height);
  }

  /** A template has no marks: it is drawn on the board, and the findings are in the report. */
  markOf(found: readonly FoundHere[]): MarkKind | undefined {
    if (this.isTemplate) return undefined;
    const kind = worstOf(found);
    if (kind) this.marks.add(kind);
    return kind;
  }

  /**
   * Asks for a mark at the first of some places that is free.
   *
   * @param own The boxes of the thing itself: the mark may be on them.
   */
  mark(found: readonly FoundHere[], places: readonly Point[], own: readonly Box[]): void {
    const kind = this.markOf(found);
    if (kind) this.#waiting.push([kind, places, own]);
  }

  /** The marks, to be drawn over everything else: no line goes through their letters. Ask once all things have taken their room. */
  drawMarks(): string {
    return this.#waiting
      .flatMap(([kind, places, own]) => {
        const at = this.placer.signPlace(places, aroundMark, own);
        return at ? [this.pen.group({ classes: [`loomwright-${kind}`] }, this.#onPaper(kind, at))] : [];
      })
      .join("");
  }

  #onPaper(kind: MarkKind, at: Point): string {
    const { x, y, width, height } = aroundMark(at);
    const across = [
      { x, y: y + height / 2 },
      { x: x + width, y: y + height / 2 },
    ];
    return this.pen.band(across, height + 1, "inside") + drawMark(this.pen, kind, at);
  }

  /** Adds a thing to the elements of the view; returns the attributes of its group. */
  announce({ kind, name, record, role, elementId, sentence, box, found }: Thing): GroupWords {
    const id = this.#idOf(kind === "body" ? "part" : kind, name, role);
    const findings = found.map(({ message }) => message);
    const description = [sentence, ...findings].join(" ");
    const worst = worstOf(found);
    const severity = worst === "accepted" ? undefined : worst;
    this.elements.push({ kind, id, name, record, description, ...(box && { box }), severity, findings });
    return {
      classes: [`loomwright-${kind === "body" ? "part" : kind}`, ...(worst ? [`loomwright-${worst}`] : [])],
      ...{ id, elementId: elementId ?? `${kind}-${record}` },
      data: { [kind]: record, ...(kind !== "conductor" && { surface: this.content.surface.record }) },
      ...{ title: name, description },
    };
  }

  /** A thing with its pieces. */
  draw(thing: Thing, ...pieces: readonly string[]): string {
    return this.pen.group(this.announce(thing), ...pieces);
  }
}

function aroundMark({ x, y }: Point): Box {
  return { x: x - markPx / 2 - 1, y: y - markPx / 2 - 1, width: markPx + 2, height: markPx + 2 };
}
