import { type SuggestedPlaces, suggestedPlaces } from "../../library/documents/suggested-places.ts";
import {
  leftOutInWords,
  lengthsGained,
  suggestionCaution,
  totalInWords,
} from "../../library/documents/suggestion-in-words.ts";
import type { Table } from "../../library/documents/table.ts";
import { numbers, quantity, tableOf, words } from "../../library/documents/table-of.ts";
import { judge } from "../../library/judge.ts";
import { displayName } from "../../library/model/display-name.ts";
import { metresPerInch } from "../../library/model/length-limits.ts";
import type { BoardUnit } from "../../library/model/length-unit.ts";
import { ruleById } from "../../library/rules/registry.ts";
import { formatExact } from "../../library/rules/wording/format-number.ts";
import { metresPer } from "../../library/rules/wording/lengths.ts";
import { LocatedPlan } from "../evaluate/provenance/located-plan.ts";
import { arrangeJson } from "./arrange-json.ts";
import { eachCheckedPlan, type OpenedPlan } from "./checked-plans.ts";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";
import { paintFor, printable } from "./terminal.ts";
import { textTable } from "./text-table.ts";
import { oneOfWords } from "./usage.ts";

const formats = ["text", "json"] as const;

/** `loomwright arrange`: places on a surface for the parts that have a size and no place yet. */
export const arrange: Command = {
  name: "arrange",
  usage: [
    {
      words: "[files or folders]",
      does: "suggest places on a surface for parts with a size and no place; changes no file",
    },
  ],
  formats,
  takes: ["format", "surface"],
  async run(names, given, outside) {
    const format = oneOfWords("format", given.format, formats);
    const shown: Suggested[] = [];
    const code = await eachCheckedPlan(names, outside, async (opened) =>
      suggest(opened, given.surface, shown, outside),
    );
    if (shown.length > 0) outside.out(format === "json" ? arrangeJson(shown) : onScreen(shown, outside));
    return code;
  },
};

/** `at`: by the index of a place, the property to write into the plan. */
interface Suggested {
  readonly file: string;
  readonly suggested: SuggestedPlaces;
  readonly at: readonly string[];
}

function suggest(
  { plan, file }: OpenedPlan,
  asked: string | undefined,
  shown: Suggested[],
  outside: Host,
): ExitCode {
  const refuse = (why: string): ExitCode => {
    outside.err(`loomwright: ${printable(`${file}: ${why}`)}.\n`);
    return 2;
  };
  const { model } = plan.judgement;
  const surfaces = model.layout?.surfaces ?? [];
  if (model.invalid.length > 0 || model.networkUnread || !(plan instanceof LocatedPlan))
    return refuse("no places are suggested while a value of the plan is refused; loomwright check names it");
  if (surfaces.length === 0)
    return refuse("the plan has no surface: describe a board with surface(), and give its parts a size");
  const all = surfaces.map(({ name }) => `"${name}"`).join(", ");
  if (asked === undefined && surfaces.length > 1)
    return refuse(`the plan has several surfaces: name one with --surface, ${all}`);
  const wanted = asked === undefined ? 0 : surfaces.findIndex(({ name }) => name === displayName(asked));
  if (wanted < 0) return refuse(`the plan has no surface called "${asked}". It has ${all}`);
  const suggested = suggestedPlaces(plan.records, plan.judgement, wanted, (records) =>
    judge(records, [], plan.judgement),
  );
  shown.push({ file, suggested, at: suggested.places.map((place) => atOf(place, suggested, plan)) });
  return suggested.why === undefined || suggested.nothingToPlace ? 0 : 2;
}

/** `at: { on: wall, leftMm: 1_200, topMm: 300 }`, with … for a surface that has no name where the part is. */
function atOf(
  { record, leftMm, topMm, turnedDeg }: Place,
  { record: surface, unit }: SuggestedPlaces,
  plan: LocatedPlan,
): string {
  const { uri, start } = plan.callOf(record);
  const on = plan.namesAt(uri, start).get(surface) ?? plan.nameToImport(uri, surface) ?? "…";
  const turned = turnedDeg === 0 ? "" : `, turnedDeg: ${turnedDeg}`;
  const [left, top] = [leftMm, topMm].map((mm) => written(inUnit(mm, unit)));
  const suffix = unit === "mm" ? "Mm" : "In";
  return `at: { on: ${on}, left${suffix}: ${left}, top${suffix}: ${top}${turned} }`;
}

/** Exact, as places are whole millimetres or eighths of an inch. */
function inUnit(mm: number, unit: BoardUnit): number {
  return unit === "mm" ? mm : Math.round((8 * mm) / (metresPerInch * 1_000)) / 8;
}

/** As a plan writes it: 1_200. */
function written(value: number): string {
  const [whole = "", ...behind] = `${value}`.split(".");
  return [whole.replace(/\B(?=(\d{3})+$)/g, "_"), ...behind].join(".");
}

function onScreen(plans: readonly Suggested[], { terminal }: Host): string {
  const paint = paintFor(terminal);
  return plans
    .map(({ file, suggested, at }) =>
      [
        ...(plans.length > 1 ? [`${paint("strong", printable(file))}\n`] : []),
        ...(suggested.why === undefined
          ? [
              textTable(placesTable(suggested), paint),
              toWrite(suggested, at),
              suggested.runs.length === 0
                ? "No run of the plan ends at these parts.\n"
                : textTable(runsTable(suggested), paint),
            ]
          : [`No places on ${printable(suggested.surface)}: ${printable(suggested.why)}.\n`]),
        ...remarksOn(suggested).map((remark) => `${printable(remark)}\n`),
      ].join("\n"),
    )
    .join("\n");
}

type Place = SuggestedPlaces["places"][number];
type ComparedRun = SuggestedPlaces["runs"][number];

function placesTable({ surface, places, unit }: SuggestedPlaces): Table {
  const distance = (id: string, side: string, mmOf: (place: Place) => number) =>
    numbers<Place>(id, `${side}, ${unit}`, (place) => {
      const value = inUnit(mmOf(place), unit);
      return { value, text: formatExact(value) };
    });
  return tableOf(
    {
      id: "places",
      title: `Suggested places on ${surface}`,
      notes: [suggestionCaution],
    },
    [
      words<Place>("part", "Part", ({ name }) => name),
      words<Place>("surface", "Surface", () => surface),
      distance("left", "Left", ({ leftMm }) => leftMm),
      distance("top", "Top", ({ topMm }) => topMm),
      numbers<Place>("turnedDeg", "Turned", ({ turnedDeg }) => ({ value: turnedDeg, text: `${turnedDeg}°` })),
    ],
    places,
  );
}

/** Whole, to be copied: a table would break a long line. */
function toWrite({ places }: SuggestedPlaces, at: readonly string[]): string {
  const lines = places.map(({ name }, index) => `  ${name}: ${at[index]}`);
  return `${["To write into the plan", ...lines].map(printable).join("\n")}\n`;
}

function runsTable({ runs, total, lengthUnit: unit }: SuggestedPlaces): Table {
  const cell = (lengthM: number | undefined, without: string) =>
    lengthM === undefined ? without : quantity(lengthM / metresPer[unit]);
  return tableOf(
    {
      id: "runs",
      title: "Lengths of the conductors at these parts",
      notes: [
        "All conductors of a run together. Today: as the plan states it, or along its way. Suggested: along the way between these places, with the slack of the plan.",
        total ? totalInWords(total, unit) : "No run has a known length both today and with these places.",
        ...lengthsGained(runs, unit),
      ],
    },
    [
      words<ComparedRun>("run", "Run", ({ name }) => name),
      numbers<ComparedRun>("today", `Today, ${unit}`, ({ todayM }) => cell(todayM, "not known")),
      numbers<ComparedRun>("suggested", `Suggested, ${unit}`, ({ suggestedM }) => cell(suggestedM, "no way")),
    ],
    runs,
  );
}

function remarksOn({ leftOut, withoutRoom, added }: SuggestedPlaces): readonly string[] {
  const remarks = [...leftOutInWords({ leftOut, withoutRoom })];
  for (const { rule, severity, values } of added)
    remarks.push(`New with these places, ${severity}: ${ruleById(rule)!.message(values)} (${rule})`);
  return remarks;
}
