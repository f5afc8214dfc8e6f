import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 4 });
const off = disconnect({ ratedA: 150 });
const front = busBar({ name: "front bus", side: "positive", ratedA: 150, studs: 4 });
const rear = busBar({ name: "rear bus", side: "positive", ratedA: 150, studs: 4 });
const back = busBar({ name: "negative bus", side: "negative", ratedA: 150, studs: 6 });
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 } as const;
cable({
  name: "bank to disconnect",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: { ...classT, ratingA: 150, distanceIn: 6 },
});
cable({ name: "disconnect to front bus", from: off.load, to: front.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "bank return", from: bank.negative, to: back.stud, lengthFt: 3, gauge: "1/0" });
// Two conductors side by side feed each other's faults: each has a fuse at both ends.
for (const side of ["left", "right"])
  cable({
    name: `front to rear, ${side}`,
    from: front.stud,
    to: rear.stud,
    lengthFt: 9,
    gauge: 6,
    protect: { ...classT, ratingA: 70, distanceIn: 4 },
    protectFarEnd: { ...classT, ratingA: 70, distanceIn: 4 },
  });
circuit({
  name: "rear bench",
  from: rear.stud,
  returnTo: back.stud,
  load: 45,
  oneWayFt: 4,
  gauge: 6,
  protect: { ...classT, ratingA: 60, distanceIn: 4 },
});
