import { definePart, type PartOf } from "./define-part.ts";
import { type DeviceFigures, deviceFigures, inLine, ofEveryDevice } from "./device-in-line.ts";

export const breaker = definePart("breaker", {
  called: { word: "breaker", saidBy: /breaker/i },
  ...inLine,
  opens: "by hand",
  properties: ofEveryDevice,
  figures: (stated, context): BreakerFigures => ({
    ...deviceFigures(stated, context),
    family: "circuit breaker",
  }),
});

export interface BreakerPart extends PartOf<typeof breaker> {}

interface BreakerFigures extends DeviceFigures {
  readonly family: "circuit breaker";
}
