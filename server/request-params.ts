import { isAbsolute } from "node:path";
import * as z from "zod";
import {
  arrangementMethod,
  boardsMethod,
  diagramMethod,
  differenceMethod,
  documentMethod,
  energyMethod,
  moveMethod,
  placePartsMethod,
  reportMethod,
  workingMethod,
} from "./language/messages.ts";

/**
 * The reason why a request cannot be answered: a sentence that names the first parameter that is missing or of a wrong type.
 * Undefined if all needed parameters are there, and for requests without parameters.
 */
export function wrongParams(method: string, params: unknown): string | undefined {
  const checked = schemas[method]?.safeParse(params);
  if (!checked || checked.success) return undefined;
  const { path, message: allowed } = checked.error.issues[0]!;
  if (path.length === 0) return `The parameters of ${method} must be ${allowed}.`;
  const name = path.join(".");
  const given = path.reduce<unknown>((value, key) => (value as Record<PropertyKey, unknown>)[key], params);
  return given === undefined
    ? `${name} is missing: it must be ${allowed}.`
    : `${name} is ${shortened(given)}: it must be ${allowed}.`;
}

function shortened(given: unknown): string {
  const text = JSON.stringify(given) ?? String(given);
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

const largestPosition = 2 ** 31 - 1;

const positionNumber = z
  .number("a number")
  .int("a whole number")
  .min(0, "0 or more")
  .max(largestPosition, `at most ${largestPosition}`);
const position = z.looseObject({ line: positionNumber, character: positionNumber }, "a position");
const range = z
  .looseObject({ start: position, end: position }, "a range")
  .refine(
    ({ start, end }) =>
      start.line < end.line || (start.line === end.line && start.character <= end.character),
    "a range whose end is not before its start",
  );
/** A scheme with content behind it; no control characters, which no URI has. */
const uri = z.string("a URI").regex(/^[a-z][\w+.-]*:[^\p{Cc}]+$/iu, "a URI, such as file:///camper/plan.ts");
const textDocument = z.looseObject({ uri }, "an object with the URI of a document");
const optionalText = z.string("a text").optional();

const path = z
  .string("the path of a file")
  .refine((given) => isAbsolute(given) && !given.includes("\0"), "the absolute path of a file");
const page = z.enum(["A4", "Letter", "A3"], '"A4", "Letter" or "A3"');
const revision = z
  .union([z.literal("commit"), z.object({ text: z.string() })], 'a text ({ text }) or "commit"')
  .optional();
const colours = z.boolean("true or false").optional();
const view = z.enum(["one-line", "wiring"], '"one-line" or "wiring"');

const placeInList = z.number("a number").int("a whole number").min(0, "0 or more");
const leverMove = z.looseObject(
  { lever: z.string("a text"), value: z.number("a number") },
  "a lever and its value",
);

const shownVersions = z
  .array(z.looseObject({ uri, version: z.number("a number") }, "the version of a file"), "a list of versions")
  .min(1, "the versions of the open files");
const triedPlace = z.looseObject(
  {
    record: placeInList,
    on: placeInList,
    left: z.number("a number"),
    top: z.number("a number"),
    turnedDeg: z.literal([0, 90, 180, 270], "0, 90, 180 or 270"),
  },
  "the place of a part",
);
const tried = z.looseObject(
  {
    versions: shownVersions,
    places: z.array(triedPlace, "a list of places").min(1, "a place").max(1_000, "at most 1,000 places"),
  },
  "places of parts, and the versions that they belong to",
);

const ofDocument = z.looseObject({ textDocument }, "an object with names");
const atPosition = ofDocument.extend({ position });
const inRange = ofDocument.extend({ range });

const schemas: Readonly<Record<string, z.ZodType>> = {
  "textDocument/hover": atPosition,
  "textDocument/completion": atPosition,
  "textDocument/codeAction": inRange.extend({
    context: z.looseObject(
      {
        diagnostics: z.array(z.unknown(), "a list of diagnostics"),
        only: z.array(z.string("a kind of code action"), "a list of kinds of code actions").optional(),
        triggerKind: z.number("a number").optional(),
      },
      "an object with diagnostics",
    ),
  }),
  "textDocument/documentSymbol": ofDocument,
  "textDocument/codeLens": ofDocument,
  "textDocument/inlayHint": inRange,
  "textDocument/diagnostic": ofDocument.extend({ previousResultId: optionalText, identifier: optionalText }),
  [workingMethod]: atPosition,
  [diagramMethod]: ofDocument.extend({
    view,
    scenario: optionalText,
    colours,
  }),
  [energyMethod]: ofDocument.extend({
    period: optionalText,
    bank: placeInList.optional(),
    month: placeInList.optional(),
    move: leverMove.optional(),
    least: z.boolean("true or false").optional(),
  }),
  [moveMethod]: ofDocument.extend({
    versions: shownVersions,
    move: leverMove,
  }),
  [boardsMethod]: ofDocument.extend({
    conductors: z.boolean("true or false").optional(),
    tried: tried.optional(),
  }),
  [placePartsMethod]: ofDocument.extend({ tried }),
  [arrangementMethod]: ofDocument.extend({
    versions: shownVersions,
    on: placeInList,
    conductors: z.boolean("true or false").optional(),
    workDoneToken: z.union([z.string(), z.number()], "a text or a number").optional(),
  }),
  [reportMethod]: ofDocument.extend({
    path,
    page,
    revision,
    edition: z.enum(["inspector", "bench"], '"inspector" or "bench"').optional(),
    force: z.boolean("true or false"),
  }),
  [documentMethod]: ofDocument
    .extend({
      document: z.enum(
        ["drawing", "boards", "templates", "labels", "lists", "numbers"],
        '"drawing", "boards", "templates", "labels", "lists" or "numbers"',
      ),
      path: path.optional(),
      view: view.optional(),
      scenario: optionalText,
      colours,
      conductors: z.boolean("true or false").optional(),
      page: page.optional(),
      revision,
      force: z.boolean("true or false"),
    })
    .refine((given) => given.document === "numbers" || given.path !== undefined, {
      path: ["path"],
      error: "the absolute path of a file",
    }),
  [differenceMethod]: ofDocument,
};
