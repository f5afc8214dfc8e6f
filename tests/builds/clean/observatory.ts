import { battery, build, cable, circuit, disconnect, fusePanel, load, scenario } from "loomwright";

// A stargazer's box on a hill: 12 V, metric cable, dew heaters, a mount that dislikes low voltage, cold nights.
build({ name: "observatory", voltage: 12, insulationC: 70, ambientC: 25 });

const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 80,
  internalMilliohm: 6,
  maxDischargeA: 200,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 60 });
const panel = fusePanel({ name: "fuse box", positions: 6, ratedA: 40, branchRatedA: 20 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 0.5,
  mm2: 10,
  protect: { ratingA: 30, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceMm: 120 },
});
cable({ name: "switch to box", from: mainSwitch.load, to: panel.feed, lengthM: 0.5, mm2: 10 });
cable({ name: "box return", from: panel.negative, to: bank.negative, lengthM: 1, mm2: 10 });

const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 }) as const;
for (const lens of ["main lens", "guide lens"]) {
  const band = load({ name: `heater, ${lens}`, resistanceOhm: 12 });
  circuit({
    name: `heater cable, ${lens}`,
    from: panel.branch,
    to: band,
    oneWayM: 3,
    mm2: 1.5,
    protect: classT(3),
  });
}
const mount = load({ name: "mount", powerW: 40, minimumV: 11, critical: true });
circuit({ name: "mount supply", from: panel.branch, to: mount, oneWayM: 3, mm2: 4, protect: classT(6) });
circuit({
  name: "camera",
  from: panel.branch,
  loadW: 30,
  minimumV: 11,
  oneWayM: 3,
  mm2: 2.5,
  protect: classT(6),
});
circuit({ name: "red lamp", from: panel.branch, load: 0.3, oneWayM: 2, mm2: 1.5, protect: classT(1) });

// The battery is full at dusk and nearly down before dawn.
scenario({ name: "dusk", chargePercent: 100 });
scenario({ name: "before dawn", chargePercent: 20 });
