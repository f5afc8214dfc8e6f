/**
 * What a picture may consist of: lines, shapes and words, and nothing that runs, loads, links or styles. A list of what is allowed,
 * so that whatever nobody thought of is refused.
 */

/** What becomes of an element, by its name within the SVG namespace. */
export function elementIs(name: string): "taken" | "left out" | "refused" {
  if (shapes.has(name)) return "taken";
  return withoutLook.has(name) ? "left out" : "refused";
}

/** What becomes of an attribute. One of another namespace is never asked about: it is refused. */
export function attributeIs(name: string, value: string): "taken" | "left out" | "refused" {
  // What a screen reader is told, and what can take the focus, the page itself decides.
  if (/^(?:id|role|tabindex|xmlns|version|aria-[a-z]+)$/.test(name)) return "left out";
  const form = forms.get(name);
  return form?.test(value) ? "taken" : "refused";
}

const shapes: ReadonlySet<string> = new Set([
  ...["svg", "g", "path", "line", "polyline", "polygon", "rect", "circle", "ellipse"],
  ...["text", "tspan", "title", "desc"],
]);

/** For other programs that read the file. */
const withoutLook: ReadonlySet<string> = new Set(["metadata"]);

const lengths = /^[-+\d.eE,%\s]*$/;
const outline = /^[-+\d.eE,\sACHLMQSTVZachlmqstvz]*$/;
const motions = /^(?:\s*(?:translate|rotate|scale|matrix)\([-+\d.eE,\s]*\))*\s*$/;
const paint = /^(?:#[\da-fA-F]{3,8}|[a-zA-Z]+|var\(--[\w-]+(?:, [a-zA-Z]+)?\))$/;
const words = /^[-\w.,%'" ]*$/;
/** Names from the plan may stand here; they are only ever compared. */
const anyText = /^[\s\S]*$/;

const forms: ReadonlyMap<string, RegExp> = new Map([
  ...["x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry", "dx", "dy"].map(as(lengths)),
  ...["width", "height", "viewBox", "points", "font-size", "letter-spacing", "textLength"].map(as(lengths)),
  ...["stroke-width", "stroke-dasharray", "stroke-dashoffset", "stroke-miterlimit"].map(as(lengths)),
  ...["opacity", "fill-opacity", "stroke-opacity"].map(as(lengths)),
  ...["d"].map(as(outline)),
  ...["transform"].map(as(motions)),
  ...["fill", "stroke", "color"].map(as(paint)),
  ...["class", "font-family", "font-weight", "font-style", "text-anchor", "dominant-baseline"].map(as(words)),
  ...["stroke-linecap", "stroke-linejoin", "fill-rule", "paint-order", "vector-effect"].map(as(words)),
  ...["lengthAdjust", "preserveAspectRatio", "shape-rendering", "text-rendering"].map(as(words)),
  ...["data-element", "data-kind", "data-severity"].map(as(anyText)),
]);

function as(form: RegExp): (name: string) => [string, RegExp] {
  return (name) => [name, form];
}
