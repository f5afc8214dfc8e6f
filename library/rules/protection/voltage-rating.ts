import { sourceVoltages } from "../../analysis/charging-voltages.ts";
import {
  chooseDevice,
  familyData,
  leastRatedV,
  suitableDevices,
  voltageToState,
} from "../../analysis/choose-device.ts";
import type { Family } from "../../analysis/made-ratings.ts";
import type { Protection } from "../../model/run.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { deviceVoltage } from "../../standards/protection-rules.ts";
import type { At, ProposedFix } from "../finding.ts";
import { atFamily, changesOf, chosenChanges, chosenInWords, chosenKind } from "../fixes/chosen-device.ts";
import { type Device, type JudgedDevice, perDevice, theDevice } from "../fixes/judged-devices.ts";
import { isAtBranch, isInPanel, placedDevice } from "../fixes/placed-device.ts";
import { defineRule, type JudgedNetwork, type JudgedPlan, within } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { sourceInWords, unconfirmed } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const voltageRating = defineRule<Values>({
  id: "protection/voltage-rating",
  title: "Device voltage rating below system voltage",
  formerTitles: ["Fuse or breaker made for less voltage"],
  severity: "error",
  why: "A fuse that opens above its voltage rating does not extinguish its arc: the current goes on, through a burning fuse.",
  sources: [deviceVoltage],
  fixable: true,
  acceptable: true,
  // Needs the voltage ratings of families, and the output voltages of the chargers on the same conductors. An error if the device
  // is made for less than either, a warning if it may be, and advice where only its marking shows it.
  check: (plan) => {
    const voltages = plan.network && sourceVoltages(plan.network.network);
    return perDevice(plan, (judged) => {
      const source = voltages?.get(judged.properties.record);
      const found = judgedAt(judged, source);
      if (!found) return [];
      const named =
        found.values.what === "of any family" ? namedFamily(plan, judged, found.values, source) : found;
      return [{ ...found, ...named, at: placeOf(judged, found.on) }];
    });
  },
  message({ what, device, family, voltageV, from, madeForV, source, wayOut: way, ...values }) {
    const which = family ? ` (${family}${values.unconfirmed ? `, ${unconfirmed}` : ""})` : "";
    const [made, voltage] = formatDistinctWithUnit(madeForV.at(-1) ?? 0, voltageV, "V");
    const system = `${hasVoltage[from]} ${voltage}`;
    switch (what) {
      case "made for less":
        return `${theDevice(device)} is rated ${made}${which}, its circuit ${system} (${source}): ${way}.`;
      case "made for both": {
        const versions = madeForV.map((version) => withUnit(version, "V")).join(" or ");
        return `${theDevice(device)} may be rated ${versions}${which}, its circuit ${system} (${source}): ${way}.`;
      }
      case "told by its marking":
      case "of any family":
        return `${theDevice(device)} may be rated below the ${voltage} of its ${from === "modules" ? "modules in open circuit" : "circuit"} (${source}): ${way}.`;
    }
  },
});

interface Values {
  readonly what: "made for less" | "made for both" | "told by its marking" | "of any family";
  readonly device: Device;
  /** Absent if the plan states the voltage itself. */
  readonly family?: Family;
  /** That of its circuit, V: the nominal one, that of a charger, or that of modules in open circuit. */
  readonly voltageV: number;
  readonly from: "system" | "charger" | "modules";
  /** Voltages for which it is made, in ascending order, V; empty if only its marking shows it. */
  readonly madeForV: readonly number[];
  /** They are from memory, not read. */
  readonly unconfirmed: boolean;
  readonly source: string;
  readonly wayOut: string;
}

/** In front of the voltage of a circuit. */
const hasVoltage: Readonly<Record<Values["from"], string>> = {
  system: "has",
  charger: "is charged with",
  modules: "has, with its modules in open circuit,",
};

function placeOf(judged: JudgedDevice, on: FoundAtDevice["on"]): At {
  if (on === "rating") return judged.at;
  return on === "family" ? atFamily(judged) : within(judged.properties, on);
}

interface FoundAtDevice {
  readonly on: "family" | "ratedV" | "rating";
  readonly severity?: "info" | "warning";
  readonly values: Values;
  readonly fixes: ProposedFix[];
}

/**
 * By the nominal voltage, as 33 CFR 183.455(d) asks; then by the charging voltage, if the device is not made for that one. A
 * marking that equals the nominal voltage may name the system it is for: information.
 */
function judgedAt(judged: JudgedDevice, source: SourceVoltage | undefined): FoundAtDevice | undefined {
  const { systemV, protection } = judged;
  // A device opens modules in full sun against all their voltage: no nominal one counts there.
  if (source?.of === "modules")
    return judgedByVoltage(judged, { voltageV: Math.max(systemV, source.voltageV), from: "modules" });
  const byNominal = judgedByVoltage(judged, { voltageV: systemV, from: "system" });
  const isMadeForLess = byNominal?.values.what === "made for less";
  if (isMadeForLess || !source || !exceeds(source.voltageV, systemV)) return byNominal;
  const byCharging = judgedByVoltage(judged, { voltageV: source.voltageV, from: "charger" });
  if (byCharging?.values.what !== "made for less") return byNominal;
  return mayNameSystem(protection, systemV) ? { ...byCharging, severity: "info" } : byCharging;
}

/** 32 V on a fuse for 32 V by its standard is the voltage that it interrupts, also where that is the nominal one. */
function mayNameSystem({ family, ratedV }: Protection, systemV: number): boolean {
  if (ratedV !== systemV) return false;
  const ofFamilyV: readonly number[] = family ? familyData(family).ratedVoltagesV : [];
  return !ofFamilyV.includes(ratedV);
}

type SourceVoltage = NonNullable<ReturnType<ReturnType<typeof sourceVoltages>["get"]>>;

type Voltage = Pick<Values, "voltageV" | "from">;

/** A voltage stated in the plan overrides its family's. Undefined: there is no finding. */
function judgedByVoltage(judged: JudgedDevice, voltage: Voltage): FoundAtDevice | undefined {
  return judgedByMarking(judged, voltage) ?? judgedByFamily(judged, voltage);
}

function judgedByMarking(judged: JudgedDevice, voltage: Voltage): FoundAtDevice | undefined {
  const { voltageV } = voltage;
  const { ratedV } = judged.protection;
  if (ratedV === undefined || !exceeds(voltageV, ratedV)) return undefined;
  const fixes = otherDevice(judged, voltageV);
  return {
    on: "ratedV",
    values: {
      what: "made for less",
      device: judged.device,
      ...voltage,
      madeForV: [ratedV],
      unconfirmed: false,
      source: sourceInWords(deviceVoltage),
      wayOut: wayOut(fixes, oneThatIsMarked(voltageV)),
    },
    fixes,
  };
}

function judgedByFamily(judged: JudgedDevice, voltage: Voltage): FoundAtDevice | undefined {
  const { voltageV } = voltage;
  const { family, ratedV } = judged.protection;
  if (ratedV !== undefined) return undefined;
  if (!family) return ofAnyFamily(judged, voltage);
  const { ratedVoltagesV, ratedVoltageConfirmed } = familyData(family);
  const told = {
    device: judged.device,
    family,
    ...voltage,
    madeForV: ratedVoltagesV,
    unconfirmed: ratedVoltageConfirmed === "memory",
    source: sourceInWords(deviceVoltage),
  };
  const needed = voltageToState(family, voltageV);
  if (needed === "none") {
    const fixes = otherDevice(judged, voltageV);
    const way = wayOut(fixes, oneThatIsMarked(voltageV));
    return { on: "family", values: { ...told, what: "made for less", wayOut: way }, fixes };
  }
  if (needed !== undefined) {
    const fixes = [theOneFor(judged, needed)];
    const values: Values = { ...told, what: "made for both", wayOut: wayOut(fixes, "") };
    return { on: "family", severity: "warning", values, fixes };
  }
  if (ratedVoltagesV.length > 0 || !exceeds(voltageV, leastRatedV)) return undefined;
  const values: Values = { ...told, what: "told by its marking", wayOut: oneThatIsMarked(voltageV) };
  return { on: "family", severity: "info", values, fixes: [] };
}

/** To leave the family out is no better than to state one that is also made for less. */
function ofAnyFamily({ device }: JudgedDevice, voltage: Voltage): FoundAtDevice | undefined {
  if (device.kind === "breaker" || !exceeds(voltage.voltageV, leastRatedV)) return undefined;
  const values: Values = {
    what: "of any family",
    device,
    ...voltage,
    madeForV: [],
    unconfirmed: false,
    source: sourceInWords(deviceVoltage),
    wayOut: oneThatIsMarked(voltage.voltageV),
  };
  return { on: "rating", severity: "warning", values, fixes: [] };
}

/**
 * The finding about a fuse of no stated family with an offer: a family that is made for the voltage and fits the place. In a
 * position of a panel that is a blade fuse. At a panel, bus or switch protection/interrupting judges the breaking capacity for the
 * whole place, as another device may help; elsewhere the fuse is one that interrupts a short right behind it.
 */
function namedFamily(
  { network }: JudgedPlan,
  judged: JudgedDevice,
  values: Values,
  source: SourceVoltage | undefined,
): Pick<FoundAtDevice, "values" | "fixes"> | undefined {
  const { ratingA, interruptingA } = judged.protection;
  const systemV = Math.max(values.voltageV, source?.voltageV ?? 0);
  const index = network && deviceAt(network).get(placeKey(judged));
  const placed = index === undefined ? undefined : placedDevice(network!.network, index);
  const shortA = network && index !== undefined ? (shortsBehind(network).get(index) ?? 0) : 0;
  const isBranch = placed !== undefined && isAtBranch(network!.network, placed);
  const need = { ratingA, systemV, interruptA: isBranch ? 0 : (interruptingA ?? shortA) };
  const chosen =
    placed && isInPanel(network!.network, placed)
      ? suitableDevices(need).find(({ family }) => familyData(family).form.startsWith("blade"))
      : chooseDevice(need);
  if (!chosen) return undefined;
  const fix: ProposedFix = {
    title: `Use ${chosenInWords(chosen)}`,
    kind: "suggestion",
    changes: chosenChanges(chosen, judged),
  };
  return {
    values: { ...values, wayOut: `${values.wayOut}, such as ${chosenInWords(chosen)}` },
    fixes: [fix],
  };
}

function placeKey({ properties, device }: Pick<JudgedDevice, "properties" | "device">): string {
  return `${properties.record} ${device.end ?? ""}`;
}

/** The index of each device of a network by {@link placeKey}. */
const deviceAt = workedOutOnce(({ network }: JudgedNetwork): ReadonlyMap<string, number> => {
  const found = new Map<string, number>();
  for (const { index } of network.devices) {
    const placed = placedDevice(network, index);
    if (placed) found.set(placeKey(placed), index);
  }
  return found;
});

/** The greatest short right behind each device, A, by its index. */
const shortsBehind = workedOutOnce(
  ({ result }: JudgedNetwork): ReadonlyMap<number, number> =>
    new Map(result.faults.devices.map(({ device, greatestA }) => [device, greatestA])),
);

function oneThatIsMarked(voltageV: number): string {
  return `use one marked for ${withUnit(voltageV, "V")} DC or more, and state it (ratedV)`;
}

/** A suggestion, never a repair: the plan would only state the device; it must then really be bought. */
function theOneFor(judged: JudgedDevice, ratedV: number): ProposedFix {
  return {
    title: `Use the one for ${withUnit(ratedV, "V")}`,
    kind: "suggestion",
    changes: changesOf(judged, { ratedV }),
  };
}

/**
 * The same rating in a family that is made for the voltage and interrupts no less. Empty if the existing device's interrupting
 * capacity is unknown.
 */
function otherDevice({ device, protection, properties }: JudgedDevice, systemV: number): ProposedFix[] {
  const { ratingA, family, interruptingA } = protection;
  // A part that is a breaker cannot become a fuse.
  if (device.kind === "breaker" && device.end === undefined) return [];
  const interruptA = interruptingA ?? (family && familyData(family).breakingCapacityA);
  if (!interruptA) return [];
  const chosen = chooseDevice({ ratingA, systemV, interruptA }, family);
  if (!chosen || chosenKind(chosen) === "suggestion") return [];
  return [
    {
      title: `Use ${chosenInWords(chosen)}`,
      kind: "repair",
      changes: chosenChanges(chosen, { protection, properties }),
    },
  ];
}
