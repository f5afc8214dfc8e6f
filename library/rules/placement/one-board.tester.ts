/** The parts of the board with further properties; of the surface, of the parts by their variables, and of the cable that feeds the bar. */
export interface OnBoard {
  readonly surface?: string;
  readonly house?: string;
  readonly off?: string;
  readonly main?: string;
  readonly minus?: string;
  readonly fridge?: string;
  readonly feed?: string;
  /** Further statements. */
  readonly more?: string;
}

/** A sound plan with a board of 800 × 600 mm: a bank, its main switch, two bus bars and a refrigerator, none of them placed. */
export function oneBoard(on: OnBoard): string {
  return `build({ insulationC: 105 });
const board = surface({ name: "board", size: { widthMm: 800, heightMm: 600 }, ${on.surface ?? ""} });
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 5, ${on.house ?? ""} });
const off = disconnect({ name: "main switch", ratedA: 100, ${on.off ?? ""} });
const main = busBar({ name: "main", side: "positive", ratedA: 100, ${on.main ?? ""} });
const minus = busBar({ name: "minus", side: "negative", ratedA: 100, ${on.minus ?? ""} });
const fridge = load({ name: "fridge", currentA: 6, ${on.fridge ?? ""} });
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 };
cable({ name: "bank", from: house.positive, to: off.line, lengthFt: 2, gauge: 6, protect: { ...classT, ratingA: 60, distanceIn: 6 } });
cable({ name: "feed", from: off.load, to: main.stud, lengthFt: 2, gauge: 6, ${on.feed ?? ""} });
cable({ name: "return", from: house.negative, to: minus.stud, lengthFt: 2, gauge: 6 });
circuit({
  name: "fridge supply",
  from: main.stud,
  returnTo: minus.stud,
  to: fridge,
  oneWayFt: 5,
  gauge: 10,
  protect: { ...classT, ratingA: 10, distanceIn: 4 },
});
${on.more ?? ""}`;
}
