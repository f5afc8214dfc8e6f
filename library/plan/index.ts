/** The words of a plan. This is all that `import … from "loomwright"` gives. */
export { type BuildInput, type BuildSettings, build } from "./build.ts";
export {
  type CircuitInput,
  type CircuitOptions,
  circuit,
  type LengthInput,
  type LoadInput,
  type PlannedCircuit,
  type SizeInput,
} from "./circuit.ts";
export type { ProtectionInput } from "./protection.ts";
export type { RuleId } from "./rule-id.ts";
export type { AwgSize, FuseFamily, InsulationC, Mm2Size } from "./sizes.ts";
export type { NominalVoltage } from "./voltage.ts";
