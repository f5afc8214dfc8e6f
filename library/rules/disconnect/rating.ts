import { certainCurrentThrough } from "../../analysis/current-through.ts";
import { greatestStarts, type Start } from "../../analysis/motor-start.ts";
import { deviceLimiting } from "../../analysis/network/faults/thin-returns.ts";
import { joinsBatteries } from "../../analysis/network/topology/batteries-beside.ts";
import { ratingBehindA } from "../../analysis/rating-behind.ts";
import { isMotor } from "../../model/motor-starts.ts";
import { isStarterMotor } from "../../model/part-roles.ts";
import { type Contacts, hasContacts } from "../../model/switch-positions.ts";
import { contactsForSeconds } from "../../standards/machine-practice.ts";
import { batteryMasterSwitch, ratingOverContinuousLoad } from "../../standards/protection-rules.ts";
import {
  type AboveRating,
  aboveStatedRating,
  isAbove,
  severityBehind,
  statedRating,
} from "../current-through.ts";
import { placedDevice, relatedDevice } from "../fixes/placed-device.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { atPart, kindInWords, partInWords, relatedPart, scenarioInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const disconnectRating = defineRule<AboveRating | AtStart | BehindGreaterDevice>({
  id: "disconnect/rating",
  title: "Rating of a switch exceeded",
  formerTitles: ["Disconnect rating exceeded", "More current than the disconnect is rated for"],
  severity: "warning",
  why: "Contacts that carry more than their rating heat up, pit and weld: the disconnect, relay or selector switch no longer opens.",
  sources: [
    statedRating,
    batteryMasterSwitch,
    contactsForSeconds.source,
    ownRequirement("A device before a battery switch lets no more through it for hours than its rating."),
    ratingOverContinuousLoad.source,
  ],
  fixable: false,
  acceptable: true,
  restsOn: "currents",
  // An error from twice the heat of the rating. Needs the current through each disconnect, relay and selector switch in every scenario
  // that lasts, and that of starts.
  check: (plan) => [
    ...aboveStatedRating(plan, "disconnect/rating"),
    ...inNetwork(plan, (judged) => aboveAtStarts(judged)),
    ...inNetwork(plan, (judged) => behindGreaterDevices(judged)),
  ],
  message(values) {
    if ("ratingA" in values) {
      const [rating, rated] = formatDistinctWithUnit(values.ratingA, values.ratedA, "A");
      return `No device below ${rating} protects this ${values.kind}, and its rating is ${rated} (ratedA): further loads could overload it (common practice, no source). Put a fuse of at most ${rated} before it, or use one with a higher rating.`;
    }
    if ("motor" in values) return atStartInWords(values);
    const { kind, currentA, estimate, ratedA, scenario } = values;
    const [carries, rated] = formatDistinctWithUnit(currentA, ratedA, "A");
    return `Carries ${carries} ${scenario}${estimate}, its rating is ${rated} (ratedA): use a ${kind} with a higher one, or split its loads.`;
  },
});

/** A device of a higher rating is all that protects a disconnect. */
interface BehindGreaterDevice {
  readonly kind: string;
  readonly ratingA: number;
  readonly ratedA: number;
}

/**
 * No current of the plan exceeds the rating yet. Information up to the rating that headroom asks for. Silent where the devices behind the switch let no more through together, and on
 * relays and selector switches, whose contacts have sources at both sides.
 */
function behindGreaterDevices(judged: JudgedNetwork): Found<BehindGreaterDevice>[] {
  const { network, result } = judged;
  return network.parts.flatMap((part): Found<BehindGreaterDevice>[] => {
    if (part.kind !== "disconnect") return [];
    const { ratedA } = part;
    const limits = [part.terminals.line, part.terminals.load].flatMap(
      (terminal) => deviceLimiting(network, terminal) ?? [],
    );
    const device = limits.sort((one, other) => one.ratingA - other.ratingA)[0];
    const placed = device && placedDevice(network, device.index);
    if (
      !placed ||
      !exceeds(device.ratingA, ratedA) ||
      !exceeds(ratingBehindA(judged, part.terminals.load), ratedA)
    )
      return [];
    const current = certainCurrentThrough(result, part);
    if (current && isAbove(current.currentA, ratedA)) return [];
    return [
      {
        subject: part.name,
        at: atPart(part, "ratedA"),
        severity: severityBehind(device, ratedA),
        values: { kind: kindInWords(part), ratingA: device.ratingA, ratedA },
        related: [relatedDevice(placed)],
      },
    ];
  });
}

/** The start of a motor, with a current above what the contacts may carry for seconds. */
interface AtStart {
  readonly kind: string;
  readonly motor: string;
  readonly currentA: number;
  /** Absent for the motor alone. */
  readonly scenario?: string;
  readonly ratedA: number;
  /** A charging relay, which may be closed at a start. */
  readonly isRare: boolean;
  readonly forSeconds: { readonly stated: boolean; readonly limitA: number };
}

function atStartInWords({ kind, motor, currentA, scenario, ratedA, isRare, forSeconds }: AtStart): string {
  const { stated, limitA } = forSeconds;
  const [carries, limit] = formatDistinctWithUnit(currentA, limitA, "A");
  const at = `Carries ${carries}${scenario ? ` ${scenario}` : ""} at the start of ${motor}`;
  if (stated)
    return `${at}, its rating for seconds is ${limit} (momentaryA): use a ${kind} with a higher one.`;
  if (isRare)
    return `${at} if it is closed by then, its rating is ${withUnit(ratedA, "A")} for hours (ratedA): state its rating for seconds (momentaryA), or see that it closes only with the engine running.`;
  const hours = `its rating is ${withUnit(ratedA, "A")} for hours (ratedA)`;
  return isAbove(currentA, limitA)
    ? `${at}; ${hours}, which makes ${limit} for seconds (${sourceInWords(contactsForSeconds.source)}): state its own rating for seconds (momentaryA), or use a ${kind} with a higher one.`
    : `${at}, ${hours}: state its rating for seconds (momentaryA), which is commonly higher.`;
}

/**
 * Each switch with its greatest start. If its rating for seconds is not stated, only the starter motors of engines count, which are cranked for
 * seconds: others start in less than one.
 */
function aboveAtStarts({ network, result }: JudgedNetwork): Found<AtStart>[] {
  const switches = network.parts.filter(hasContacts);
  const motors = network.parts.filter(isMotor);
  if (switches.length === 0 || motors.length === 0) return [];
  const startsOf = {
    all: greatestStarts(network, result, motors),
    starters: greatestStarts(network, result, motors.filter(isStarterMotor)),
  };
  return switches.flatMap((part) => {
    const { index, ratedA, momentaryA } = part;
    const stated = momentaryA !== undefined;
    const start = (stated ? startsOf.all : startsOf.starters)({ at: "part", part: index });
    if (!start || !isAbove(start.currentA, momentaryA ?? ratedA)) return [];
    const limitA = momentaryA ?? ratedA * contactsForSeconds.timesRating;
    // A charging relay carries a part of a start only if it is closed before the engine runs.
    const isRare = !stated && part.kind === "relay" && joinsBatteries(network, part);
    return [
      {
        subject: part.name,
        at: atPart(part, stated ? "momentaryA" : "ratedA"),
        severity: isAbove(start.currentA, limitA) && !isRare ? "warning" : "info",
        values: { ...valuesOf(part, start, network), isRare, forSeconds: { stated, limitA } },
        related: [relatedPart(start.motor)],
      },
    ];
  });
}

function valuesOf(part: Contacts, { motor, currentA, scenario }: Start, network: JudgedNetwork["network"]) {
  return {
    kind: kindInWords(part),
    motor: partInWords(motor),
    currentA,
    ...(scenario !== undefined && { scenario: scenarioInWords(network, scenario) }),
    ratedA: part.ratedA,
  };
}
