import type { BenchSettings } from "../../model/bench-settings.ts";
import { asGiven, figure } from "../../rules/figures.ts";
import { sizeInWords } from "../../rules/sized-fix.ts";
import type { Cell, Column, Table } from "../table.ts";
import { deviceInList, endInWords, lengthToCut, notKeptNotes, numberCell, quantity } from "./cells.ts";
import { fittingInWords } from "./fittings.ts";
import type { NumberedWire } from "./wire-numbers.ts";
import type { Wire, WireEnd } from "./wires.ts";

/** Every conductor, a row each: what it joins, what it is made of, how long it is cut, how it ends, what protects it. */
export function wireSchedule(wires: readonly NumberedWire[], bench: BenchSettings): Table {
  const inInches = wires.some(({ wire }) => wire.size.system === "awg");
  const columns: (Column & { readonly cell: (numbered: NumberedWire) => Cell })[] = [
    { id: "number", title: "No.", align: "end", cell: numberCell },
    { id: "name", title: "Name", align: "start", cell: ({ wire }) => wire.name },
    { id: "from", title: "From", align: "start", cell: ({ wire }) => endInWords(wire.from) },
    { id: "to", title: "To", align: "start", cell: ({ wire }) => endInWords(wire.to) },
    { id: "side", title: "Side", align: "start", cell: ({ wire }) => sideInWords(wire) },
    { id: "colour", title: "Colour", align: "start", cell: ({ wire }) => wire.colour || "not stated" },
    { id: "size", title: "Size", align: "start", cell: ({ wire }) => sizeInWords(wire.size) },
    { id: "lengthM", title: "Planned, m", align: "end", cell: ({ wire }) => quantity(wire.lengthM) },
    {
      id: "cutLengthM",
      title: "Cut length, m",
      align: "end",
      cell: ({ wire }) => lengthToCut(wire.cutLengthM),
    },
    ...(inInches
      ? [
          {
            id: "cutLengthFtIn",
            title: "Cut length",
            align: "end" as const,
            cell: ({ wire }: NumberedWire) =>
              wire.size.system === "awg" ? feetAndInches(wire.cutLengthM) : null,
          },
        ]
      : []),
    { id: "insulationC", title: "Insulation, °C", align: "end", cell: ({ wire }) => insulation(wire) },
    { id: "fittingFrom", title: "Fitting at from", align: "start", cell: ({ wire }) => fitting(wire.from) },
    { id: "fittingTo", title: "Fitting at to", align: "start", cell: ({ wire }) => fitting(wire.to) },
    {
      id: "protectionFrom",
      title: "Protection at from",
      align: "start",
      cell: ({ wire }) => device(wire.from),
    },
    { id: "protectionTo", title: "Protection at to", align: "start", cell: ({ wire }) => device(wire.to) },
    { id: "label", title: "Label", align: "start", cell: ({ wire }) => wire.label },
  ];
  return {
    id: "wire-schedule",
    title: "Wire schedule",
    notes: [
      `${slackRule(bench)} Measure the way before you cut.`,
      ...(wires.some(({ wire }) => !wire.insulationStated)
        ? [
            "Where the plan does not state the insulation, the limits of 75 °C were taken: buy nothing below that.",
          ]
        : []),
      ...(wires.some(({ wire }) => wire.size.parallel > 1)
        ? [
            '"2 × 35 mm²" is two equal wires side by side: the length is that of each, and each gets the fittings.',
          ]
        : []),
      ...notKeptNotes(wires),
      "Not in it: sleeves, clips, conduits, and how the conductors run.",
    ],
    columns: columns.map(({ cell: _, ...column }) => column),
    rows: wires.map((numbered) => columns.map(({ cell }) => cell(numbered))),
  };
}

/** How cut lengths come about, as a sentence with the build's figures. */
export function slackRule({ slackPercent, endSlackM }: BenchSettings): string {
  return `Cut length: planned length + ${asGiven(slackPercent)} % slack + ${figure(endSlackM * 1000)} mm at each end, up to the next 10 mm (AWG: inch); common practice, no source, unless the build states it.`;
}

/** "15 ft 7 in", "11 in", of a length in whole inches. */
export function feetAndInches(lengthM: number): string {
  const inches = Math.ceil(lengthM / metresPerInch - 1e-6);
  const parts = [
    inches >= 12 ? `${Math.floor(inches / 12).toLocaleString("en-US")} ft` : "",
    inches % 12 > 0 || inches === 0 ? `${inches % 12} in` : "",
  ];
  return parts.filter(Boolean).join(" ");
}

const metresPerInch = 0.0254;

/** What it is in the system: "positive", "return", "link in series". */
export function sideInWords({ role, side }: Wire): string {
  if (role !== "cable") return role;
  return sides[side];
}

const sides: Readonly<Record<Wire["side"], string>> = {
  positive: "positive",
  negative: "negative",
  "series-link": "link in series",
  "parallel-link": "link in parallel",
  shorted: "part of a short",
  none: "on no source",
};

function insulation({ insulationC, insulationStated }: Wire): Cell {
  return insulationStated ? quantity(insulationC) : `not stated, ${insulationC} taken`;
}

function fitting({ termination }: WireEnd): string {
  return fittingInWords(termination);
}

function device({ protection }: WireEnd): Cell {
  return protection && deviceInList(protection);
}
