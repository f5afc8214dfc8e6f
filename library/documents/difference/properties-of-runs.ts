import type { Protection, Run } from "../../model/run.ts";
import { useInWords } from "../../model/use-in-words.ts";
import { sizeInWords } from "../../rules/fixes/sized-fix.ts";
import { formatExact } from "../../rules/wording/format-number.ts";
import { metresPer } from "../../rules/wording/lengths.ts";
import { propertiesInShort } from "./properties-in-short.ts";
import type { Property } from "./property.ts";
import { count, type NamedEnd, quantity, said, stated, text } from "./property.ts";

/**
 * The values that a builder states of a circuit or a cable, in comparable form: each in its written unit. Values not stated are
 * there with their defaults, because the run was judged by these.
 */
export function runProperties(circuit: Run, ends: readonly NamedEnd[]): Property[] {
  return (Object.keys(readers) as Read[]).flatMap((field) => {
    const read = readers[field];
    return read ? read(circuit, ends) : [];
  });
}

/** Fields that repeat another field, or are the plan's bookkeeping. */
type Ignored = "record" | "word" | "name" | "inNetwork" | "accept" | "partlyInvalid";
type Read = Exclude<keyof Run, Ignored>;
type Reader = (circuit: Run, ends: readonly NamedEnd[]) => Property[];

/**
 * In the order of the report. Null: reported by another field. The compiler reports a new field of the model that is missing
 * here.
 */
const readers: Readonly<Record<Read, Reader | null>> = {
  fromBattery: ({ fromBattery, inNetwork }, ends) =>
    inNetwork
      ? ends.map(({ property, end, text }) => ({
          ...{ id: property, words: endWords[property], value: { as: "end", end, text } },
        }))
      : said(fromBattery, "fromBattery", "begins at a battery"),
  toBattery: null,
  machineMaxA: null,
  maxFuseA: ({ maxFuseA, statesLoad }) =>
    statesLoad ? stated("maxFuseA", "largest fuse that its maker permits", maxFuseA, "A") : [],
  loadEstimate: null,
  nameStated: null,
  forHours: null,
  crankingFeed: null,
  loadA: ({ statesLoad, loadA, loadW }) =>
    !statesLoad || loadW !== undefined ? [] : [quantity("load", "load", loadA, "A")],
  loadIsOf: null,
  loadIsLeast: null,
  loadW: ({ loadW }) => stated("loadW", "load", loadW, "W"),
  statesLoad: null,
  loadAtV: null,
  lowestV: null,
  lowVoltageA: null,
  estimate: null,
  systemV: ({ systemV, word }) =>
    word === "cable" ? [] : [quantity("voltage", "nominal voltage", systemV, "V")],
  lengthsGiven: (circuit) => lengths(circuit),
  lengthsFrom: null,
  lengthUnit: null,
  // The difference of the layout reports them.
  places: null,
  place: null,
  positiveM: null,
  negativeM: null,
  conductor: ({ conductor }) => [text("size", "size", sizeInWords(conductor))],
  protection: ({ protection }) => device("protection", "protection", protection),
  protectionFarEnd: ({ protectionFarEnd }) =>
    device("protectionFarEnd", "protection at the far end", protectionFarEnd),
  insulationC: ({ insulationC, insulationStated }) => [
    {
      ...{ id: "insulationC", words: "insulation" },
      value: {
        ...{ as: "text", text: `${insulationC} °C${insulationStated ? "" : ", not stated"}` },
        compare: insulationC,
      },
    },
  ],
  insulationStated: null,
  // The part or the fuse that states it reports it.
  coolestTerminal: null,
  terminalSizes: ({ terminalSizes = [] }) =>
    terminalSizes.flatMap(({ largest, of }) =>
      // A part reports its own.
      of === undefined
        ? [text("largest", "largest conductor that its load takes", sizeInWords(largest))]
        : [],
    ),
  ambientC: ({ ambientC, engineSpace, ambientStated }) =>
    engineSpace && !ambientStated ? [] : [quantity("ambientC", "ambient", ambientC, "°C")],
  ambientStated: null,
  engineSpace: ({ engineSpace }) => said(engineSpace, "engineSpace", "in an engine space"),
  bundledWith: ({ bundledWith }) => [count("bundledWith", "other conductors in its bundle", bundledWith)],
  bundledWithStated: null,
  sheathed: ({ sheathed, duplex }) =>
    duplex === undefined
      ? said(sheathed, "sheathed", "in a sheath")
      : [text("sheathed", "in a sheath", duplex)],
  duplex: null,
  continuous: ({ continuous }) => said(continuous, "continuous", "continuous load"),
  continuousStated: null,
  critical: ({ critical }) => said(critical, "critical", "critical"),
  purpose: ({ purpose }) => said(purpose, "purpose", "use"),
  use: ({ use }) => said(use && useInWords(use), "hoursOfUse", "hours of use"),
  dropLimitPercent: ({ dropLimitPercent, word }) =>
    word === "cable" ? [] : [quantity("dropLimitPercent", "drop limit", dropLimitPercent, "%")],
  dropLimitStated: null,
  dropLimitSource: null,
  minimumV: ({ minimumV }) => stated("minimumV", "minimum voltage of the device", minimumV, "V"),
  maximumV: ({ maximumV }) => stated("maximumV", "maximum voltage of the device", maximumV, "V"),
  fedFromBothEnds: ({ fedFromBothEnds, inNetwork }) =>
    inNetwork ? [] : said(fedFromBothEnds, "fedFromBothEnds", "fed from both ends"),
  colour: ({ colour }) => said(colour, "colour", "colour"),
  returnColour: ({ returnColour }) => said(returnColour, "returnColour", "colour of the return"),
  label: ({ label }) => said(label, "label", "label"),
  termination: ({ termination }) => said(termination, "termination", "ends at its load"),
};

const endWords = { from: "from", to: "to", returnTo: "returns to" } as const;

/** A change from feet to metres with the same length is no change. */
function lengths({ lengthsGiven, lengthUnit, positiveM, negativeM, word }: Run): Property[] {
  if (positiveM === undefined || negativeM === undefined) return [];
  const length = (
    id: string,
    words: string,
    writtenAs: readonly (keyof Run["lengthsGiven"])[],
    lengthM: number,
  ): Property => {
    const given = writtenAs.flatMap((property) => lengthsGiven[property] ?? []);
    const inUnit = given[0] ?? lengthM / metresPer[lengthUnit];
    return {
      id,
      words,
      value: { as: "text", text: `${formatExact(inUnit)} ${lengthUnit}`, compare: lengthM },
    };
  };
  if (word === "cable") return [length("length", "length", ["lengthFt", "lengthM"], positiveM)];
  if (lengthsGiven.oneWayFt !== undefined || lengthsGiven.oneWayM !== undefined || positiveM === negativeM)
    return [
      length("length", "length one way", ["oneWayFt", "oneWayM", "positiveFt", "positiveM"], positiveM),
    ];
  return [
    length("length", "length of the positive", ["positiveFt", "positiveM"], positiveM),
    length("lengthOfReturn", "length of the return", ["negativeFt", "negativeM"], negativeM),
  ];
}

/** Each property of a protective device on its own: a change names the property. */
function device(id: string, words: string, protection: Protection | null): Property[] {
  if (!protection) return [];
  const { ratingA, family, familyStatedAt, distanceM, distanceGiven, interruptingA } = protection;
  const { ratedV, holderRatedA, terminalC, ambientC, price } = protection;
  const [distanceIn, distanceMm] = [distanceGiven?.distanceIn, distanceGiven?.distanceMm];
  const distance =
    distanceIn === undefined
      ? `${formatExact(distanceMm ?? (distanceM ?? 0) * 1000)} mm`
      : `${formatExact(distanceIn)} in`;
  return [
    quantity(id, words, ratingA, "A"),
    // A panel that states the family of its fuses reports it.
    ...said(familyStatedAt === undefined ? family : undefined, `${id}.family`, `${words}, family`),
    ...(distanceM === undefined
      ? []
      : [
          {
            ...{ id: `${id}.distance`, words: `${words}, from the source of power` },
            value: { as: "text", text: distance, compare: distanceM } as const,
          },
        ]),
    ...stated(`${id}.interruptingA`, `${words}, interrupting rating`, interruptingA, "A"),
    ...stated(`${id}.ratedV`, `${words}, voltage rating`, ratedV, "V"),
    ...stated(`${id}.holderRatedA`, `${words}, rating of its holder`, holderRatedA, "A"),
    ...stated(`${id}.terminalC`, `${words}, temperature rating of its terminals`, terminalC, "°C"),
    ...stated(`${id}.ambientC`, `${words}, temperature of its place`, ambientC, "°C"),
    ...propertiesInShort(protection, { id: `${id}.`, words: `${words}, ` }),
    ...(price === undefined ? [] : [count(`${id}.price`, `${words}, price`, price)]),
  ];
}
