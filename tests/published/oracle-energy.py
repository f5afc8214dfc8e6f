"""Works out the energy of whole plans a second time, in another language, and writes the answers into oracle-energy.json.
It was written from the published pages alone, before the library's own engine was opened; where the two then differed by a
choice and not by a mistake, the choice went to library/analysis/energy/method.md. The numbers in brackets are those of
that page.

Currents and voltages of the loads come from oracle-networks.py, which knows nothing of the library either.

Run it when the method is meant to change:  python3 tests/published/oracle-energy.py
Standard library only. The plans are drawn with a fixed seed: the same data give the same file, byte for byte.
"""

import base64
import importlib.util
import json
import math
import random
import sys
from pathlib import Path

HERE = Path(__file__).parent
SPEC = importlib.util.spec_from_file_location("oracle_networks", HERE / "oracle-networks.py")
NETWORKS = importlib.util.module_from_spec(SPEC)
SPEC.loader.exec_module(NETWORKS)

WORLD = json.loads((HERE / "../../library/standards/world.json").read_text(encoding="utf-8"))
CLEARNESS = b"".join(map(base64.b64decode, WORLD["clearness"]))
TEMPERATURE = b"".join(map(base64.b64decode, WORLD["temperature"]))

MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]
MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
MONTH_OF = [month for month, days in enumerate(MONTH_DAYS) for _ in range(days)]
WEEK = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]

SOLAR_CONSTANT = 1361
LEAST_COS_ZENITH = 0.087
ALBEDO = 0.2
MODULE_LOSSES = [0.02, 0.03, 0.02, 0.005, 0.015, 0.01]
NOCT_C = 45
POWER_PER_K = -0.004
CHARGE_EFFICIENCY = {"LiFePO4": 0.95, "lead-acid": 0.8}
SELF_DISCHARGE_A_MONTH = {"LiFePO4": 0.025, "lead-acid": 0.05}
TAPER_FROM = {"LiFePO4": 0.95, "lead-acid": 0.8}
TAPER_HOURS = 2
POOR_YEAR = 0.85
# Rounding of the two engines, where hours are counted.
NEARLY_WH = 1e-6
RESERVE = {"LiFePO4": 0.2, "lead-acid": 0.5}
USUAL_CHARGE_PER_H = {"LiFePO4": 0.5, "AGM": 0.4, "gel": 0.2, "flooded lead-acid": 0.25}
SOURCES = {"solarArray", "solarController", "alternator", "shoreCharger", "dcDcCharger"}
# Of the voltage that it holds, from no current to its rated one.
ALTERNATOR_FALL = 0.001
COLD_MULTIPLIER = [(-6.7, 1.59), (-1.1, 1.4), (4.4, 1.3), (10.0, 1.19), (15.6, 1.11), (21.2, 1.04), (26.7, 1.0)]


# The sun (1 to 5).


def grid(table, latitude, longitude, month):
    """[1] Bilinear between the middles of the cells; longitude goes round, the outer rows hold towards the poles."""
    row = min(max((latitude + 88.75) / 2.5, 0), 71)
    column = ((longitude + 178.75) / 2.5) % 144
    south, west = min(int(row), 70), int(column)
    up, right = row - south, column - west

    def cell(r, c):
        return table[(month * 72 + r) * 144 + c % 144]

    low = cell(south, west) * (1 - right) + cell(south, west + 1) * right
    high = cell(south + 1, west) * (1 - right) + cell(south + 1, west + 1) * right
    return low * (1 - up) + high * up


def series(day, cosines, sines):
    angle = 2 * math.pi * (day - 1) / 365
    return sum(c * math.cos(k * angle) for k, c in enumerate(cosines)) + sum(
        s * math.sin(k * angle) for k, s in enumerate(sines, 1)
    )


def declination(day):
    """[2] Spencer 1971."""
    return series(day, [0.006918, -0.399912, -0.006758, -0.002697], [0.070257, 0.000907, 0.00148])


def distance(day):
    return series(day, [1.000110, 0.034221, 0.000719], [0.001280, 0.000077])


def sunset(latitude, day):
    return math.acos(max(-1, min(1, -math.tan(latitude) * math.tan(declination(day)))))


def outside_wh(latitude, day):
    """[2] Wh/m2 of a day on a horizontal plane above the air."""
    set_at, tilt = sunset(latitude, day), declination(day)
    sines = set_at * math.sin(latitude) * math.sin(tilt)
    return 24 / math.pi * SOLAR_CONSTANT * distance(day) * (math.cos(latitude) * math.cos(tilt) * math.sin(set_at) + sines)


def days_of_month(month):
    first = sum(MONTH_DAYS[:month]) + 1
    return range(first, first + MONTH_DAYS[month])


def mean_outside_wh(latitude, month):
    return sum(outside_wh(latitude, day) for day in days_of_month(month)) / MONTH_DAYS[month]


# Knight, Klein, Duffie, Solar Energy 46 (1991) 109: 1 is the cloudiest day.
ORDERS = {
    "Km <= 0.45": [24, 28, 11, 19, 18, 3, 2, 4, 9, 20, 14, 23, 8, 16, 21, 26, 15, 10, 22, 17, 5, 1, 6, 29, 12, 7, 31, 30, 27, 13, 25],
    "0.45 < Km <= 0.55": [24, 27, 11, 19, 18, 3, 2, 4, 9, 20, 14, 23, 8, 16, 21, 7, 22, 10, 28, 6, 5, 1, 26, 29, 12, 17, 31, 30, 15, 13, 25],
    "Km > 0.55": [24, 27, 11, 4, 18, 3, 2, 19, 9, 25, 14, 23, 8, 16, 21, 26, 22, 10, 15, 17, 5, 1, 6, 29, 12, 7, 31, 20, 28, 13, 30],
}


def clearness_of_days(mean, count):
    """[3] Bendt's distribution by bisection, the middles of equal shares, scaled to the mean, in Knight's order."""
    least, greatest = 0.05, 0.6313 + 0.267 * mean - 11.9 * (mean - 0.75) ** 8
    order = [day for day in ORDERS["Km <= 0.45" if mean <= 0.45 else "0.45 < Km <= 0.55" if mean <= 0.55 else "Km > 0.55"] if day <= count]
    if not least < mean < greatest:
        return [mean] * count
    width = greatest - least

    def mean_at(slope):
        x = slope * width
        return least + width * (0.5 + x / 12 - x**3 / 720 if abs(x) < 1e-3 else 1 / -math.expm1(-x) - 1 / x)

    low, high = -650 / width, 650 / width
    for _ in range(200):
        slope = (low + high) / 2
        low, high = (slope, high) if mean_at(slope) < mean else (low, slope)
    x = slope * width
    shares = [(day - 0.5) / count for day in range(1, count + 1)]
    if abs(x) < 1e-9:
        clearness = [least + share * width for share in shares]
    elif x > 0:  # From the other end, so that nothing overflows.
        clearness = [greatest + math.log1p((share - 1) * -math.expm1(-x)) / slope for share in shares]
    else:
        clearness = [least + math.log1p(share * math.expm1(x)) / slope for share in shares]
    scale = mean * count / sum(clearness)
    return [clearness[day - 1] * scale for day in order]


def diffuse_share(clearness, set_at):
    """[4] Erbs, by the day."""
    k = clearness
    if math.degrees(set_at) <= 81.4:
        return 1 - 0.2727 * k + 2.4495 * k**2 - 11.9514 * k**3 + 9.3879 * k**4 if k < 0.715 else 0.143
    return 1 + 0.2832 * k - 2.5557 * k**2 + 0.8448 * k**3 if k < 0.722 else 0.175


HOUR_ANGLES = [math.radians(15 * (hour + 0.5 - 12)) for hour in range(24)]


def planes_of_day(latitude, day, clearness, scale, planes):
    """[4, 5] Wh/m2 of each hour on each plane (tilt, compass direction, heights of the horizon or None)."""
    set_at, tilt_of_sun = sunset(latitude, day), declination(day)
    global_wh = clearness * outside_wh(latitude, day) * scale
    diffuse_wh = global_wh * diffuse_share(clearness, set_at)
    b = 0.6609 - 0.4767 * math.sin(set_at - math.pi / 3)
    a = 0.409 + 0.5016 * math.sin(set_at - math.pi / 3)
    # Below -1 in the polar day, in which the sun sinks and does not set.
    cos_set = -math.tan(latitude) * math.tan(tilt_of_sun)
    diffuse_shape = [max(0, math.cos(w) - cos_set) for w in HOUR_ANGLES]
    global_shape = [max(0, (a + b * math.cos(w)) * shape) for w, shape in zip(HOUR_ANGLES, diffuse_shape)]
    hours = [[0.0] * 24 for _ in planes]
    if sum(global_shape) <= 0:
        return hours
    for hour, w in enumerate(HOUR_ANGLES):
        if diffuse_shape[hour] <= 0:
            continue
        all_wh = global_wh * global_shape[hour] / sum(global_shape)
        sky_wh = min(all_wh, diffuse_wh * diffuse_shape[hour] / sum(diffuse_shape))
        beam_wh = all_wh - sky_wh
        # East, north and up of the sun, and of the direction that a plane faces.
        east = -math.cos(tilt_of_sun) * math.sin(w)
        north = math.sin(tilt_of_sun) * math.cos(latitude) - math.cos(tilt_of_sun) * math.sin(latitude) * math.cos(w)
        up = math.sin(latitude) * math.sin(tilt_of_sun) + math.cos(latitude) * math.cos(tilt_of_sun) * math.cos(w)
        held = max(up, LEAST_COS_ZENITH)
        anisotropy = min(1, beam_wh / (SOLAR_CONSTANT * distance(day) * held))
        for plane, (tilt, facing, horizon) in enumerate(planes):
            if horizon and is_behind(horizon, east, north, up):
                # Neither beam nor the light around the sun; the ground has the rest of the sky's.
                hours[plane][hour] = sky_wh * ((1 - anisotropy) * (1 + math.cos(tilt)) / 2 + ALBEDO * (1 - math.cos(tilt)) / 2)
                continue
            if tilt == 0:
                hours[plane][hour] = all_wh
                continue
            cos_incidence = up * math.cos(tilt) + math.sin(tilt) * (east * math.sin(facing) + north * math.cos(facing))
            ratio = max(0, cos_incidence) / held
            sky_view = (1 + math.cos(tilt)) / 2
            hours[plane][hour] = (
                beam_wh * ratio
                + sky_wh * (anisotropy * ratio + (1 - anisotropy) * sky_view)
                + all_wh * ALBEDO * (1 - math.cos(tilt)) / 2
            )
    return hours


def is_behind(horizon, east, north, up):
    """[5] Straight lines between the heights in eight directions, from north clockwise."""
    direction = math.degrees(math.atan2(east, north)) % 360 / 45
    before, part = int(direction), direction % 1
    height = horizon[before % 8] * (1 - part) + horizon[(before + 1) % 8] * part
    return math.degrees(math.asin(max(-1, min(1, up)))) < height


# Days, hours and the running of devices (6 to 8).


class Calendar:
    """[6] The days of a period as numbers in the year, 1 to 365, in stretches without a gap."""

    def __init__(self, given):
        if "fromDay" in given:
            first, last = (day_of_year(given[name]) for name in ("fromDay", "untilDay"))
            self.stretches = [[day % 365 + 1 for day in range(first - 1, last if last >= first else last + 365)]]
        else:
            wanted = {MONTHS.index(month) for month in given.get("months", MONTHS)}
            start = next((m for m in range(12) if m in wanted and (m - 1) % 12 not in wanted), 0)
            self.stretches = []
            for month in ((start + k) % 12 for k in range(12)):
                if month in wanted and (month - 1) % 12 in wanted and self.stretches:
                    self.stretches[-1] += days_of_month(month)
                elif month in wanted:
                    self.stretches.append(list(days_of_month(month)))
        self.first = self.stretches[0][0]
        self.whole_year = len(self.stretches[0]) == 365

    def day(self, number):
        """How many days after the first, its month, its weekday."""
        return (number - self.first) % 365, MONTH_OF[number - 1], WEEK[(number - 1) % 7]


def day_of_year(written):
    day, month = written.split()
    month = MONTHS.index(month)
    return sum(MONTH_DAYS[:month]) + min(int(day), MONTH_DAYS[month])


def overlap(a, b, c, d):
    return max(0, min(b, d) - max(a, c))


def running(use, calendar, number, hour, latitude, ahead_h):
    """[6 to 8] The share of an hour in which a device runs."""
    since, month, weekday = calendar.day(number)
    if not on_that_day(use, since, month, weekday):
        return 0
    if "when" in use:
        half_h = math.degrees(sunset(latitude, number)) / 15
        light = overlap(hour, hour + 1, 12 - half_h, 12 + half_h)
        here, whole = (light, 2 * half_h) if use["when"] == "daylight" else (1 - light, 24 - 2 * half_h)
    else:
        begin, end = use.get("fromHour", 0), use.get("untilHour", 24)
        whole = end - begin if end > begin else end - begin + 24
        begin = (begin - ahead_h) % 24
        here = 1 if whole == 24 else sum(overlap(hour + 24 * k, hour + 24 * k + 1, begin, begin + whole) for k in (0, 1))
    if here <= 0:
        return 0
    return here * min(1, use.get("hoursPerDay", whole) / whole) * duty(use, month)


def on_that_day(use, number, month, weekday):
    return (
        weekday in use.get("daysOfWeek", WEEK)
        and MONTHS[month] in use.get("months", MONTHS)
        and number % use.get("everyDays", 1) == 0
    )


def duty(use, month):
    return use["dutyPercentByMonth"][month] / 100 if "dutyPercentByMonth" in use else use.get("dutyPercent", 100) / 100


# The plan (8 to 14).


class Plan:
    def __init__(self, records):
        self.records = records
        self.of = lambda word: [(i, r["input"]) for i, r in enumerate(records) if r["word"] == word]
        batteries = [given for _, given in self.of("battery") if not of_engine(given)]
        battery = batteries[0]
        (_, self.period), = self.of("period")
        lead = battery["chemistry"] != "LiFePO4"
        self.family = "lead-acid" if lead else "LiFePO4"
        self.cells = NETWORKS.Cells("flooded lead-acid" if lead else "LiFePO4", battery["nominalV"])
        self.in_series = round(records[0]["input"]["voltage"] / 12 / self.cells.twelves)
        rest_v = self.cells.rest(None)
        # [15, 17] Batteries of one kind, each with its own figures: their sums, and levels by what each holds.
        full_wh = [b["capacityAh"] * rest_v * b.get("stateOfHealthPercent", 100) / 100 for b in batteries]
        self.rated_wh = sum(full_wh)

        def of_full(share):
            return sum(full * share(b) for full, b in zip(full_wh, batteries)) / self.rated_wh

        self.reserve = of_full(lambda b: b["reservePercent"] / 100 if "reservePercent" in b else RESERVE[self.family])
        self.floor = of_full(lambda b: b.get("minimumChargePercent", 0) / 100)
        usual_per_h = USUAL_CHARGE_PER_H[battery["chemistry"]]
        self.charge_w = sum(b.get("maxChargeA", usual_per_h * b["capacityAh"]) * rest_v for b in batteries)
        self.lowest_c = min(b.get("lowestC", -math.inf) for b in batteries)
        self.cut_off_c = None if lead and "chargeCutOffC" not in battery else max(b.get("chargeCutOffC", 0) for b in batteries)
        self.standby_w = sum(b.get("standbyW", 0) for b in batteries)
        self.source_network = NETWORKS.Network(self.wiring(without={"solarArray"}))
        self.charged_by = {}
        self.loads = self.read_loads()

    def read_loads(self):
        """[9, 10] The parts that draw, and what draws in each: its power and current at the poles of the bank, alone."""
        not_used = {part["id"] for part in self.period.get("notUsed", [])}
        network = NETWORKS.Network(self.wiring(without=SOURCES))
        everything = network.loads
        alone = [self.at_bank(network, [load]) for load in everything]
        products = sum(amps for _, amps in alone) ** 2 - sum(amps**2 for _, amps in alone)
        all_w, _ = self.at_bank(network, everything)
        self.shared_ohm = (all_w - sum(watts for watts, _ in alone)) / products if products > 1e-6 else 0
        parts = []
        for load, (watts, amps) in zip(everything, alone):
            if load["part"] in not_used:
                continue
            given = self.records[load["part"]]["input"]
            if "devices" not in given:
                use = given["use"]
                parts.append((0, [(use, watts, amps, use.get("standbyW", 0))]))
                continue
            efficiency = given["efficiencyPercent"] / 100
            at_poles_w = given["idleW"] + sum(device["powerW"] for device in given["devices"]) / efficiency
            own_ohm = max(0, watts - at_poles_w) / amps**2
            drawing = [(given.get("use", {}), given["idleW"], 0)]
            for device in given["devices"]:
                use = device["use"]
                drawing.append((use, device["powerW"] / efficiency, use.get("standbyW", 0) / efficiency))
            volts = watts / amps
            parts.append((own_ohm, [(use, w + own_ohm * (w / volts) ** 2, w / volts, standby) for use, w, standby in drawing]))
        return parts

    def wiring(self, without):
        """The records of a network for the other oracle, which wants a scenario and knows two chemistries.

        `without`: the words of the parts that are left out, with what is connected to them.
        """
        kept = {"build", "battery", "busBar", "load", "motor", "inverter", "cable", "circuit"}
        records = []
        for record in self.records:
            given = dict(record["input"])
            if record["word"] not in kept or of_engine(given) or any(self.records[part]["word"] in without for part in parts_of(given)):
                records.append({"word": "left out", "input": {}})
                continue
            if record["word"] == "battery":
                given["chemistry"] = "LiFePO4" if self.family == "LiFePO4" else "flooded lead-acid"
            if record["word"] == "inverter":
                given["continuousW"] = sum(device["powerW"] for device in given["devices"])
            records.append({"word": record["word"], "input": given})
        return [*records, {"word": "scenario", "input": {"name": "all"}}]

    def at_bank(self, network, loads):
        """[9] Power that all batteries give, and its current at the voltage of the bank."""
        if not loads:
            return 0, 0
        network.loads = loads
        volts, _ = NETWORKS.operating_point(network)
        given_w, bank_v = bank_in(network, volts, self.in_series)
        return given_w, given_w / bank_v

    def charged(self, part, amperes):
        """A source gives a current: power into all batteries, voltage of the bank, and voltage at the source."""
        known = self.charged_by.get((part, amperes))
        if known:
            return known
        network = self.source_network
        names = ("outputPositive", "outputNegative") if self.records[part]["word"] == "dcDcCharger" else ("positive", "negative")
        plus, minus = (network.node(part, name) for name in names)
        network.loads = [{"plus": plus, "minus": minus, "currentA": -amperes}]
        volts, _ = NETWORKS.operating_point(network)
        given_w, bank_v = bank_in(network, volts, self.in_series)
        found = self.charged_by[part, amperes] = -given_w, bank_v, volts[plus] - volts[minus]
        return found

    def engine_w(self):
        """[14] An alternator at the bank at its continuous share; or a DC-DC charger that one feeds, as far as that share goes."""
        alternators, chargers = self.of("alternator"), self.of("dcDcCharger")
        if not alternators:
            return 0
        (at, given), = alternators
        allowed = given.get("continuousPercent", 80) / 100
        if not chargers:
            return self.charger_w(at, given["ratedA"]) * allowed
        (charger_at, charger), = chargers
        into_w, _, out_v = self.charged(charger_at, charger["outputA"])
        taken_w = charger["outputA"] * out_v / (charger.get("efficiencyPercent", 90) / 100)
        cables = [g for _, g in self.of("cable") if of_engine(g)]
        held_v, amperes = 14.4, 0
        for ample in (1, 10):
            for _ in range(200):
                fall_ohm = ALTERNATOR_FALL * held_v / (ample * given["ratedA"])
                ohm = fall_ohm + sum(self.warm_ohm(cable, amperes, 1, cable["lengthM"]) for cable in cables)
                amperes = taken_w / (held_v - amperes * ohm)
            if amperes <= given["ratedA"]:
                break
        return into_w * min(1, given["ratedA"] * allowed / amperes)

    def use_w(self, *at):
        """[8 to 10] At the poles of the bank, with the losses of the hour in shared wires."""
        drawn_w, all_a, squares = self.standby_w, 0, 0
        for own_ohm, drawing in self.loads:
            part_a = part_squares = 0
            for use, watts, amps, standby_w in drawing:
                share = running(use, *at)
                drawn_w += share * watts + (1 - share) * standby_w
                part_a += share * amps
                part_squares += (share * amps) ** 2
            drawn_w += own_ohm * (part_a**2 - part_squares)
            all_a += part_a
            squares += part_a**2
        return drawn_w + self.shared_ohm * (all_a**2 - squares)

    def arrays(self):
        """Each array with its controller."""
        for at, array in self.of("solarArray"):
            link = next(r["input"] for _, r in enumerate(self.records) if r["word"] == "circuit" and r["input"]["from"]["part"] == at)
            controller = self.records[link["to"]["id"]]["input"]
            yield array, controller, self.full_sun(array, controller, link, link["to"]["id"])

    def loop_ohm(self, circuit, amperes):
        """There and back, at the temperature that this current makes."""
        metres = circuit.get("oneWayM", circuit.get("oneWayFt", 0) * NETWORKS.CIRCUITS.METRES_PER_FOOT)
        return self.warm_ohm(circuit, amperes, 2, 2 * metres)

    def warm_ohm(self, conductor, amperes, together, metres):
        build = self.records[0]["input"]
        ampacity_a, column_c, ohm_per_m = NETWORKS.ampacity_and_column(conductor, build, together)
        ambient_c = build.get("ambientC", 30)
        warm_c = min(column_c, ambient_c + (column_c - ambient_c) * (amperes / ampacity_a) ** 2)
        return metres * ohm_per_m * (1 + NETWORKS.CIRCUITS.ALPHA_PER_K * (warm_c - 20))

    def full_sun(self, array, controller, link, controller_at):
        """[12, 13] In full sun: the voltage of the bank, the share that the wires then lose for each watt, and their drop."""
        modules_a = array["maxPowerA"] * array.get("parallel", 1)
        corner_v, open_v = (array[name] * array.get("series", 1) for name in ("maxPowerV", "openCircuitV"))
        if not controller.get("tracking", True):
            # They work beside their short circuit; the current falls to 99 % of it at the corner.
            _, rest_v, _ = self.charged(controller_at, 0)
            bright_a = array["shortCircuitA"] * array.get("parallel", 1) * (1 - 0.01 * rest_v / corner_v)
            _, bright_v, out_v = self.charged(controller_at, bright_a)
            drop_v = out_v - bright_v + bright_a * self.loop_ohm(link, bright_a)
            return self.charged(controller_at, min(bright_a, controller["outputA"]))[1], 0, drop_v
        efficiency = controller.get("efficiencyPercent", 95) / 100
        in_a = 0
        for _ in range(100):  # Until the wires have the temperature of their currents.
            in_ohm = self.loop_ohm(link, in_a)
            in_a = modules_a
            out_a = self.current_at((corner_v - in_a * in_ohm) * in_a * efficiency, controller_at)
            if out_a > controller["outputA"]:
                # Held by the controller: the modules move up their line towards the open circuit.
                out_a = controller["outputA"]
                in_w = out_a * self.charged(controller_at, out_a)[2] / efficiency
                # in_w = I (U - I R), with U = open_v - I / siemens.
                falling = (open_v - corner_v) / modules_a + in_ohm
                in_a = (open_v - math.sqrt(open_v**2 - 4 * falling * in_w)) / (2 * falling)
        into_w, bank_v, out_v = self.charged(controller_at, out_a)
        offered_w = out_a * out_v + in_a**2 * in_ohm * efficiency
        return bank_v, (1 - into_w / offered_w) / offered_w, 0

    def sun_w(self, array, controller, full_sun, light_wh, air_c):
        """[11 to 13] Power of an array at the poles of the bank in an hour of this light on its plane."""
        bank_v, lost_per_w, drop_v = full_sun
        kept = math.prod(1 - loss for loss in MODULE_LOSSES)
        modules_a = array["maxPowerA"] * array.get("parallel", 1)
        modules_v = array["maxPowerV"] * array.get("series", 1)
        warmth = 1 + POWER_PER_K * (air_c + (NOCT_C - 20) / 800 * light_wh - 25)
        if controller.get("tracking", True):
            power_w = max(0, modules_v * modules_a * light_wh / 1000 * warmth) * kept
            power_w *= controller.get("efficiencyPercent", 95) / 100
        else:
            power_w = bank_v * modules_a * light_wh / 1000 * kept if modules_v * warmth >= bank_v + drop_v * light_wh / 1000 else 0
        power_w = min(power_w, controller["outputA"] * bank_v)
        return power_w * (1 - lost_per_w * power_w)

    def current_at(self, power_w, part):
        """The current at which wires and bank together take this power."""
        amperes = 0
        for _ in range(100):
            before, amperes = amperes, power_w / self.charged(part, amperes)[2]
            if abs(amperes - before) < 1e-13 * amperes:
                break
        return amperes

    def charger_w(self, part, amperes):
        """[14] At full power, into all batteries."""
        return self.charged(part, amperes)[0]

    def generator_w(self, at, given, month):
        """[14] Its average of the month, at most its full power, less the loss of the way to the bank."""
        into_w, _, out_v = self.charged(at, given["outputA"])
        full_w = given["outputA"] * out_v
        held_w = min(given["averageWByMonth"][month], full_w)
        return held_w * (1 - (1 - into_w / full_w) * held_w / full_w)


def of_engine(given):
    """On the alternator's side of a DC-DC charger."""
    return given.get("name", "").startswith("engine side")


def parts_of(given):
    """The parts that a conductor is connected to."""
    ends = [given[name] for name in ("from", "to", "returnTo") if isinstance(given.get(name), dict)]
    return [end["part"] if "part" in end else end["id"] for end in ends]


def bank_in(network, volts, in_series):
    """Power that all batteries give, and the voltage of the first string: they are listed from string to string."""
    def across(battery):
        return volts[battery["plus"]] - volts[battery["minus"]]

    given_w = sum((b["v"] - across(b)) / b["inUse"] * across(b) for b in network.batteries)
    return given_w, sum(across(b) for b in network.batteries[:in_series])


# The balance (15 to 20).


def multiplier(celsius):
    rows = COLD_MULTIPLIER
    if celsius <= rows[0][0]:
        return rows[0][1]
    for (low, at_low), (high, at_high) in zip(rows, rows[1:]):
        if celsius <= high:
            return at_low + (at_high - at_low) * (celsius - low) / (high - low)
    return 1.0


class Bank:
    """[15, 16] One hour after the other."""

    def __init__(self, plan, bank_c):
        self.full = plan.rated_wh
        gives = [1 / multiplier(celsius) if plan.family == "lead-acid" else 1 for celsius in bank_c]
        self.floor = [self.full * (1 - share * (1 - plan.floor)) for share in gives]
        self.reserve = [self.full * (1 - share * (1 - max(plan.floor, plan.reserve))) for share in gives]
        self.takes = [plan.cut_off_c is None or celsius >= plan.cut_off_c for celsius in bank_c]
        self.eta = CHARGE_EFFICIENCY[plan.family]
        self.fades = SELF_DISCHARGE_A_MONTH[plan.family] / 730
        self.constant_wh = plan.charge_w * self.eta
        self.taper_from = TAPER_FROM[plan.family] * self.full

    def most_stored(self, stored):
        """[17] In an hour."""
        constant_h = min(1, max(0, self.taper_from - stored) / self.constant_wh)
        missing = self.full - max(stored, self.taper_from)
        taper = missing * -math.expm1(-(1 - constant_h) / TAPER_HOURS)
        return self.constant_wh * constant_h + min(taper, self.constant_wh * (1 - constant_h))

    def hour(self, stored, month, gives_wh, use_wh):
        faded = stored * self.fades
        stored, net = stored - faded, gives_wh - use_wh
        if net > 0:
            more = min(net * self.eta, self.most_stored(stored)) if self.takes[month] else 0
            drawn = more / self.eta
            return min(self.full, stored + more), net - drawn, 0, drawn - more + faded
        given = min(-net, max(0, stored - self.floor[month]))
        return stored - given, 0, -net - given, faded


def answers(records):
    plan = Plan(records)
    period = plan.period
    latitude, longitude = math.radians(period["latitudeDeg"]), period["longitudeDeg"]
    ahead_h = period.get("clockAheadH", 0)
    calendar = Calendar(period)
    air_c = [grid(TEMPERATURE, period["latitudeDeg"], longitude, m) / 2 - 70 for m in range(12)]
    # [15] Its own place may be warmer than the air.
    bank_c = [20.0 if period.get("bankHeated") else max(celsius, plan.lowest_c) for celsius in air_c]
    clearness, scales = [], []
    for month in range(12):
        outside = mean_outside_wh(latitude, month)
        mean = grid(CLEARNESS, period["latitudeDeg"], longitude, month) / 200
        if "irradiation" in period:
            mean = min(1, period["irradiation"][month] * 1000 / max(outside, 10))
        of_days = clearness_of_days(mean, MONTH_DAYS[month])
        clearness += of_days
        found = sum(k * outside_wh(latitude, day) for k, day in zip(of_days, days_of_month(month)))
        scales.append(mean * outside * MONTH_DAYS[month] / found if found > 0 else 0)

    arrays = list(plan.arrays())
    planes = [
        (math.radians(a.get("tiltDeg", 0)), math.radians(a.get("facingDeg", 180 if latitude >= 0 else 0)), a.get("horizonDegByDirection"))
        for a, *_ in arrays
    ]
    engine_w = plan.engine_w()
    shore_w = sum(plan.charger_w(at, g["outputA"]) for at, g in plan.of("shoreCharger") if "averageWByMonth" not in g)
    averages = [(at, g) for at, g in plan.of("shoreCharger") if "averageWByMonth" in g]
    generator_w = [sum(plan.generator_w(at, g, month) for at, g in averages) for month in range(12)]

    def hours_of(number):
        month = MONTH_OF[number - 1]
        light = planes_of_day(latitude, number, clearness[number - 1], scales[month], planes)
        for hour in range(24):
            sun = []
            for (array, controller, full_sun), by_hour in zip(arrays, light):
                shade = array["shadePercentByMonth"][month] / 100 if "shadePercentByMonth" in array else 0
                sun.append(plan.sun_w(array, controller, full_sun, by_hour[hour] * (1 - shade), air_c[month]))
            at = (calendar, number, hour, latitude, ahead_h)
            engine = engine_w * running(period["driving"], *at) if "driving" in period else 0
            shore = shore_w * running(period["shore"], *at) if "shore" in period else 0
            yield month, sun, engine, shore, generator_w[month], plan.use_w(*at)

    bank = Bank(plan, bank_c)
    stretches = [[hour for number in days for hour in hours_of(number)] for days in calendar.stretches]
    start = bank.full * period.get("startPercent", 100) / 100
    usual, poor = (balance(bank, stretches, start, calendar.whole_year, share) for share in (1, POOR_YEAR))
    return [month_of(month, usual[month], poor[month], bank) for month in sorted(usual)]


def balance(bank, stretches, start, is_year, sun_share):
    """[18, 19] The sums of each month."""
    months = {}
    for hours in stretches:
        stored = start
        for counts in [False, True] if is_year else [True]:
            for month, sun, engine, shore, generator, use in hours:
                gives = sum(sun) * sun_share + engine + shore + generator
                stored, spilled, missing, lost = bank.hour(stored, month, gives, use)
                if counts:
                    add_hour(months.setdefault(month, empty_month(len(sun))), bank, month, (sun, engine, shore, generator, use), (stored, spilled, missing, lost))
    return months


def empty_month(arrays):
    sums = ("hours", "use", "engine", "shore", "generator", "notTaken", "missing", "lost", "belowReserve", "without", "highest")
    return {**dict.fromkeys(sums, 0), "sun": [0] * arrays, "lowest": math.inf}


def add_hour(figures, bank, month, flows, results):
    sun, engine, shore, generator, use = flows
    stored, spilled, missing, lost = results
    figures["hours"] += 1
    figures["use"] += use
    figures["sun"] = [a + b for a, b in zip(figures["sun"], sun)]
    figures["engine"] += engine
    figures["shore"] += shore
    figures["generator"] += generator
    figures["notTaken"] += spilled
    figures["missing"] += missing
    figures["lost"] += lost
    figures["lowest"] = min(figures["lowest"], stored / bank.full)
    figures["highest"] = max(figures["highest"], stored / bank.full)
    figures["belowReserve"] += stored < bank.reserve[month] - NEARLY_WH
    figures["without"] += missing > NEARLY_WH


def month_of(month, figures, in_poor_year, bank):
    days = figures["hours"] / 24
    use = figures["use"] / days
    usable = bank.full - bank.reserve[month]
    return {
        "month": MONTHS[month],
        "days": round(days),
        "verdict": verdict_of(figures, in_poor_year, bank),
        "use": use,
        "sun": [wh / days for wh in figures["sun"]],
        **{name: figures[name] / days for name in ("engine", "shore", "generator", "notTaken", "missing", "lost")},
        **{name: figures[name] for name in ("lowest", "highest", "belowReserve", "without")},
        "autonomy": usable / use if use else None,
    }


def verdict_of(figures, in_poor_year, bank):
    """[20]"""
    if figures["belowReserve"] or figures["without"]:
        gives = sum(figures["sun"]) + figures["engine"] + figures["shore"] + figures["generator"]
        return "not on average" if gives * bank.eta < figures["use"] else "runs short"
    return "barely" if in_poor_year["belowReserve"] or in_poor_year["without"] else "keeps up"


# The plans.


class Drawing(NETWORKS.Drawing):
    def source_circuit(self, source, outlet, minus, size, to):
        """A pair of wires of a source."""
        return self.add(
            "circuit", **{"from": self.at(source, outlet)}, returnTo=self.at(source, minus), **size,
            oneWayM=round(self.draw.uniform(0.2, 4), 2), to={"kind": self.records[to]["word"], "id": to},
        )

    def source_way(self, source, size, positive, negative):
        """To the poles of the bank: a pair of wires to those of one battery, else two cables."""
        plus, minus = ("outputPositive", "outputNegative") if self.records[source]["word"] == "dcDcCharger" else ("positive", "negative")
        if positive["part"] == negative["part"]:
            return self.source_circuit(source, plus, minus, size, positive["part"])
        metres = round(self.draw.uniform(0.2, 4), 2)
        self.add("cable", **{"from": self.at(source, plus), "to": positive}, **size, lengthM=metres)
        self.add("cable", **{"from": negative, "to": self.at(source, minus)}, **size, lengthM=metres)

    def hours(self):
        draw, use = self.draw, {}
        kind = draw.choice(["hours", "hours", "window", "window with hours", "all day"])
        if kind in ("hours", "window with hours"):
            use["hoursPerDay"] = draw.choice([0.5, 1, 2, 3.5, 4])
        if kind.startswith("window"):
            use["fromHour"] = draw.choice([0, 6, 7.5, 18, 20, 22])
            use["untilHour"] = (use["fromHour"] + draw.choice([5, 8, 9.5])) % 24
        if self.maybe(0.25):
            use["daysOfWeek"] = draw.choice([["Sat", "Sun"], ["Mon", "Wed", "Fri"], ["Tue"]])
        return use

    def use(self):
        draw = self.draw
        use = self.hours()
        if "fromHour" not in use and self.maybe(0.3):
            use["when"] = draw.choice(["dark", "daylight"])
        if self.maybe(0.3):
            use["dutyPercent"] = draw.choice([20, 35, 60])
        elif self.maybe(0.2):
            use["dutyPercentByMonth"] = [draw.choice([0, 20, 45, 80, 100]) for _ in range(12)]
        if self.maybe(0.15):
            use["months"] = draw.choice([["Nov", "Dec", "Jan"], ["Jun", "Jul", "Aug"]])
        if self.maybe(0.2):
            use["standbyW"] = draw.choice([0.2, 0.5, 2])
        return use


def drawn(seed):
    plan = Drawing(seed)
    draw = plan.draw
    system_v = draw.choice([12, 12, 24, 48])
    plan.add("build", voltage=system_v, insulationC=draw.choice([75, 90, 105]))
    chemistry = draw.choice(["LiFePO4", "LiFePO4", "AGM", "gel", "flooded lead-acid"])
    label = draw.choice([1, 12.8 / 12]) if chemistry == "LiFePO4" else 1
    one = dict(
        chemistry=chemistry,
        capacityAh=draw.choice([60, 100, 200, 300]),
        nominalV=round(system_v * label, 1),
        internalMilliohm=draw.choice([0.01, 0.1, 0.5]),
        **({"reservePercent": draw.choice([0, 10, 30])} if plan.maybe(0.3) else {}),
        **({"minimumChargePercent": draw.choice([5, 15])} if plan.maybe(0.3) else {}),
        **({"stateOfHealthPercent": draw.choice([70, 80])} if plan.maybe(0.2) else {}),
        **({"maxChargeA": draw.choice([20, 50])} if plan.maybe(0.5) else {}),
        **({"chargeCutOffC": draw.choice([-10, 5])} if plan.maybe(0.2) else {}),
        **({"lowestC": draw.choice([-5, 8])} if plan.maybe(0.2) else {}),
    )
    batteries, positive, negative = bank_of(plan, seed, one, system_v * label)
    bus = plan.add("busBar", side="positive")
    plan.add("cable", **{"from": positive, "to": plan.at(bus, "stud"), "lengthM": round(draw.uniform(0.3, 3), 2), "gauge": draw.choice([6, 4, 2])})
    start = plan.at(bus, "stud")

    used = []
    for _ in range(draw.choice([1, 2, 3, 4])):
        amperes = round(draw.uniform(0.3, 6), 2)
        watts = round(amperes * system_v, 1)
        kind = draw.choice(["load", "loadW", "current", "power", "resistance", "motor", "inverter"])
        if kind == "load":
            used.append(("circuit", plan.circuit(start, negative, load=amperes, use=plan.use())))
        elif kind == "loadW":
            used.append(("circuit", plan.circuit(start, negative, loadW=watts, use=plan.use())))
        else:
            if kind == "inverter":
                devices = [
                    {"name": name, "powerW": round(watts * share, 1), "use": plan.use()}
                    for name, share in (("first", 0.7), ("second", 0.3))[: draw.choice([1, 2])]
                ]
                part = plan.add(
                    "inverter", continuousW=round(2 * watts), efficiencyPercent=draw.choice([85, 90, 93]),
                    cutOffV=system_v * 0.8, idleW=draw.choice([0, 4, 9]), devices=devices,
                    **({"use": plan.hours()} if plan.maybe(0.3) else {}),
                )
            elif kind == "motor":
                part = plan.add("motor", runningA=amperes, startingA=3 * amperes, use=plan.use())
            else:
                drawing = {"current": {"currentA": amperes}, "power": {"powerW": watts}}
                part = plan.add("load", **drawing.get(kind, {"resistanceOhm": round(system_v / amperes, 2)}), use=plan.use())
            plan.circuit(start, negative, to={"kind": plan.records[part]["word"], "id": part})
            used.append((plan.records[part]["word"], part))

    ways = draw.choice(["sun", "sun", "sun", "sun", "sun and sun", "none"])
    for _ in range({"sun": 1, "sun and sun": 2, "none": 0}[ways]):
        tracking = plan.maybe(0.75)
        series = {12: 1, 24: 2, 48: 4}[system_v] if not tracking else draw.choice([1, 2]) * (2 if system_v == 48 else 1)
        array = plan.add(
            "solarArray", openCircuitV=50 if tracking else 24, shortCircuitA=9.8, maxPowerV=40 if tracking else draw.choice([18.6, 20]),
            maxPowerA=draw.choice([4.5, 9.2]), series=series, parallel=draw.choice([1, 1, 2]),
            **({"tiltDeg": draw.choice([10, 35, 60, 90]), **({"facingDeg": draw.choice([0, 45, 180, 210, 300])} if plan.maybe(0.6) else {})} if plan.maybe(0.6) else {}),
            **({"shadePercentByMonth": [draw.choice([0, 10, 50]) for _ in range(12)]} if plan.maybe(0.2) else {}),
        )
        controller = plan.add(
            "solarController", maxInputV=400, outputA=draw.choice([8, 20, 60]),
            **({} if tracking else {"tracking": False}), **({"efficiencyPercent": 97} if tracking and plan.maybe(0.3) else {}),
        )
        plan.source_circuit(array, "positive", "negative", draw.choice([{"gauge": 8}, {"mm2": 6}]), controller)
        plan.source_way(controller, draw.choice([{"gauge": 2}, {"mm2": 25}]), positive, negative)

    engine = random.Random(f"engine {seed}")
    period = {"name": "drawn", "latitudeDeg": draw.choice([round(draw.uniform(-89, 89), 2), round(draw.uniform(-65, 65), 2), 0.0, 78.2, -54.8, -77.85]),
              "longitudeDeg": draw.choice([round(draw.uniform(-180, 180), 2), 179.6, -179.9])}
    for word, occasion, given in (
        ("alternator", "driving", {"ratedA": draw.choice([30, 60])}),
        ("shoreCharger", "shore", {"outputA": draw.choice([10, 25])}),
    ):
        if plan.maybe(0.4):
            part = plan.add(word, **given)
            if word == "alternator" and system_v == 12 and engine.random() < 0.5:
                part = behind_starter(plan, part, engine)
            plan.source_way(part, {"gauge": 2}, positive, negative)
            period[occasion] = plan.hours()
            if plan.maybe(0.4):
                period[occasion]["everyDays"] = draw.choice([2, 3, 5])
    span = draw.choice(["year", "year", "months", "days", "over new year"])
    if span == "months":
        first, count = draw.randrange(12), draw.choice([1, 2, 5])
        period["months"] = [MONTHS[(first + k) % 12] for k in range(count)]
    elif span != "year":
        period["fromDay"], period["untilDay"] = draw.choice(
            [("15 Jun", "5 Sep"), ("3 Feb", "29 Feb"), ("10 Oct", "12 Oct")] if span == "days" else [("20 Dec", "6 Jan"), ("25 Nov", "14 Feb")]
        )
    if span != "year" and plan.maybe(0.4):
        period["startPercent"] = draw.choice([30, 60, 85])
    if plan.maybe(0.4):
        period["bankHeated"] = True
    if plan.maybe(0.25):
        period["clockAheadH"] = draw.choice([-1, 0.5, 2])
    if len(used) > 1 and plan.maybe(0.15):
        kind, part = draw.choice(used)
        period["notUsed"] = [{"kind": kind, "id": part}]
    if plan.maybe(0.1) and abs(period["latitudeDeg"]) < 45:
        latitude = math.radians(period["latitudeDeg"])
        period["irradiation"] = [round(draw.uniform(0.25, 0.7) * mean_outside_wh(latitude, m) / 1000, 2) for m in range(12)]
    with_more(plan, batteries, positive, negative)
    plan.add("period", **period)
    return plan.records


def bank_of(plan, seed, one, bank_v):
    """One battery, or several in series, in parallel, or both, from chances of their own. The poles that the rest is connected to."""
    draw = random.Random(f"bank {seed}")
    in_series = draw.choice([1, 2, 4][: {12: 1, 24: 2, 48: 3}[plan.records[0]["input"]["voltage"]]]) if draw.random() < 0.4 else 1
    in_parallel = draw.choice([2, 2, 3]) if draw.random() < 0.4 else 1
    one["nominalV"] = round(bank_v / in_series, 1)

    def wire(start, end):
        plan.add("cable", **{"from": start, "to": end, "lengthM": round(draw.uniform(0.2, 1.5), 2), "gauge": draw.choice([4, 2, "1/0"])})

    strings = []
    for _ in range(in_parallel):
        string = []
        for _ in range(in_series):
            own = dict(one)
            if in_parallel > 1:
                own["internalMilliohm"] = draw.choice([0.5, 2, 5])
            if in_parallel > 1 and draw.random() < 0.3:
                own["capacityAh"] += 20
            if len(strings) > 0 and draw.random() < 0.3:
                own["stateOfHealthPercent"] = 90
            string.append(plan.add("battery", **own))
        for lower, upper in zip(string, string[1:]):
            wire(plan.at(lower, "positive"), plan.at(upper, "negative"))
        strings.append(string)
    batteries = [battery for string in strings for battery in string]
    if in_parallel == 1:
        return batteries, plan.at(batteries[-1], "positive"), plan.at(batteries[0], "negative")
    poles = [plan.at(plan.add("busBar", side=side), "stud") for side in ("positive", "negative")]
    for string in strings:
        wire(plan.at(string[-1], "positive"), poles[0])
        wire(poles[1], plan.at(string[0], "negative"))
    return batteries, *poles


def behind_starter(plan, alternator, draw):
    """The alternator charges a starter battery, and a DC-DC charger there the bank."""
    starter = plan.add("battery", name="engine side, starter", chemistry="AGM", capacityAh=80, nominalV=12, internalMilliohm=4)
    charger = plan.add(
        "dcDcCharger", outputA=draw.choice([18, 25, 30]), **({"efficiencyPercent": 94} if draw.random() < 0.5 else {}),
    )
    for index, (start, end) in enumerate(
        [
            (plan.at(alternator, "positive"), plan.at(starter, "positive")),
            (plan.at(starter, "negative"), plan.at(alternator, "negative")),
            (plan.at(starter, "positive"), plan.at(charger, "inputPositive")),
            (plan.at(charger, "inputNegative"), plan.at(starter, "negative")),
        ]
    ):
        plan.add(
            "cable", name=f"engine side {index}", **{"from": start, "to": end},
            lengthM=round(draw.uniform(0.3, 4), 2), gauge=draw.choice([6, 4, 2]),
        )
    return charger


def with_more(plan, batteries, positive, negative):
    """Hills, standby and generators, from chances of their own: the rest of the plan is the same with and without them."""
    draw = plan.draw = random.Random(f"more {plan.records}")
    for record in list(plan.records):
        if record["word"] == "solarArray" and plan.maybe(0.3):
            record["input"]["horizonDegByDirection"] = [draw.choice([0, 0, 5, 12, 30]) for _ in range(8)]
    if plan.maybe(0.25):
        plan.records[batteries[0]]["input"]["standbyW"] = draw.choice([0.3, 1, 4])
    if plan.maybe(0.25):
        charger = plan.add("shoreCharger", outputA=draw.choice([5, 15]), averageWByMonth=[draw.choice([0, 8, 30, 400]) for _ in range(12)])
        plan.source_way(charger, draw.choice([{"gauge": 6}, {"mm2": 16}]), positive, negative)


def rounded(value):
    """Eight digits: enough for a comparison to 1e-6, and half the file."""
    if isinstance(value, float):
        return float(f"{value:.8g}")
    if isinstance(value, dict):
        return {name: rounded(part) for name, part in value.items()}
    return [rounded(part) for part in value] if isinstance(value, list) else value


if __name__ == "__main__":
    # A number of plans, a first seed and a file may be given, for a longer comparison that is not kept.
    wanted, seed = (int(word) for word in (sys.argv[1:3] or ["200", "0"]))
    cases = []
    while len(cases) < wanted:
        plan = drawn(seed)
        months = answers(plan)
        # Figures are compared by the use of a day: an array that gives a hundred times as much says nothing.
        most = max(month["use"] for month in months)
        if all(sum(month["sun"]) + month["engine"] + month["shore"] + month["generator"] < 30 * most for month in months):
            cases.append({"seed": seed, "records": plan, "months": rounded(months)})
        seed += 1
    file = HERE / "oracle-energy.json" if len(sys.argv) == 1 else Path(sys.argv[3])
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in cases)
    file.write_text(f'{{"cases":[\n{lines}\n]}}\n', encoding="utf-8")
