import { buildProperties } from "./build-properties.ts";
import { cableProperties } from "./cable-properties.ts";
import { circuitProperties } from "./circuit-properties.ts";
import { descriptorOfWord, type PartWord, partWords } from "./parts/index.ts";
import { periodProperties } from "./period-properties.ts";
import { channelProperties } from "./placement/channel-properties.ts";
import { compartmentProperties } from "./placement/compartment-properties.ts";
import { surfaceProperties } from "./placement/surface-properties.ts";
import type { PropertyTable } from "./property-table.ts";
import type { Word } from "./record.ts";
import { scenarioProperties } from "./scenario-properties.ts";

const ofParts = Object.fromEntries(partWords.map((word) => [word, descriptorOfWord(word).table])) as Readonly<
  Record<PartWord, PropertyTable>
>;

/** Allowed values of each property of each DSL function. */
export const wordProperties: Readonly<Record<Word, PropertyTable>> = {
  circuit: circuitProperties,
  build: buildProperties,
  cable: cableProperties,
  scenario: scenarioProperties,
  period: periodProperties,
  surface: surfaceProperties,
  channel: channelProperties,
  compartment: compartmentProperties,
  ...ofParts,
};
