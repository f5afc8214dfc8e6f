import type { BenchSettings } from "../../model/bench-settings.ts";
import { metresPerFoot } from "../../model/length-limits.ts";
import type { LengthUnit } from "../../model/length-unit.ts";
import { sizeInWords } from "../../rules/fixes/sized-fix.ts";
import { formatExact } from "../../rules/wording/format-number.ts";
import { shortLengthInUnit, shortUnitOf } from "../../rules/wording/lengths.ts";
import { unconfirmed } from "../../rules/wording/source-in-words.ts";
import { notKnown } from "../../rules/wording/unknown-length.ts";
import { conductorColours } from "../../standards/conductor-colours.ts";
import type { Cell, Table } from "../table.ts";
import { type ColumnOf, forPeople, forPrograms, numbers, quantity, tableOf, words } from "../table-of.ts";
import { deviceInList, endInWords, lengthToCut, notKeptNotes, numberCell, numberText } from "./cells.ts";
import { fittingInShort, fittingInWords, isUsual, usualFittingsNote } from "./fittings.ts";
import { feetAndInches } from "./lengths.ts";
import type { NumberedWire } from "./wire-numbers.ts";
import type { Wire, WireEnd } from "./wires.ts";

/** Every conductor, a row each: its ends, material, cut length, fittings and protection. */
export function wireSchedule(wires: readonly NumberedWire[], bench: BenchSettings): Table {
  const unit = unitOf(wires);
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
      ...(wires.some(({ wire }) => wire.duplex !== undefined)
        ? [words<NumberedWire>("cable", "In cable", (one) => cableInWords(one, wires))]
        : []),
      inMetres(
        unit,
        numbers("lengthM", "Planned, m", ({ wire }) => ifKnown(wire.lengthM, quantity)),
      ),
      ...(unit === "ft" ? [numbers("lengthFt", "Planned, ft", inFeet)] : []),
      inMetres(
        unit,
        numbers("cutLengthM", "Cut length, m", ({ wire }) => ifKnown(wire.cutLengthM, lengthToCut)),
      ),
      ...(unit === "ft" ? [numbers("cutLengthFtIn", "Cut length, ft and in", inFeetAndInches)] : []),
      ...(wires.some(({ wire }) => wire.channels !== undefined)
        ? [words<NumberedWire>("way", "Way", ({ wire }) => wayInWords(wire))]
        : []),
      words("insulation", "Insulation", ({ wire }) => insulationInWords(wire)),
      forPrograms(words("fittingFrom", "Fitting at from", ({ wire }) => fittingInWords(wire.from))),
      forPrograms(words("fittingTo", "Fitting at to", ({ wire }) => fittingInWords(wire.to))),
      forPeople(words("ringFrom", "Fitting at from", ({ wire }) => fittingInShort(wire.from))),
      forPeople(words("ringTo", "Fitting at to", ({ wire }) => fittingInShort(wire.to))),
      forPrograms(words("protectionFrom", "Protection at from", ({ wire }) => device(wire.from))),
      forPrograms(words("protectionTo", "Protection at to", ({ wire }) => device(wire.to))),
      forPeople(words("protection", "Protection", protectionInWords)),
      forPrograms(words("label", "Label", ({ wire }) => wire.label)),
      ...(wires.some(hasOwnLabel)
        ? [
            forPeople(
              words<NumberedWire>("ownLabel", "Label", (one) => (hasOwnLabel(one) ? one.wire.label : null)),
            ),
          ]
        : []),
    ],
    wires,
  );
}

/** A text that is not its name, nor the beginning of it. */
function hasOwnLabel({ wire: { label, name } }: NumberedWire): boolean {
  return !name.startsWith(label);
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

/** A column in metres: in a plan in feet, only programs read it. */
export function inMetres<Row>(unit: LengthUnit, column: ColumnOf<Row>): ColumnOf<Row> {
  return unit === "ft" ? forPrograms(column) : column;
}

/** Of the plan: all its wires have the same. */
export function unitOf(wires: readonly NumberedWire[]): LengthUnit {
  return wires[0]?.wire.lengthUnit ?? "m";
}

/** "flat duplex with 5": the number of the other conductor. */
function cableInWords({ wire }: NumberedWire, wires: readonly NumberedWire[]): string | null {
  if (wire.duplex === undefined) return null;
  const other = wires.find((one) => one.wire.record === wire.record && one.wire !== wire);
  return other ? `${wire.duplex} with ${numberText(other)}` : wire.duplex;
}

function inFeet({ wire: { lengthM } }: NumberedWire): Cell {
  return ifKnown(lengthM, (known) => quantity(known / metresPerFoot));
}

function inFeetAndInches({ wire: { cutLengthM } }: NumberedWire): Cell {
  return ifKnown(cutLengthM, feetAndInches);
}

function ifKnown(lengthM: number | undefined, cell: (knownM: number) => Cell): Cell {
  return lengthM === undefined ? notKnown : cell(lengthM);
}

/** "Trunking, Hole"; "in the open". */
function wayInWords({ channels }: Wire): string | null {
  if (channels === undefined) return null;
  return channels.length === 0 ? "in the open" : channels.join(", ");
}

/** "60 A fuse", at its beginning; "at to: 60 A fuse"; both. */
function protectionInWords({ wire }: NumberedWire): Cell {
  const [from, to] = [device(wire.from), device(wire.to)];
  if (!to) return from;
  return from ? `${from}; at to: ${to}` : `at to: ${to}`;
}

function device({ protection }: WireEnd): string | null {
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
  const notes = [`${slackRule(bench, unitOf(numbered))} Measure the real route before you cut.`];
  if (wires.some(({ insulationStated }) => !insulationStated))
    notes.push("If the plan states no insulation, every limit was taken from the column of 75 °C.");
  if (wires.some(({ size }) => size.parallel > 1))
    notes.push("2 × 35 mm² is two equal wires in parallel: each has the length and the fittings of the row.");
  if (wires.some(({ duplex }) => duplex !== undefined))
    notes.push(
      "The two conductors of a two-conductor cable are one piece of its cut length; the sheath ends where they part.",
    );
  if (wires.some(({ from, to }) => isInWire(from) || isInWire(to)))
    notes.push(
      "Protection is at the end named under From, unless it says otherwise. A wire with a fuse or breaker in it is cut once more, at the device, and has two more ends there.",
    );
  if (wires.some(({ lengthM }) => lengthM === undefined))
    notes.push("Length not known: state it in the plan, or measure the real route.");
  if (numbered.some(hasOwnLabel)) notes.push("A wire without a label text here has its name on its labels.");
  if (wires.some(({ from, to }) => isUsual(from) || isUsual(to))) notes.push(usualFittingsNote);
  if (wires.some(bondsWithoutOwnColour)) {
    const { bonding, source } = conductorColours;
    notes.push(
      `Conductors that only bond metal are usually ${bonding.join(" or ")} (${source.document}, ${unconfirmed}); state colour for them.`,
    );
  }
  return [
    ...notes,
    ...notKeptNotes(numbered),
    wires.some(({ channels }) => channels !== undefined)
      ? "Not in it: sleeves, clips and conduits."
      : "Not in it: sleeves, clips, conduits, and routes.",
  ];
}

/** A device in the wire itself, not in a position of a panel. */
function isInWire({ protection, terminal }: WireEnd): boolean {
  return protection !== null && terminal !== "branch";
}

function bondsWithoutOwnColour({ from, to, colour }: Wire): boolean {
  return [from, to].some(({ terminal }) => terminal === "bond") && !/green/i.test(colour);
}

/** The rule for cut lengths, as a sentence with the build's figures. */
export function slackRule({ slackPercent, endSlackM }: BenchSettings, unit: LengthUnit): string {
  const step = unit === "ft" ? "inch" : "10 mm";
  return `Cut length: the planned length, ${formatExact(slackPercent)} % slack and ${shortLengthInUnit(endSlackM * 1_000, shortUnitOf[unit])} at each end, up to the next ${step}. Common practice, no source, unless the build states otherwise.`;
}
