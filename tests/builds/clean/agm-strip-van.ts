import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A van with AGM, a strip fuse and blade fuses.
build({ name: "agm strip van", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const bank = battery({
  name: "leisure",
  chemistry: "AGM",
  capacityAh: 110,
  shortCircuitA: 1700,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const off = disconnect({ name: "switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 80, branchRatedA: 30 });
cable({
  name: "plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ratingA: 60, family: "ISO 8820-5 Type SF 30", distanceIn: 6 },
});
cable({ name: "to panel", from: off.load, to: panel.feed, lengthFt: 3, gauge: 6 });
cable({ name: "back", from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 6 });
const b = (ratingA: number) => ({ ratingA, family: "ISO 8820-3 Type C" }) as const;
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 12, gauge: 14, protect: b(5) });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayFt: 8, gauge: 12, protect: b(10) });
circuit({ name: "heater", from: panel.branch, load: 8, oneWayFt: 6, gauge: 12, protect: b(15) });
