import type { Judgement } from "../../judge.ts";
import { displayName } from "../../model/display-name.ts";
import { formatExact } from "../../rules/wording/format-number.ts";
import { drawLine, type LineFoot } from "./draw-line.ts";
import { bodyBox, drawPart } from "./draw-part.ts";
import type { DrawingOptions, DrawingOutcome, DrawnElement } from "./drawing.ts";
import { worstOf } from "./finding-mark.ts";
import type { DiagramGraph, GraphEdge, LayOut, PlacedGraph } from "./graph.ts";
import { anatomiesOf, type NodeGeometry } from "./node-geometry.ts";
import { oneLineSchematic } from "./one-line-schematic.ts";
import { readingOrder } from "./reading-order.ts";
import type { LineEnd, Pointed, Schematic } from "./schematic.ts";
import { sheet } from "./sheet.ts";
import { createPen } from "./svg-writer.ts";
import { wiringSchematic } from "./wiring-schematic.ts";

/**
 * Draws a judged plan as SVG, laid out by `layOut`. If the plan has nothing to draw, the picture states that. The same plan and
 * options give the same bytes.
 */
export async function drawDiagram(
  plan: Judgement,
  options: DrawingOptions,
  layOut: LayOut,
): Promise<DrawingOutcome> {
  const conductors = conductorsIn(plan);
  if (conductors > mostConductors) {
    const [has, most] = [formatExact(conductors), formatExact(mostConductors)];
    return { drawn: false, why: `The plan has ${has} conductors, and a drawing shows at most ${most}.` };
  }
  const wiring = wiringSchematic(plan, options.scenario, options);
  const schematic = inReadingOrder(options.view === "wiring" ? wiring : oneLineSchematic(wiring));
  const anatomies = anatomiesOf(schematic, options.view);
  const laidOut = await layOut(graphOf(schematic, anatomies));
  if (!laidOut.laidOut) {
    const { why, superseded } = laidOut;
    return { drawn: false, why, ...(superseded ? { superseded } : {}) };
  }
  const { drawn, elements } = diagram(schematic, anatomies, laidOut.placed, options);
  const scenario =
    options.scenario === undefined ? undefined : plan.network?.network.scenarios[options.scenario];
  const { notices } = schematic;
  const whole = sheet(createPen(options.medium), {
    ...{ drawn, elements, schematic },
    view: options.view,
    inColours: options.colours !== undefined,
    medium: options.medium,
    title: displayName(plan.model.build.name ?? options.title ?? "") || "plan without a name",
    scenario: scenario && displayName(scenario.name),
    revision: options.revision === undefined ? undefined : displayName(options.revision),
    sheetNumber: options.sheet,
    diagram: laidOut.placed,
  });
  return { drawn: true, drawing: { ...whole, notices } };
}

/** A plan with an endless loop makes as many circuits as it may. No sheet shows them, and their layout never ends. */
const mostConductors = 2_000;

function conductorsIn({ circuits, network }: Judgement): number {
  return (
    2 * circuits.filter(({ circuit }) => !circuit.inNetwork).length +
    (network?.network.conductors.length ?? 0)
  );
}

function inReadingOrder(schematic: Schematic): Schematic {
  const order = readingOrder(schematic);
  const place = new Map(order.map((part, index) => [part, index]));
  const moved = (end: LineEnd): LineEnd => ({ ...end, part: place.get(end.part)! });
  return {
    ...schematic,
    parts: order.map((part) => schematic.parts[part]!),
    lines: schematic.lines.map((line) => ({ ...line, from: moved(line.from), to: moved(line.to) })),
  };
}

function graphOf(schematic: Schematic, anatomies: readonly NodeGeometry[]): DiagramGraph {
  return {
    nodes: anatomies.map(({ node }) => node),
    edges: schematic.lines.map((_, index): GraphEdge => {
      const [from, to] = portsOf(schematic, anatomies, index);
      return { from, to };
    }),
  };
}

/** Node and row of both ends, in the direction of reading. */
function portsOf(schematic: Schematic, anatomies: readonly NodeGeometry[], line: number) {
  const { from, to, forward } = schematic.lines[line]!;
  const port = (which: "from" | "to", node: number) =>
    [node, anatomies[node]!.rows.findIndex((row) => row.line === line && row.which === which)] as const;
  const ends = [port("from", from.part), port("to", to.part)] as const;
  return forward ? ends : ([ends[1], ends[0]] as const);
}

function diagram(
  schematic: Schematic,
  anatomies: readonly NodeGeometry[],
  placed: PlacedGraph,
  { medium }: DrawingOptions,
): { readonly drawn: string; readonly elements: readonly DrawnElement[] } {
  const pen = createPen(medium);
  const elements: DrawnElement[] = [];
  const parts = anatomies.map((anatomy, index) => {
    const at = placed.nodes[index]!;
    const { x, y } = at;
    const { width, height } = anatomy.node;
    elements.push(
      elementOf(
        anatomy.part,
        "part",
        anatomy.part.name,
        outline(anatomy, { x, y, width, height }, bodyBox(anatomy, at)),
      ),
    );
    return drawPart(pen, anatomy, at);
  });
  const lines = schematic.lines.map((line, index) => {
    const feet = portsOf(schematic, anatomies, index).map(
      ([node, row]): LineFoot => ({ anatomy: anatomies[node]!, placed: placed.nodes[node]!, row }),
    ) as [LineFoot, LineFoot];
    const { svg, box, devices } = drawLine(pen, line, feet, placed.edges[index]!);
    if (!line.isMounting) elements.push(elementOf(line, "conductor", line.name, box));
    for (const { device, box: around } of devices)
      elements.push(elementOf(device, "protection", device.name, around));
    return svg + devices.map((one) => one.svg).join("");
  });
  return { drawn: lines.join("") + parts.join(""), elements };
}

/** A part with its words, without the stubs beside it. */
function outline(
  { words }: NodeGeometry,
  node: DrawnElement["box"],
  body: DrawnElement["box"],
): DrawnElement["box"] {
  // Words behind the body belong to it, like those above it.
  if (words.some(({ anchor }) => anchor === "start"))
    return { ...node, x: body.x, width: node.x + node.width - body.x };
  return { x: body.x, y: node.y, width: body.width, height: body.y + body.height - node.y };
}

function elementOf(
  { id, records, property, description, found }: Pointed,
  kind: DrawnElement["kind"],
  name: string,
  box: DrawnElement["box"],
): DrawnElement {
  const worst = worstOf(found);
  return {
    ...{ id, kind, name, description, records, property, box },
    severity: worst === "accepted" ? undefined : worst,
    findings: found.map(({ message }) => message),
  };
}
