import { greatestVoltage } from "../../analysis/charging-voltages.ts";
import { familyData, interruptsA } from "../../analysis/choose-device.ts";
import type { DeviceFault } from "../../analysis/network-result.ts";
import {
  conductorWith,
  type NetworkConductor,
  type Part,
  type ProtectiveDevice,
} from "../../model/network.ts";
import type { Protection } from "../../model/run.ts";
import type { JudgedNetwork } from "../../rules/rule.ts";
import { atStart, conductorInWords, listInWords } from "../../rules/wording/part-in-words.ts";
import { unconfirmed } from "../../rules/wording/source-in-words.ts";
import type { Cell, Table } from "../table.ts";
import { numbers, quantity, tableOf, words } from "../table-of.ts";
import { findingsAbout, quantityBeside } from "./cells.ts";
import type { ReportContext } from "./chapter.ts";
import { deviceInFull } from "./runs.ts";

/** The maximum and minimum fault current through each protective device, and its interrupting rating. */
export function shortCircuitTable({ network, result }: JudgedNetwork, { numbered }: ReportContext): Table {
  const faults = result.faults.devices.flatMap((fault): StatedFault[] => {
    const stated = network.devices[fault.device];
    const on = stated && placeOf(network, stated);
    return on
      ? [{ ...fault, on, stated, capacityA: interruptsA(stated, greatestVoltage(network, stated)) }]
      : [];
  });
  return tableOf<StatedFault>(
    {
      id: "shorts",
      title: "Short circuits at fuses and breakers",
      notes: [
        ...(result.faults.devices.some(({ estimated }) => estimated)
          ? [
              "Estimated: it follows from an internal resistance that is usual for the chemistry, not stated in the plan (common practice, no source).",
            ]
          : []),
        ...(faults.some(({ capacityA }) => capacityA === undefined)
          ? [
              "Not known: neither the plan nor the standard of its family states its interrupting rating at the voltage of its circuit; it was not judged.",
            ]
          : []),
      ],
    },
    [
      words("conductor", "In", ({ on, stated: { place } }) =>
        place.at === "conductor" && place.end === "far" ? `${on.name}, far end` : on.name,
      ),
      words("device", "Fuse or breaker", ({ stated }) => deviceInFull(stated)),
      words("fedBy", "Fed by", ({ sources }) =>
        listInWords(
          sources.flatMap((part) => network.parts[part]?.name ?? []),
          3,
        ),
      ),
      numbers("greatestA", "Greatest, A", greatestCell),
      numbers("interruptsA", "Can interrupt, A", ({ greatestA, capacityA }) =>
        capacityA === undefined ? "not known" : quantityBeside(capacityA, greatestA),
      ),
      words("known", "According to", ({ stated, capacityA }) =>
        capacityA === undefined ? null : capacitySource(stated),
      ),
      numbers("leastA", "Least, A", leastIn),
      words("leastAt", "Short at the far end of", (fault) => leastAt(fault, network)),
      findingsAbout(numbered, ({ on }) => on.name),
    ],
    faults,
  );
}

/** With the device's conductor, or the part that it is, and its values. */
interface StatedFault extends DeviceFault {
  readonly on: NetworkConductor | Part;
  readonly stated: ProtectiveDevice;
  /** undefined: not known. */
  readonly capacityA: number | undefined;
}

function greatestCell({ greatestA, estimated, capacityA }: StatedFault): Cell {
  const cell = capacityA === undefined ? quantity(greatestA) : quantityBeside(greatestA, capacityA);
  return estimated ? { ...cell, text: `${cell.text} estimated` } : cell;
}

function leastIn({ least, leastNotWorkedOut }: DeviceFault) {
  if (least?.isAtMost) return "not judged";
  if (least) return quantity(least.currentA);
  return leastNotWorkedOut ? "not worked out" : "none";
}

function capacitySource({ interruptingA, family }: Protection): string {
  if (interruptingA !== undefined || !family) return "stated in the plan";
  return familyData(family).breakingCapacityConfirmed === "memory"
    ? `its family, ${unconfirmed}`
    : "its family";
}

function leastAt({ least, on }: StatedFault, { conductors }: JudgedNetwork["network"]): string | null {
  if (!least || least.isAtMost) return null;
  if (conductors[least.conductor] === on) return "itself";
  const at = conductors[least.conductor];
  return at ? atStart(conductorInWords(at)).replace(/^The /, "") : null;
}

function placeOf(
  network: JudgedNetwork["network"],
  device: ProtectiveDevice,
): NetworkConductor | Part | undefined {
  return device.place.at === "part" ? network.parts[device.place.part] : conductorWith(network, device);
}
