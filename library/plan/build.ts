import type { Colour } from "./colour.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";
import type { InsulationC } from "./sizes.ts";
import type { SpoolInput } from "./spool.ts";
import type { NominalVoltage } from "./voltage.ts";

/**
 * Settings of the whole build, which its circuits then need not repeat. Call it at most once in a plan.
 * It applies to every circuit of the plan, before it or after it. A circuit's own property always takes precedence.
 *
 * Example: `build({ name: "Library bus", voltage: 24, insulationC: 105 })`
 *
 * @returns The settings as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function build(settings: BuildInput): BuildSettings {
  return frozenPlanData(settings, "build") as BuildSettings;
}

/** The result of {@link build}: its settings, frozen. */
export type BuildSettings = BuildInput & {
  readonly kind: "build";
  /** Number of the call that made it. */
  readonly id: number;
};

/** The input of {@link build}. Every property may be left out. */
export type BuildInput = BuildOptions & (EndSlackInMillimetres | EndSlackInInches);

interface EndSlackInInches {
  /**
   * Extra length cut at each end of a conductor, for stripping and termination, in inches. 0 to 40. Give `endSlackIn` or
   * `endSlackMm`, not both. It adds to the length that is cut and bought, not to the voltage drop.
   *
   * Left out: taken as 100 mm at each end.
   *
   * Example: `endSlackIn: 6`
   */
  readonly endSlackIn?: number;
  readonly endSlackMm?: GiveOnlyOneOf.endSlackIn_or_endSlackMm;
}

interface EndSlackInMillimetres {
  /**
   * Extra length cut at each end of a conductor, for stripping and termination, in millimetres. 0 to 1,000.
   * Give `endSlackIn` or `endSlackMm`, not both. It adds to the length that is cut and bought, not to the voltage drop.
   *
   * Left out: taken as 100 mm at each end.
   *
   * Example: `endSlackMm: 150`
   */
  readonly endSlackMm: number;
  readonly endSlackIn?: GiveOnlyOneOf.endSlackIn_or_endSlackMm;
}

/** Settings of the whole build, and its details for lists and labels. Every property may be left out. */
interface BuildOptions {
  /**
   * Name of the build, in lists and reports.
   *
   * Left out: taken as "the build".
   *
   * Example: `name: "Library bus"`
   */
  readonly name?: string;
  /**
   * Nominal voltage of the system, V: 12, 24, 48, or another number from 1 to 50; or 51.2. 12.8, 25.6 and 51.2 V
   * are labels of LiFePO4 batteries, and mean 12, 24 and 48 V.
   *
   * Left out: taken as 12 V.
   *
   * Example: `voltage: 24`
   */
  readonly voltage?: NominalVoltage;
  /**
   * The kind of build: `"boat with petrol engine"` (inboard, for propulsion or power), `"boat"` (any other, outboards included),
   * `"vehicle"` or `"building"`. 33 CFR 183, Subpart I is law for the first kind only, and messages say so.
   *
   * Left out: taken as not known, and messages name the kind that the law binds.
   *
   * Example: `installedIn: "vehicle"`
   */
  readonly installedIn?: "boat with petrol engine" | "boat" | "vehicle" | "building";
  /**
   * Temperature of the air around the conductors, °C, on the hottest day in use. -50 to 200.
   *
   * Left out: taken as 30 °C, for which the ampacity tables are made.
   *
   * Example: `ambientC: 40`
   */
  readonly ambientC?: number;
  /**
   * Temperature rating of the conductors' insulation, °C, as printed on it: 60, 70, 75, 80, 85, 90, 105, 125 or 200.
   *
   * Left out: taken as 75 °C, and a hint at each circuit reports it.
   *
   * Example: `insulationC: 105`
   */
  readonly insulationC?: InsulationC;
  /**
   * Whether the conductors run through an engine space, where they may carry less: their ampacity at 50 °C
   * (`gauge`) or 60 °C (`mm2`) applies.
   *
   * Left out: taken as false.
   *
   * Example: `engineSpace: true`
   */
  readonly engineSpace?: boolean;
  /**
   * Whether the loads run for three hours or longer at a time. Protection then aims at 125 % of the load.
   *
   * Left out: taken as true.
   *
   * Example: `continuous: false`
   */
  readonly continuous?: boolean;
  /**
   * Maximum voltage drop on the way to a circuit marked `critical`, in percent of the nominal voltage. Above 0, up to 20.
   *
   * Left out: taken as 3 %.
   *
   * Example: `criticalDropPercent: 2`
   */
  readonly criticalDropPercent?: number;
  /**
   * Maximum voltage drop on the way to any other circuit, in percent of the nominal voltage. Above 0, up to 20.
   *
   * Left out: taken as 10 %.
   *
   * Example: `dropPercent: 5`
   */
  readonly dropPercent?: number;
  /**
   * Temperature of the coldest day in use, °C, for the voltage of solar modules in the cold. -60 to 50.
   *
   * Left out: taken as not known, and the voltage in the cold is not checked.
   *
   * Example: `lowestC: -10`
   */
  readonly lowestC?: number;
  /**
   * Extra length cut for bends and slips, in percent of the length of the conductor. From 0 to 100. It adds to the
   * length that is cut and bought, not to the voltage drop.
   *
   * Left out: taken as 10 %.
   *
   * Example: `slackPercent: 15`
   */
  readonly slackPercent?: number;
  /**
   * Number of spare fuses of each family and rating that lists include. A whole number, 0 to 100.
   *
   * Left out: taken as 2 of each blade fuse and none of larger ones: common practice, no source.
   *
   * Example: `spareFuses: 3`
   */
  readonly spareFuses?: number;
  /**
   * Colour of positive conductors that state none of their own, in up to 40 characters.
   *
   * Left out: taken as "red".
   *
   * Example: `positiveColour: "red"`
   */
  readonly positiveColour?: Colour;
  /**
   * Colour of negative conductors that state none of their own, in up to 40 characters. If there is mains wiring too, yellow
   * distinguishes them from its black conductors.
   *
   * Left out: taken as "black".
   *
   * Example: `negativeColour: "yellow"`
   */
  readonly negativeColour?: Colour;
  /**
   * Currency of all prices of the plan, as written after each price, in up to 10 characters.
   *
   * Left out: taken as no currency, and prices are plain numbers.
   *
   * Example: `currency: "EUR"`
   */
  readonly currency?: string;
  /**
   * The spools that you can buy: each with its size (`gauge` or `mm2`), its length (`lengthFt` or `lengthM`), and, if you know
   * them, its colour and its price. At most 200.
   *
   * Left out: taken as spools of usual lengths in every size and colour.
   *
   * Example: `spools: [{ gauge: 10, lengthFt: 100, colour: "red", price: 58 }, { gauge: 4, lengthFt: 25 }]`
   */
  readonly spools?: readonly SpoolInput[];
  /**
   * Whether you buy wire by the foot or the metre. The list for buying then states a length of each kind of wire, up to the next
   * whole foot or metre, instead of spools; spools that you state for a size still count.
   *
   * Left out: taken as false.
   *
   * Example: `wireByLength: true`
   */
  readonly wireByLength?: boolean;
  /**
   * Whether conductors that share a channel count as bundled in it, below 50 V too. 33 CFR 183.435(b) asks
   * for it from 50 V.
   *
   * Left out: taken as false: below 50 V, shared channels are named and no ampacity is reduced.
   *
   * Example: `bundledInChannels: true`
   */
  readonly bundledInChannels?: boolean;
}
