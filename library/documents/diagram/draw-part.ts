import type { Box } from "./drawing.ts";
import { drawMark, type MarkKind, worstOf } from "./finding-mark.ts";
import { type PlacedNode, verticalExtent } from "./graph.ts";
import type { NodeGeometry } from "./node-geometry.ts";
import type { SvgWriter } from "./svg-writer.ts";
import { type Lead, leadY } from "./symbols/part-symbol.ts";
import { symbols } from "./symbols/symbols.ts";
import { cutToWidth } from "./text-measure.ts";

/** A part at its place: its symbol, its gathered leads, its words and its mark. */
export function drawPart(pen: SvgWriter, anatomy: NodeGeometry, placed: PlacedNode): string {
  const { part, mark, words } = anatomy;
  const symbol = symbols[part.symbol];
  const box = bodyBox(anatomy, placed);
  const landings = anatomy.rows.map(
    ({ terminal, side }, row): Lead => ({ terminal, side, y: placed.rowY[row]! }),
  );
  const gathered = symbol.leads === "gathered" ? gather(pen, box, landings) : { leads: landings, drawn: "" };
  const kind = worstOf(part.found);
  return pen.group(
    {
      classes: ["loomwright-part", ...foundClass(kind)],
      id: part.id,
      title: part.name,
      description: part.description,
    },
    symbol.draw(pen, box, gathered.leads),
    gathered.drawn,
    labelsInside(pen, anatomy, box, landings),
    ...words.map(({ x, y, text, anchor, bold }) =>
      pen.text({ x: placed.x + x, y: placed.y + y }, text, {
        anchor,
        weight: bold ? "bold" : "regular",
        faint: !bold,
      }),
    ),
    kind ? drawMark(pen, kind, { x: placed.x + mark.x, y: placed.y + mark.y }) : "",
  );
}

/** Position of the symbol on the sheet. */
export function bodyBox({ body }: NodeGeometry, { x, y }: PlacedNode): Box {
  return { x: x + body.x, y: y + body.y, width: body.width, height: body.height };
}

export function foundClass(kind: MarkKind | undefined): readonly string[] {
  return kind ? [`loomwright-${kind}`] : [];
}

/** Several lines of one terminal on one side meet at the edge of the body, with a dot where each joins. */
function gather(pen: SvgWriter, box: Box, landings: readonly Lead[]) {
  const leads: Lead[] = [];
  const drawn: string[] = [];
  for (const side of ["west", "east"] as const) {
    const here = landings.filter((landing) => landing.side === side);
    for (const terminal of new Set(here.map((landing) => landing.terminal))) {
      const own = here.filter((landing) => landing.terminal === terminal);
      const ys = own.map(({ y }) => y);
      const y = leadY(here, terminal)!;
      leads.push({ terminal, side, y });
      if (ys.length === 1) continue;
      const { top, bottom } = verticalExtent(own);
      const x = side === "west" ? box.x : box.x + box.width;
      drawn.push(
        pen.line([
          { x, y: top },
          { x, y: bottom },
        ]),
      );
      for (const at of new Set([...ys, y])) drawn.push(pen.circle({ x, y: at }, 2.4, "filled"));
    }
  }
  return { leads, drawn: drawn.join("") };
}

function labelsInside(pen: SvgWriter, { part }: NodeGeometry, box: Box, landings: readonly Lead[]): string {
  return part.terminals
    .filter(({ label }) => label !== "")
    .flatMap(({ name, label }) =>
      (["west", "east"] as const).map((side) => {
        const y = leadY(
          landings.filter((landing) => landing.side === side),
          name,
        );
        if (y === undefined) return "";
        return pen.text(
          { x: side === "west" ? box.x + 4 : box.x + box.width - 4, y: y + 3 },
          cutToWidth(label, 80, insidePx),
          { sizePx: insidePx, anchor: side === "west" ? "start" : "end" },
        );
      }),
    )
    .join("");
}

const insidePx = 9;
