import type { Template } from "../../library/documents/front-view/draw-front-view.ts";
import type { FrontView } from "../../library/documents/front-view/front-view.ts";
import { templateDxf } from "../../library/documents/front-view/template-dxf.ts";
import { templateSvg } from "../../library/documents/front-view/template-svg.ts";
import { type DrawingFile, type DrawingKind, drawingFile, kindOf } from "./drawing-file.ts";
import type { PageSize } from "./page-size.ts";

/** The first is that of the files in a folder. */
export const templateKinds = ["pdf", "svg", "dxf"] as const;

export type TemplateKind = (typeof templateKinds)[number];

/** The kind of template that a name's ending asks for; undefined for any other. */
export function templateKind(path: string): TemplateKind | undefined {
  return kindOf(path, templateKinds);
}

/** Front views as the content of a file; several only as a PDF, a page each. */
export async function frontViewsFile(
  views: readonly [FrontView, ...FrontView[]],
  kind: DrawingKind,
  page: PageSize | undefined,
): Promise<DrawingFile> {
  const [view, another] = views;
  if (!another) return drawingFile(view, kind, page);
  const { drawingsPdf } = await import("./paper.ts");
  return drawingsPdf(views, { title: `${view.plan}, front views`, page });
}

/** A wall of 4 by 2.5 m on A4 has 230. */
const mostSheets = 300;

/** Templates as the content of a file; several only as a PDF, each on sheets of its own. */
export async function templatesFile(
  templates: readonly [Template, ...Template[]],
  kind: TemplateKind,
  page: PageSize,
): Promise<DrawingFile | { readonly why: string }> {
  const [template] = templates;
  if (kind === "svg") return { bytes: templateSvg(template), missing: [] };
  if (kind === "dxf") return { bytes: templateDxf(template), missing: [] };
  const { countSheets, templatePdf } = await import("./paper.ts");
  const sheets = countSheets(templates, page);
  if (sheets > mostSheets)
    return { why: `it would take ${sheets} sheets of ${page}, and a template has at most ${mostSheets}` };
  return templatePdf(templates, { title: `${template.plan}, drilling templates`, page });
}
