import { familyData, interruptsA } from "../../analysis/choose-device.ts";
import type { DeviceFault } from "../../analysis/network-result.ts";
import type { ProtectiveDevice } from "../../model/network.ts";
import type { Protection } from "../../model/run.ts";
import type { JudgedNetwork } from "../../rules/rule.ts";
import { atStart, conductorInWords, listInWords } from "../../rules/wording/part-in-words.ts";
import { unconfirmed } from "../../rules/wording/source-in-words.ts";
import type { Cell, Table } from "../table.ts";
import { numberColumn, quantity, textColumn, valueAndLimit } from "./cells.ts";
import type { ReportContext } from "./chapter.ts";
import { numbersAbout } from "./numbered-findings.ts";
import { deviceInFull } from "./runs.ts";

/** The maximum and minimum fault current through each protective device, and its interrupting rating. */
export function shortCircuitTable({ network, result }: JudgedNetwork, { numbered }: ReportContext): Table {
  const { devices } = result.faults;
  return {
    id: "shorts",
    title: "Short circuits at fuses and breakers",
    notes: [
      ...(devices.some(({ estimated }) => estimated)
        ? [
            "Estimated: it follows from an internal resistance that is usual for the chemistry, not stated in the plan (common practice, no source).",
          ]
        : []),
      ...(devices.some((fault) => unknown(fault, network))
        ? [
            "Not known: neither the plan nor the standard of its family states its interrupting rating; it was not judged.",
          ]
        : []),
    ],
    columns: [
      textColumn("conductor", "In"),
      textColumn("device", "Fuse or breaker"),
      textColumn("fedBy", "Fed by"),
      numberColumn("greatestA", "Greatest, A"),
      numberColumn("interruptsA", "Can interrupt, A"),
      textColumn("known", "According to"),
      numberColumn("leastA", "Least, A"),
      textColumn("leastAt", "Short at the far end of"),
      textColumn("findings", "Findings"),
    ],
    rows: devices.flatMap((fault) => {
      const stated = network.devices[fault.device];
      const on = stated && network.conductors[stated.place.conductor];
      if (!on) return [];
      return [
        [
          `${on.name}${stated.place.end === "far" ? ", far end" : ""}`,
          deviceInFull(stated),
          listInWords(
            fault.sources.flatMap((part) => network.parts[part]?.name ?? []),
            3,
          ),
          ...interruption(fault, stated),
          leastIn(fault),
          leastAt(fault, stated, network),
          numbersAbout(numbered, on.name),
        ],
      ];
    }),
  };
}

function leastIn({ least, leastNotWorkedOut }: DeviceFault) {
  if (least) return quantity(least.currentA);
  return leastNotWorkedOut ? "not worked out" : "none";
}

function unknown(fault: DeviceFault, network: JudgedNetwork["network"]): boolean {
  const stated = network.devices[fault.device];
  return stated !== undefined && interruptsA(stated) === undefined;
}

function interruption({ greatestA, estimated }: DeviceFault, stated: Protection): readonly Cell[] {
  const capacityA = interruptsA(stated);
  const marked = (cell: Cell): Cell =>
    estimated && cell !== null && typeof cell !== "string"
      ? { ...cell, text: `${cell.text} estimated` }
      : cell;
  if (capacityA === undefined) return [marked(quantity(greatestA)), "not known", null];
  const [greatest, can] = valueAndLimit(greatestA, capacityA);
  return [marked(greatest), can, capacitySource(stated)];
}

function capacitySource({ interruptingA, family }: Protection): string {
  if (interruptingA !== undefined || !family) return "stated in the plan";
  return familyData(family).breakingCapacityConfirmed === "memory"
    ? `its family, ${unconfirmed}`
    : "its family";
}

function leastAt(
  { least }: DeviceFault,
  { place }: ProtectiveDevice,
  { conductors }: JudgedNetwork["network"],
): string | null {
  if (!least) return null;
  if (least.conductor === place.conductor) return "itself";
  const at = conductors[least.conductor];
  return at ? atStart(conductorInWords(at)).replace(/^The /, "") : null;
}
