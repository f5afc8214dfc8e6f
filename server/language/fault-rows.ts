import { greatestVoltage } from "../../library/analysis/charging-voltages.ts";
import { familyData, interruptsA } from "../../library/analysis/choose-device.ts";
import type { DeviceFault } from "../../library/analysis/network-result.ts";
import type { Network, NetworkConductor, ProtectiveDevice } from "../../library/model/network.ts";
import type { DevicePart } from "../../library/model/part-roles.ts";
import type { Protection } from "../../library/model/run.ts";
import { placedDevice, placedInWords } from "../../library/rules/fixes/placed-device.ts";
import { deviceKind } from "../../library/rules/fixes/sized-fix.ts";
import type { JudgedNetwork } from "../../library/rules/rule.ts";
import { formatDistinct, formatExact, withUnit } from "../../library/rules/wording/format-number.ts";
import { conductorInWords, listInWords, partInWords } from "../../library/rules/wording/part-in-words.ts";
import { sourceInWords, unconfirmed } from "../../library/rules/wording/source-in-words.ts";
import { limitRow, marginInWords } from "./limit-row.ts";
import { markdownWords } from "./plain-words.ts";

/** The dead-short currents through a conductor and through the protective devices in it, a line each. */
export function conductorFaultRows(
  { network, result: { faults } }: JudgedNetwork,
  conductor: number,
): string[] {
  const isOwn = ({ device }: DeviceFault) => conductorOf(network, device) === conductor;
  const own = faults.devices.filter(isOwn);
  const fault = faults.conductors[conductor];
  if (own.length === 0 && fault?.greatestA === undefined) return [];
  const rows = own.flatMap((device) => throughDevice(network, device, own.length > 1));
  if (fault?.greatestA === undefined) return rows;
  const opening = fault.protectedBy.flatMap((device) => faults.devices[device] ?? []);
  const others = opening.filter((device) => !isOwn(device));
  const by =
    opening.length === 0
      ? "**no device opens it**"
      : others.length === 0
        ? ""
        : `opened by ${markdownWords(listInWords(others.flatMap((device) => placedDevice(network, device.device) ?? []).map(placedInWords)))}`;
  return [
    ...rows,
    limitRow(
      "Dead short at its start",
      `up to ${withUnit(fault.greatestA, "A")}`,
      [fault.estimated ? estimated : "", by].filter((part) => part !== "").join("; "),
      "",
      "",
    ),
  ];
}

/** The dead-short currents through a fuse or breaker that is a part of its own, and its opening times if the plan states them. */
export function deviceFaultRows({ network, result: { faults } }: JudgedNetwork, part: DevicePart): string[] {
  const stated = network.devices.find(({ place }) => place.at === "part" && place.part === part.index);
  if (!stated) return [];
  const fault = faults.devices.find(({ device }) => device === stated.index);
  const why = "no source reaches it, or it is already in a short";
  return [
    ...(fault
      ? throughDevice(network, fault, false)
      : [limitRow(`Dead short behind the ${deviceKind(stated)}`, "not worked out", why, "", "")]),
    ...openingRow(stated),
  ];
}

/** Every reader of a computed short-circuit current must know that it is based on a usual figure, not on the builder's. */
const estimated = "from a usual internal resistance, not a stated one";

/** The maximum and the minimum fault through a device. `severalHere`: it is one of two in the same conductor. */
function throughDevice(network: Network, device: DeviceFault, severalHere: boolean): string[] {
  return [interruptingRow(network, device, severalHere), ...leastRow(network, device)];
}

function interruptingRow(network: Network, device: DeviceFault, severalHere: boolean): string {
  const stated = network.devices[device.device] as ProtectiveDevice;
  const end = severalHere
    ? "end" in stated.place && stated.place.end === "near"
      ? " at the near end"
      : " at the far end"
    : "";
  const what = `Dead short behind the ${deviceKind(stated)}${end}`;
  const sources = device.sources.flatMap((part) => network.parts[part] ?? []).map(partInWords);
  const fed = [
    sources.length > 0 ? `fed by ${markdownWords(listInWords(sources, 3))}` : "",
    device.estimated ? estimated : "",
  ].filter((part) => part !== "");
  const capacityA = interruptsA(stated, greatestVoltage(network, stated));
  if (capacityA === undefined) {
    // Unknown at any voltage, or only above the one for which it is stated.
    const here = interruptsA(stated) === undefined ? "" : " at this voltage";
    const unknown = [...fed, `its interrupting rating${here} is not known, so not judged`].join("; ");
    return limitRow(what, `up to ${withUnit(device.greatestA, "A")}`, unknown, "", "");
  }
  const [greatest, can] = formatDistinct(device.greatestA, capacityA);
  return limitRow(
    what,
    `up to ${greatest} A`,
    [...fed, `can interrupt ${can} A`].join("; "),
    marginInWords(capacityA - device.greatestA, "A"),
    capacitySource(stated),
  );
}

function capacitySource({ interruptingA, family }: Protection): string {
  if (interruptingA !== undefined || !family) return "stated in the plan";
  return familyData(family).breakingCapacityConfirmed === "memory" ? `${family}, ${unconfirmed}` : family;
}

/** The minimum fault current that a device has to open. */
function leastRow(network: Network, { device, least, leastNotWorkedOut }: DeviceFault): string[] {
  if (leastNotWorkedOut) {
    const why = "more than 64 devices feed the same short";
    return [limitRow("Minimum fault that it must clear", "not worked out", why, "", "")];
  }
  if (!least) return [];
  if (least.isAtMost) {
    const why = "a length on the way is not known";
    return [limitRow("Minimum fault that it must clear", "not judged", why, "", "")];
  }
  const at = network.conductors[least.conductor] as NetworkConductor;
  const own = conductorOf(network, device);
  const where = least.conductor === own ? "its own far end" : `the far end of ${conductorInWords(at)}`;
  return [
    limitRow(
      "Minimum fault that it must clear",
      withUnit(least.currentA, "A"),
      `at ${markdownWords(where)}`,
      "",
      "",
    ),
  ];
}

/** "5 to 60 s at 200 % of its rating, up to 1 s at 600 %". */
function openingRow({ opening }: Protection): string[] {
  if (!opening) return [];
  const times = opening.gates.flatMap(({ percentOfRating, minS, maxS }, index) => {
    if (maxS === null) return [];
    const from = minS === null ? "up to" : `${formatExact(minS)} to`;
    return `${from} ${formatExact(maxS)} s at ${formatExact(percentOfRating)} %${index === 0 ? " of its rating" : ""}`;
  });
  return [limitRow("Opening times", times.join(", "), "", "", sourceInWords(opening.source))];
}

/** The index of the conductor that a device is in; undefined for a part of its own. */
function conductorOf({ devices }: Network, device: number): number | undefined {
  const place = devices[device]?.place;
  return place?.at === "conductor" ? place.conductor : undefined;
}
