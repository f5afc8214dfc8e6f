import { battery, build, busBar, cable, circuit, fuseHolder, fusePanel } from "loomwright";

// The stereo was connected straight to the battery, past the main fuse; so was a thick lead to a second panel that is not there yet.
build({ name: "past the fuse", voltage: 12 });

const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 180 });
const main = fuseHolder({ name: "main fuse", ratingA: 100, family: "ISO 8820-5 Type SF 30" });
const bus = busBar({ name: "bus", ratedA: 150 });
cable({ name: "battery to fuse", from: bank.positive, to: main.line, lengthFt: 0.5, gauge: 4 });
cable({ name: "fuse to bus", from: main.load, to: bus.stud, lengthFt: 3, gauge: 4 });
const panel = fusePanel({ name: "panel", positions: 8 });
cable({ name: "feed", from: bus.stud, to: panel.feed, lengthFt: 4, gauge: 8 });
cable({ name: "back", from: panel.negative, to: bank.negative, lengthFt: 7, gauge: 4 });
circuit({ name: "heater", from: panel.branch, load: 8, oneWayFt: 8, gauge: 14, protect: 15 });
circuit({ name: "stereo", from: bank.positive, returnTo: bank.negative, load: 12, oneWayFt: 12, gauge: 10 });
const second = busBar({ name: "second bus", ratedA: 150 });
cable({ name: "lead to second bus", from: bank.positive, to: second.stud, lengthFt: 8, gauge: 2 });
circuit({
  name: "winch socket",
  from: second.stud,
  returnTo: bank.negative,
  load: 6,
  oneWayFt: 5,
  gauge: 12,
  protect: 10,
});
