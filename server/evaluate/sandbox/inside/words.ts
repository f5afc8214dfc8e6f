/** The library's words as the recorder takes hold of them. A plan is given none of these, but their recording forms. */
export * from "../../../../library/plan/index.ts";
export { continueNumberingAt } from "../../../../library/plan/numbering.ts";
