/**
 * The permitted content of a picture: lines, shapes and words; no scripts, loading, links or styles. It is a list of allowed
 * names, so anything unforeseen is refused.
 */

/** The treatment of an element, by its name within the SVG namespace. */
export function elementIs(name: string): "taken" | "left out" | "refused" {
  if (shapes.has(name)) return "taken";
  return withoutLook.has(name) ? "left out" : "refused";
}

/** The treatment of an attribute. One from another namespace never gets here: it is refused. */
export function attributeIs(name: string, value: string): "taken" | "left out" | "refused" {
  if (name === "id" && new RegExp(`^${fillName}$`).test(value)) return "taken";
  // The page itself decides on accessible names and focusable elements.
  if (/^(?:id|role|tabindex|xmlns|version|aria-[a-z]+)$/.test(name)) return "left out";
  const form = forms.get(name);
  return form?.test(value) ? "taken" : "refused";
}

const shapes: ReadonlySet<string> = new Set([
  ...["svg", "g", "path", "line", "polyline", "polygon", "rect", "circle", "ellipse"],
  ...["text", "tspan", "title", "desc", "defs", "pattern"],
]);

/** For other programs that read the file. */
const withoutLook: ReadonlySet<string> = new Set(["metadata"]);

const lengths = /^[-+\d.eE,%\s]*$/;
const outline = /^[-+\d.eE,\sACHLMQSTVZachlmqstvz]*$/;
const motions = /^(?:\s*(?:translate|rotate|scale|matrix)\([-+\d.eE,\s]*\))*\s*$/;
/** The name of a pattern of ours: the only thing within a picture that may be referred to. */
const fillName = "loomwright-fill-[a-z]+";
const paint = new RegExp(
  `^(?:#[\\da-fA-F]{3,8}|[a-zA-Z]+|var\\(--[\\w-]+(?:, [a-zA-Z]+)?\\)|url\\(#${fillName}\\))$`,
);
const words = /^[-\w.,%'" ]*$/;
/** These may contain names from the plan; they are only ever compared. */
const anyText = /^[\s\S]*$/;

const forms: ReadonlyMap<string, RegExp> = new Map([
  ...["x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry", "dx", "dy"].map(as(lengths)),
  ...["width", "height", "viewBox", "points", "font-size", "letter-spacing", "textLength"].map(as(lengths)),
  ...["stroke-width", "stroke-dasharray", "stroke-dashoffset", "stroke-miterlimit"].map(as(lengths)),
  ...["opacity", "fill-opacity", "stroke-opacity"].map(as(lengths)),
  ...["d"].map(as(outline)),
  ...["transform"].map(as(motions)),
  ...["fill", "stroke", "color"].map(as(paint)),
  ...["patternUnits"].map(as(words)),
  ...["class", "font-family", "font-weight", "font-style", "text-anchor", "dominant-baseline"].map(as(words)),
  ...["stroke-linecap", "stroke-linejoin", "fill-rule", "paint-order", "vector-effect"].map(as(words)),
  ...["lengthAdjust", "preserveAspectRatio", "shape-rendering", "text-rendering"].map(as(words)),
  ...[
    "data-element",
    "data-kind",
    "data-severity",
    "data-surface",
    "data-body",
    "data-channel",
    "data-conductor",
  ].map(as(anyText)),
]);

function as(form: RegExp): (name: string) => [string, RegExp] {
  return (name) => [name, form];
}
