import type { SymbolName } from "../schematic.ts";
import { busBar, chassis, fusePanel, supply } from "./bars.ts";
import { battery } from "./battery.ts";
import { dcDcCharger, inverter, shoreCharger, solarController } from "./converters.ts";
import { generalPart, load } from "./general.ts";
import { alternator, motor } from "./machines.ts";
import type { PartSymbol } from "./part-symbol.ts";
import { breaker, disconnect, fuseHolder, relay, selectorSwitch, shunt } from "./series-parts.ts";
import { solarArray } from "./solar.ts";

/** The symbol of each kind of part, in the order of a legend. */
export const symbols: Readonly<Record<SymbolName, PartSymbol>> = {
  battery,
  solarArray,
  alternator,
  shoreCharger,
  solarController,
  dcDcCharger,
  disconnect,
  selectorSwitch,
  relay,
  fuseHolder,
  breaker,
  shunt,
  busBar,
  fusePanel,
  chassis,
  supply,
  inverter,
  motor,
  load,
  part: generalPart,
};
