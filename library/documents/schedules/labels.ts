import type { Table } from "../table.ts";
import { numbers, tableOf, words } from "../table-of.ts";
import { counted, endInWords, notKeptNotes, numberCell, numberText } from "./cells.ts";
import { fittingInWords, isUsual, usualFittingsNote } from "./fittings.ts";
import type { NumberedWire } from "./wire-numbers.ts";
import type { WireEnd } from "./wires.ts";

/** The text of each label, both ends of every wire: number, name, place of its other end. */
export function wireLabels(wires: readonly NumberedWire[]): readonly WireLabel[] {
  return wires.flatMap((numbered) => {
    const { wire } = numbered;
    const name = wire.role === "cable" ? wire.label : `${wire.label}, ${wire.role}`;
    const at = (end: WireEnd, leadsTo: string): WireLabel[] =>
      Array.from({ length: wire.size.parallel }, () => ({
        numbered,
        at: endInWords(end),
        fitting: fittingInWords(end),
        lines: [numberText(numbered), name, leadsTo] as const,
      }));
    return [...at(wire.from, `to ${endInWords(wire.to)}`), ...at(wire.to, `from ${endInWords(wire.from)}`)];
  });
}

/** One label: `lines` from the most to the least important. */
export interface WireLabel {
  readonly numbered: NumberedWire;
  /** The end that it is for. */
  readonly at: string;
  /** The fitting of that end, for the list. */
  readonly fitting: string;
  readonly lines: readonly [number: string, name: string, leadsTo: string];
}

/** The same as a list, for a label printer. Labels of parallel wires share one row. */
export function labelTable(wires: readonly NumberedWire[]): Table {
  const labels = new Map<string, LabelRow>();
  for (const label of wireLabels(wires)) {
    const key = JSON.stringify([label.at, label.fitting, label.lines]);
    const known = labels.get(key);
    if (known) known.count++;
    else labels.set(key, { label, count: 1 });
  }
  return tableOf<LabelRow>(
    {
      id: "labels",
      title: "Wire labels",
      notes: [
        "A label for each end of each wire. Use labels that outlast heat, oil and rubbing, or a clear sleeve over them.",
        ...(wires.some(({ wire }) => wire.duplex !== undefined)
          ? [
              "The two conductors of a two-conductor cable have their labels at both ends, where they leave the sheath.",
            ]
          : []),
        ...(wires.some(({ wire: { from, to } }) => isUsual(from) || isUsual(to)) ? [usualFittingsNote] : []),
        ...notKeptNotes(wires),
      ],
    },
    [
      numbers("number", "No.", ({ label }) => numberCell(label.numbered)),
      words("at", "At", ({ label }) => label.at),
      words("name", "Name", ({ label }) => label.lines[1]),
      words("leadsTo", "Leads", ({ label }) => label.lines[2]),
      words("fitting", "Fitting", ({ label }) => label.fitting),
      numbers("count", "Labels", ({ count }) => counted(count)),
    ],
    [...labels.values()],
  );
}

interface LabelRow {
  readonly label: WireLabel;
  count: number;
}
