import { battery, build, cable, circuit, disconnect, part } from "loomwright";

// A polytunnel: 12 V, one AGM battery, a terminal block of one's own half way to the fans.
build({ name: "polytunnel", voltage: 12, insulationC: 90 });

const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 60,
  internalMilliohm: 8,
  maxDischargeA: 150,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 50 });
const block = part({ name: "terminal block", terminals: ["positive", "negative"], ratedA: 30 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 1,
  gauge: 8,
  protect: { ratingA: 30, family: "ISO 8820-5 Type SF 30", distanceIn: 5 },
});
circuit({ name: "trunk", from: mainSwitch.load, returnTo: bank.negative, to: block, oneWayFt: 14, gauge: 8 });
for (const end of ["east", "west"])
  circuit({
    name: `fan at the ${end} end`,
    from: block.positive,
    returnTo: block.negative,
    load: 5,
    oneWayFt: 12,
    gauge: 12,
    protect: { ratingA: 10, family: "ISO 8820-3 Type C", distanceIn: 5 },
  });
