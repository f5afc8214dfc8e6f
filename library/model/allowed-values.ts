import type { Chemistry } from "../plan/battery.ts";
import type { DuplexCable } from "../plan/duplex.ts";
import type { LoadPurpose } from "../plan/load.ts";
import type { AwgSize, FuseFamily, InsulationC, Mm2Size, TerminalC } from "../plan/sizes.ts";
import type { Termination } from "../plan/termination.ts";

/** The values of the types in `library/plan`, which should hold little code. Tests keep them equal to those types. */

export const awgSizes = [
  18,
  16,
  14,
  12,
  10,
  8,
  6,
  4,
  2,
  1,
  "1/0",
  "2/0",
  "3/0",
  "4/0",
] as const satisfies readonly AwgSize[];

export const mm2Sizes = [
  0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150,
] as const satisfies readonly Mm2Size[];

export const insulationRatingsC = [
  60, 70, 75, 80, 85, 90, 105, 125, 200,
] as const satisfies readonly InsulationC[];

export const terminalRatingsC = [60, 75, 90, 105] as const satisfies readonly TerminalC[];

export const fuseFamilies = [
  "ISO 8820-3 Type F",
  "ISO 8820-3 Type C",
  "ISO 8820-3 Type E",
  "ISO 8820-12 Type N",
  "ISO 8820-13 Type P",
  "ISO 8820-4 Type A",
  "ISO 8820-5 Type SF 30",
  "ISO 8820-5 Type SF 51",
  "ISO 8820-6",
  "ISO 20934",
  "UL 248-15 Class T",
  "circuit breaker",
] as const satisfies readonly FuseFamily[];

export const chemistries = [
  "LiFePO4",
  "AGM",
  "gel",
  "flooded lead-acid",
] as const satisfies readonly Chemistry[];

export const duplexCables = ["flat duplex", "round duplex"] as const satisfies readonly DuplexCable[];

/** The polarity of a bus bar. */
export const busBarSides = ["positive", "negative"] as const;

export const loadPurposes = ["bilge pump", "alarm", "other"] as const satisfies readonly LoadPurpose[];

/** How conductors are fastened to a terminal. */
export const terminations = [
  "#6",
  "#8",
  "#10",
  "1/4 in",
  "5/16 in",
  "3/8 in",
  "1/2 in",
  "M3.5",
  "M4",
  "M5",
  "M6",
  "M8",
  "M10",
  "M12",
  "screw clamp",
  "6.3 mm tab",
] as const satisfies readonly Termination[];

/** Conditions under which a DC-DC charger runs. */
export const whenItRuns = ["with the engine", "always"] as const;
