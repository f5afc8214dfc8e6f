import { battery, build, cable, circuit, fusePanel } from "loomwright";

build({ name: "school bus", insulationC: 105 });
const house = battery({ chemistry: "LiFePO4", capacityAh: 400 });
const front = fusePanel({ positions: 6 });
const rear = fusePanel({ positions: 6 });
const protect = { ratingA: 100, family: "UL 248-15 Class T", distanceIn: 6 } as const;
cable({ name: "front feed", from: house.positive, to: front.feed, lengthFt: 25, gauge: 6, protect });
cable({ name: "front return", from: front.negative, to: house.negative, lengthFt: 25, gauge: 6 });
cable({ name: "rear feed", from: house.positive, to: rear.feed, lengthFt: 4, gauge: 6, protect });
cable({ name: "rear return", from: rear.negative, to: house.negative, lengthFt: 4, gauge: 6 });
const lamp = (name: string, from: typeof front, load: number, oneWayFt: number) =>
  circuit({ name, from: from.branch, load, oneWayFt, gauge: 16, protect: 5 });
lamp("driver lamp", front, 2, 8);
lamp("door lamp", front, 2, 10);
lamp("bed lamp", rear, 2, 12);
circuit({ name: "front heater", from: front.branch, load: 14, oneWayFt: 10, gauge: 14, protect: 20 });
circuit({
  name: "front pump",
  from: front.branch,
  load: 7,
  oneWayFt: 10,
  gauge: 14,
  protect: 10,
  critical: true,
});
circuit({
  name: "rear fridge",
  from: rear.branch,
  load: 6,
  oneWayFt: 12,
  gauge: 14,
  protect: 10,
  critical: true,
});
circuit({ name: "rear fan", from: rear.branch, load: 4, oneWayFt: 14, gauge: 16, protect: 5 });
