import { greatestStarts, type Start } from "../../analysis/motor-start.ts";
import { joinsBatteries } from "../../analysis/network/topology/batteries-beside.ts";
import { isMotor } from "../../model/motor-starts.ts";
import { isStarterMotor } from "../../model/part-roles.ts";
import { type Contacts, hasContacts } from "../../model/switch-positions.ts";
import { contactsForSeconds } from "../../standards/machine-practice.ts";
import { type AboveRating, aboveStatedRating, isAbove, statedRating } from "../current-through.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import { formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { atPart, kindInWords, partInWords, relatedPart, scenarioInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const disconnectRating = defineRule<AboveRating | AtStart>({
  id: "disconnect/rating",
  title: "Rating of a switch exceeded",
  formerTitles: ["Disconnect rating exceeded", "More current than the disconnect is rated for"],
  severity: "warning",
  why: "Contacts that carry more than their rating heat up, pit and weld: the disconnect, relay or selector switch no longer opens.",
  sources: [statedRating, contactsForSeconds.source],
  fixable: false,
  acceptable: true,
  restsOn: "currents",
  // Needs the current through each disconnect, relay and selector switch in every scenario that lasts, and that of starts.
  check: (plan) => [
    ...aboveStatedRating(plan, "disconnect/rating"),
    ...inNetwork(plan, (judged) => aboveAtStarts(judged)),
  ],
  message(values) {
    if ("motor" in values) return atStartInWords(values);
    const { kind, currentA, estimate, ratedA, scenario } = values;
    const [carries, rated] = formatDistinctWithUnit(currentA, ratedA, "A");
    return `Carries ${carries} ${scenario}${estimate}, its rating is ${rated} (ratedA): use a ${kind} with a higher one, or split its loads.`;
  },
});

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
