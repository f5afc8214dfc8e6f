import type { BenchSettings } from "../../model/bench-settings.ts";
import { sizeInWords } from "../../rules/fixes/sized-fix.ts";
import { formatExact, formatRounded } from "../../rules/wording/format-number.ts";
import { metresPerFoot } from "../../rules/wording/property-paths.ts";
import { unconfirmed } from "../../rules/wording/source-in-words.ts";
import { conductorColours } from "../../standards/conductor-colours.ts";
import type { Cell, Table } from "../table.ts";
import { numbers, quantity, tableOf, words } from "../table-of.ts";
import { deviceInList, endInWords, lengthToCut, notKeptNotes, numberCell } from "./cells.ts";
import { fittingInWords } from "./fittings.ts";
import { feetAndInches } from "./lengths.ts";
import type { NumberedWire } from "./wire-numbers.ts";
import type { Wire, WireEnd } from "./wires.ts";

/** Every conductor, a row each: its ends, material, cut length, fittings and protection. */
export function wireSchedule(wires: readonly NumberedWire[], bench: BenchSettings): Table {
  const inInches = wires.some(({ wire }) => wire.size.system === "awg");
  return tableOf<NumberedWire>(
    { id: "wire-schedule", title: "Wire schedule", notes: notesFor(wires, bench) },
    [
      numbers("number", "No.", numberCell),
      words("name", "Name", ({ wire }) => wire.name),
      words("from", "From", ({ wire }) => endInWords(wire.from)),
      words("to", "To", ({ wire }) => endInWords(wire.to)),
      words("side", "Side", ({ wire }) => sideInWords(wire)),
      words("colour", "Colour", ({ wire }) => wire.colour || "not stated"),
      words("size", "Size", ({ wire }) => sizeInWords(wire.size)),
      numbers("lengthM", "Planned, m", ({ wire }) => quantity(wire.lengthM)),
      ...(inInches ? [numbers("lengthFt", "Planned, ft", inFeet)] : []),
      numbers("cutLengthM", "Cut length, m", ({ wire }) => lengthToCut(wire.cutLengthM)),
      ...(inInches ? [numbers("cutLengthFtIn", "Cut length, ft and in", inFeetAndInches)] : []),
      words("insulation", "Insulation", ({ wire }) => insulationInWords(wire)),
      words("fittingFrom", "Fitting at from", ({ wire }) => fittingInWords(wire.from.termination)),
      words("fittingTo", "Fitting at to", ({ wire }) => fittingInWords(wire.to.termination)),
      words("protectionFrom", "Protection at from", ({ wire }) => device(wire.from)),
      words("protectionTo", "Protection at to", ({ wire }) => device(wire.to)),
      words("label", "Label", ({ wire }) => wire.label),
    ],
    wires,
  );
}

/** Its function in the system: "positive", "return", "link in series". */
export function sideInWords({ role, side }: Pick<Wire, "role" | "side">): string {
  return role === "cable" ? sides[side] : role;
}

/** "105 °C", "not stated, 75 °C taken". */
export function insulationInWords({
  insulationC,
  insulationStated,
}: Pick<Wire, "insulationC" | "insulationStated">): string {
  return insulationStated ? `${insulationC} °C` : `not stated, ${insulationC} °C taken`;
}

function inFeet({ wire: { size, lengthM } }: NumberedWire): Cell {
  return size.system === "awg" ? quantity(lengthM / metresPerFoot) : null;
}

function inFeetAndInches({ wire: { size, cutLengthM } }: NumberedWire): Cell {
  return size.system === "awg" ? feetAndInches(cutLengthM) : null;
}

function device({ protection }: WireEnd): Cell {
  return protection && deviceInList(protection);
}

const sides: Readonly<Record<Wire["side"], string>> = {
  positive: "positive",
  negative: "negative",
  "series-link": "link in series",
  "parallel-link": "link in parallel",
  shorted: "part of a short",
  none: "on no source",
};

function notesFor(numbered: readonly NumberedWire[], bench: BenchSettings): string[] {
  const wires = numbered.map(({ wire }) => wire);
  const notes = [`${slackRule(bench)} Measure the real route before you cut.`];
  if (wires.some(({ insulationStated }) => !insulationStated))
    notes.push("If the plan states no insulation, every limit was taken from the column of 75 °C.");
  if (wires.some(({ size }) => size.parallel > 1))
    notes.push("2 × 35 mm² is two equal wires in parallel: each has the length and the fittings of the row.");
  if (wires.some(({ from, to }) => isInWire(from) || isInWire(to)))
    notes.push(
      "A wire with a fuse or breaker in it is cut once more, at the device, and has two more ends there.",
    );
  if (wires.some(({ from, to }) => from.termination === undefined || to.termination === undefined))
    notes.push(
      "A fitting is stated only where the part at that end states how it is connected (termination).",
    );
  if (wires.some(bondsWithoutOwnColour)) {
    const { bonding, source } = conductorColours;
    notes.push(
      `Conductors that only bond metal are usually ${bonding.join(" or ")} (${source.document}, ${unconfirmed}); state colour for them.`,
    );
  }
  return [...notes, ...notKeptNotes(numbered), "Not in it: sleeves, clips, conduits, and routes."];
}

/** A device in the wire itself, not in a position of a panel. */
function isInWire({ protection, terminal }: WireEnd): boolean {
  return protection !== null && terminal !== "branch";
}

function bondsWithoutOwnColour({ from, to, colour }: Wire): boolean {
  return [from, to].some(({ terminal }) => terminal === "bond") && !/green/i.test(colour);
}

/** The rule for cut lengths, as a sentence with the build's figures. */
export function slackRule({ slackPercent, endSlackM }: BenchSettings): string {
  return `Cut length: the planned length, ${formatExact(slackPercent)} % slack and ${formatRounded(endSlackM * 1000)} mm at each end, up to the next 10 mm (AWG: inch). Common practice, no source, unless the build states otherwise.`;
}
