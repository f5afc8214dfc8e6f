/** Every command-line option. It has one meaning for all commands that take it. */
export const options = {
  format: {
    type: "string",
    value: "FORMAT",
    help: "the form of the output",
  },
  "max-warnings": {
    type: "string",
    value: "N",
    help: "number of tolerated warnings; default 0",
  },
  "dry-run": { type: "boolean", help: "show the changes without writing them" },
  all: { type: "boolean", help: "show the smaller changes too" },
  from: {
    type: "string",
    value: "OLD",
    help: "the plan, or its file of wire numbers, to take the numbers over from",
  },
  offers: {
    type: "boolean",
    help: "take offers too: thicker conductors on which other devices are",
  },
  out: { type: "string", value: "PATH", help: "the file or folder to write to" },
  force: { type: "boolean", help: "write also over a file that Loomwright did not make" },
  view: { type: "string", value: "VIEW", help: "one-line, wiring or board" },
  colours: { type: "boolean", help: "draw each conductor in the colour of its insulation" },
  surface: { type: "string", value: "NAME", help: "only this surface of the plan" },
  template: {
    type: "boolean",
    help: "with --view board, the drilling template in true size, as .pdf, .svg or .dxf",
  },
  conductors: { type: "boolean", help: "with --view board, draw the conductors along their ways" },
  scenario: { type: "string", value: "NAME", help: "the scenario whose currents and voltages are shown" },
  period: { type: "string", value: "NAME", help: "only this period of the plan" },
  month: {
    type: "string",
    value: "MONTH",
    help: "the month whose worst week is drawn, such as Jan; default the worst",
  },
  table: {
    type: "string",
    value: "TABLE",
    help: "only this one: wire-schedule, cut-list, spools, fewer-sizes, parts-list, fuse-map, labels or first-power; of energy: months, use, least-changes, worksheet or assumptions",
  },
  sheet: {
    type: "string",
    value: "SHEET",
    help: "the label sheet, paper and labels across and down: default A4-5x13",
  },
  page: {
    type: "string",
    value: "SIZE",
    help: "A4, Letter or A3; default A4, for draw a sheet as large as the drawing",
  },
  revision: {
    type: "string",
    value: "TEXT",
    help: "the revision for the title block and the report, such as B",
  },
  commit: {
    type: "boolean",
    help: "the last commit as the revision, with + uncommitted if the plan differs from it",
  },
  edition: {
    type: "string",
    value: "EDITION",
    help: "inspector: everything; bench: drawing, wire schedule, fuse map, checks before first power; default inspector",
  },
  shard: {
    type: "string",
    value: "I/N",
    help: "only the I-th of N equal shares of the plans, for merge to join",
  },
  fresh: { type: "boolean", help: "calculate everything anew, without kept results" },
} as const satisfies Readonly<Record<string, OptionSpec>>;

interface OptionSpec {
  readonly type: "string" | "boolean";
  /** The placeholder for its value in the help. */
  readonly value?: string;
  readonly help: string;
}

export type OptionName = keyof typeof options;

/** The options as they were typed. */
export type GivenOptions = {
  readonly [Name in OptionName]?: (typeof options)[Name]["type"] extends "string" ? string : boolean;
};
