/** The library's DSL functions, as the recorder wraps them. A plan gets only the recording forms. */
export * from "../../../../library/plan/index.ts";
export { continueNumberingAt } from "../../../../library/plan/numbering.ts";
