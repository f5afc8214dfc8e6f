import { battery, build, cable, circuit, fusePanel, scenario, selectorSwitch } from "loomwright";

/* A small boat: one bank, the other, or both, behind one switch. */
build({ insulationC: 105 });
const fuse = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const usual = { chemistry: "AGM", capacityAh: 95, internalMilliohm: 5 } as const;
const first = battery({ name: "first bank", ...usual });
const second = battery({ name: "second bank", ...usual });
const selector = selectorSwitch({ name: "bank selector", ratedA: 250 });
const lead = { lengthM: 1, gauge: 2, protect: { ...fuse, ratingA: 110, distanceIn: 6 } } as const;
cable({ name: "first bank to selector", from: first.positive, to: selector.input1, ...lead });
cable({ name: "second bank to selector", from: second.positive, to: selector.input2, ...lead });
cable({ name: "between the negatives", from: first.negative, to: second.negative, lengthM: 1, gauge: 2 });
const panel = fusePanel({ positions: 6, ratedA: 150 });
cable({ name: "selector to panel", from: selector.common, to: panel.feed, lengthM: 1, gauge: 2 });
cable({ name: "panel return", from: panel.negative, to: first.negative, lengthM: 1, gauge: 2 });
const fridge = circuit({
  name: "refrigerator",
  from: panel.branch,
  load: 5,
  oneWayM: 2,
  gauge: 12,
  protect: 7.5,
});
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayM: 3, gauge: 14, protect: 5 });
scenario({ name: "at the mooring", on: [fridge], selected: [selector.input1] });
scenario({ name: "under way", selected: [selector.input1, selector.input2] });
