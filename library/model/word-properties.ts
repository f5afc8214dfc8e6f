import { batteryProperties } from "./battery-properties.ts";
import { buildProperties } from "./build-properties.ts";
import { cableProperties } from "./cable-properties.ts";
import {
  alternatorProperties,
  dcDcChargerProperties,
  shoreChargerProperties,
} from "./charging-properties.ts";
import { circuitProperties } from "./circuit-properties.ts";
import { inverterProperties, loadProperties, motorProperties } from "./consumer-properties.ts";
import {
  busBarProperties,
  chassisProperties,
  disconnectProperties,
  fusePanelProperties,
  otherPartProperties,
  shuntProperties,
} from "./distribution-properties.ts";
import type { PropertyTable } from "./property-table.ts";
import type { Word } from "./record.ts";
import { scenarioProperties } from "./scenario-properties.ts";
import { solarArrayProperties, solarControllerProperties } from "./solar-properties.ts";

/** Allowed values of each property of each DSL function. */
export const wordProperties: Readonly<Record<Word, PropertyTable>> = {
  circuit: circuitProperties,
  build: buildProperties,
  cable: cableProperties,
  scenario: scenarioProperties,
  battery: batteryProperties,
  busBar: busBarProperties,
  fusePanel: fusePanelProperties,
  disconnect: disconnectProperties,
  shunt: shuntProperties,
  inverter: inverterProperties,
  dcDcCharger: dcDcChargerProperties,
  alternator: alternatorProperties,
  shoreCharger: shoreChargerProperties,
  solarArray: solarArrayProperties,
  solarController: solarControllerProperties,
  chassis: chassisProperties,
  load: loadProperties,
  motor: motorProperties,
  part: otherPartProperties,
};
