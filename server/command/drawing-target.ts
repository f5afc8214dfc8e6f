import { basename, join, resolve } from "node:path";
import type { View } from "../../library/documents/diagram/drawing.ts";
import { makeNamedFolder } from "../output/atomic-write.ts";
import type { DrawingKind } from "../output/drawing-file.ts";
import { PlanFileNames } from "../output/plan-file-names.ts";
import type { OpenedPlan } from "./checked-plans.ts";
import { oneOf, UsageError } from "./usage.ts";

/** The destination of drawings: the named file, or the named folder with an SVG for each. */
export class DrawingTarget<Kind extends string = DrawingKind> {
  readonly kind: Kind;
  /** It names a file, not a folder. */
  readonly toFile: boolean;
  readonly #names = new PlanFileNames();

  /** @param kinds The endings that a named file may have; the first is that of the files in a folder. */
  constructor(
    private readonly out: string,
    private readonly cwd: string,
    kinds: readonly [Kind, ...Kind[]],
  ) {
    if (out === "") throw new UsageError("--out takes the name of a file or a folder.");
    const ending = /[^.]\.([A-Za-z0-9]{1,5})$/.exec(basename(out))?.[1]?.toLowerCase();
    const kind = kinds.find((one) => one === ending);
    if (ending !== undefined && kind === undefined)
      throw new UsageError(
        `--out takes a file that ends in ${oneOf(kinds.map((one) => `.${one}`))}, or a folder, not '${out}'.`,
      );
    this.kind = kind ?? kinds[0];
    this.toFile = kind !== undefined;
  }

  /** Relative to where the command runs; or the reason why there is none. */
  async pathFor(
    { file, of }: Pick<OpenedPlan, "file" | "of">,
    view: View | "energy" | `${"board" | "template"}-${number}`,
  ): Promise<string | { readonly path: string; readonly why: string }> {
    if (this.toFile) {
      if (of === 1) return this.out;
      throw new UsageError(
        `--out names one file, and there are ${of} plans: name one plan, or a folder with --out.`,
      );
    }
    const folder = await makeNamedFolder(resolve(this.cwd, this.out));
    if (!folder.written) return { path: this.out, why: folder.why };
    const name = this.#names.nameFor(file, `.${view}.${this.kind}`);
    return join(this.out, name);
  }
}
