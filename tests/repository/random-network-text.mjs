import { randomFrom } from "../soak/random.mjs";

/**
 * The text of a plan with a random network, the same for the same seed: a bank or two, their chargers, and circuits whose sizes,
 * devices and lengths are right or wrong at random. The figures are invented.
 */
export function randomNetworkText(seed) {
  const random = randomFrom(seed);
  const number = (from, to) => from + random.below(to - from + 1);
  const maybe = (chance, text) => (random.chance(chance) ? text : "");
  const gauge = () => JSON.stringify(random.pick([18, 16, 14, 12, 10, 8, 6, 4, 2, 1, "1/0", "2/0", "4/0"]));
  const device = (from, to) => {
    const ratingA = random.pick(
      [1, 3, 5, 10, 15, 20, 30, 40, 60, 80, 100, 150, 200, 300].filter((a) => a >= from && a <= to),
    );
    const family = random.pick(["ISO 8820-3 Type F", "UL 248-15 Class T", "circuit breaker"]);
    return random.chance(0.5)
      ? String(ratingA)
      : `{ ratingA: ${ratingA}${maybe(0.4, `, family: ${JSON.stringify(family)}`)}${maybe(0.5, `, distanceIn: ${number(2, 60)}`)}${maybe(0.3, `, interruptingA: ${random.pick([1000, 2000, 10000, 20000])}`)} }`;
  };
  const protect = (chance, from, to) => maybe(chance, `, protect: ${device(from, to)}`);
  const lines = [
    `import { alternator, battery, build, busBar, cable, chassis, circuit, dcDcCharger, disconnect, fusePanel, inverter, load, motor, part, scenario, shoreCharger, shunt, solarArray, solarController } from "loomwright";`,
    `build({ name: "random ${seed}", voltage: ${random.pick([12, 12, 24, 48])}${maybe(0.6, `, insulationC: ${random.pick([60, 75, 90, 105])}`)}${maybe(0.3, `, ambientC: ${number(20, 50)}`)} });`,
    `const bank = battery({ name: "bank", chemistry: ${random.pick(['"AGM"', '"LiFePO4"', '"flooded lead-acid"'])}, capacityAh: ${number(5, 60) * 10}${maybe(0.4, `, internalMilliohm: ${number(1, 12)}`)}${maybe(0.4, `, maxDischargeA: ${number(5, 30) * 10}`)} });`,
    `const plus = busBar({ name: "positive bus", side: "positive"${maybe(0.6, `, ratedA: ${number(5, 40) * 10}`)} });`,
    `const minus = busBar({ name: "negative bus", side: "negative"${maybe(0.5, `, ratedA: ${number(5, 40) * 10}, studs: ${number(4, 12)}`)} });`,
  ];
  let [positive, negative] = ["bank.positive", "bank.negative"];
  const feed = (from, to) => {
    lines.push(
      `cable({ from: ${from}, to: ${to}, lengthM: ${number(2, 40) / 10}, gauge: ${gauge()}${protect(0.6, 60, 300)} });`,
    );
  };
  const plain = (from, to) =>
    lines.push(`cable({ from: ${from}, to: ${to}, lengthM: ${number(2, 30) / 10}, gauge: ${gauge()} });`);
  if (random.chance(0.5)) {
    lines.push(`const off = disconnect({ name: "main switch", ratedA: ${number(5, 40) * 10} });`);
    feed(positive, "off.line");
    positive = "off.load";
  }
  feed(positive, "plus.stud");
  if (random.chance(0.4)) {
    lines.push(`const meter = shunt({ name: "shunt", ratedA: ${number(10, 50) * 10} });`);
    plain(negative, "meter.batterySide");
    negative = "meter.systemSide";
  }
  plain("minus.stud", negative);
  if (random.chance(0.3)) {
    lines.push(
      `const second = battery({ name: "second", chemistry: "AGM", capacityAh: ${number(5, 30) * 10} });`,
    );
    feed("second.positive", "plus.stud");
    plain("second.negative", random.pick(["minus.stud", "bank.negative"]));
  }
  if (random.chance(0.4)) {
    lines.push(
      `const engine = alternator({ name: "alternator", ratedA: ${number(4, 15) * 10}${maybe(0.3, `, continuousPercent: ${number(6, 10) * 10}`)} });`,
    );
    feed("plus.stud", "engine.positive");
    plain("engine.negative", "minus.stud");
  }
  if (random.chance(0.3)) {
    lines.push(
      `const starter = battery({ name: "starter", chemistry: "flooded lead-acid", capacityAh: ${number(6, 12) * 10} });`,
    );
    lines.push(`const charger = dcDcCharger({ name: "charger", outputA: ${number(1, 6) * 10} });`);
    feed("starter.positive", "charger.inputPositive");
    plain("starter.negative", "charger.inputNegative");
    feed("charger.outputPositive", "plus.stud");
    plain("charger.outputNegative", "minus.stud");
  }
  if (random.chance(0.3)) {
    lines.push(
      `const roof = solarArray({ name: "roof", openCircuitV: ${number(20, 50)}, shortCircuitA: ${number(4, 14)}, maxPowerV: ${number(16, 19)}, maxPowerA: ${number(3, 4)}, parallel: ${number(1, 3)} });`,
    );
    lines.push(
      `const regulator = solarController({ name: "regulator", maxInputV: ${random.pick([50, 75, 100])}, outputA: ${number(1, 4) * 10} });`,
    );
    lines.push(
      `circuit({ name: "roof to regulator", from: roof.positive, to: regulator, oneWayFt: ${number(4, 40)}, gauge: ${gauge()} });`,
    );
    feed("plus.stud", "regulator.positive");
    plain("regulator.negative", "minus.stud");
  }
  if (random.chance(0.3)) {
    lines.push(`const mains = inverter({ name: "inverter", continuousW: ${number(3, 30) * 100} });`);
    feed("plus.stud", "mains.positive");
    plain("mains.negative", "minus.stud");
  }
  let from = "plus.stud";
  if (random.chance(0.5)) {
    lines.push(
      `const panel = fusePanel({ name: "panel", positions: ${number(4, 12)}, ratedA: ${number(5, 15) * 10}${maybe(0.5, `, branchRatedA: ${random.pick([15, 20, 30])}`)} });`,
    );
    feed("plus.stud", "panel.feed");
    from = "panel.branch";
    if (random.chance(0.3)) plain("panel.negative", "minus.stud");
  }
  const returnTo = random.chance(0.15) ? "body.metal" : "minus.stud";
  if (returnTo === "body.metal") {
    lines.push(`const body = chassis({ name: "body", milliohm: ${number(1, 5)} });`);
    plain("minus.stud", "body.bond");
  }
  const names = [];
  for (let index = 0, count = number(2, 8); index < count; index++) {
    const draw = random.pick([
      `load: ${number(1, 40)}`,
      `load: ${number(1, 9)}`,
      `loadW: ${number(1, 40) * 5}`,
    ]);
    const length = random.pick([`oneWayFt: ${number(2, 40)}`, `oneWayM: ${number(5, 80) / 10}`]);
    const size = random.chance(0.15) ? `mm2: ${random.pick([1.5, 2.5, 4, 6, 10])}` : `gauge: ${gauge()}`;
    const name = `circuit ${index}`;
    const isWired = random.chance(0.9);
    if (isWired) names.push(`c${index}`);
    const wired = isWired ? `from: ${from}, returnTo: ${returnTo}, ` : "";
    lines.push(
      `const c${index} = circuit({ name: "${name}", ${wired}${draw}, ${length}, ${size}${protect(0.85, 1, 60)}${maybe(0.3, ", continuous: true")}${maybe(0.2, `, minimumV: ${number(10, 12)}`)} });`,
    );
  }
  if (random.chance(0.3)) {
    lines.push(
      `const winch = motor({ name: "winch", runningA: ${number(2, 9) * 10}, startingA: ${number(10, 30) * 10} });`,
    );
    feed("plus.stud", "winch.positive");
    plain("winch.negative", "minus.stud");
  }
  if (random.chance(0.3)) {
    lines.push(
      `scenario({ name: "evening", on: [${names.filter(() => random.chance(0.6)).join(", ")}]${maybe(0.5, `, bankV: ${number(118, 132) / 10}`)} });`,
    );
    lines.push(`scenario({ name: "all" });`);
  }
  return `${lines.join("\n")}\n`;
}
