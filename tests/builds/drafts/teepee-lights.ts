import { battery, build, cable, circuit, fuseHolder } from "loomwright";

// A camp with one string of lamps 50 m away.
build({ name: "camp", voltage: 12, insulationC: 70 });

const box = battery({ name: "power box", chemistry: "LiFePO4", capacityAh: 50, maxDischargeA: 50 });
const holder = fuseHolder({ name: "fuse", ratingA: 30 });
cable({ name: "lead", from: box.positive, to: holder.line, lengthM: 0.15, mm2: 2.5 });
circuit({ name: "lamps", from: holder.load, returnTo: box.negative, load: 3, oneWayM: 50, mm2: 1.5 });
circuit({ name: "cool box", from: holder.load, returnTo: box.negative, load: 5, oneWayM: 3, mm2: 1 });
