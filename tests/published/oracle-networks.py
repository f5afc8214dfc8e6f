"""Works out whole networks a second time, in another language and by other methods, and writes the answers into
oracle-networks.json. It knows nothing of the library: the formulas are those of the rules' pages.

- Voltages and currents: dense elimination, and the currents of constant-power loads found by repeating, not by Newton.
- The greatest short-circuit current: the short is put into the network and everything is solved again.
- What no device protects: every path without a repeated place is walked, one by one.
- Positions: a relay or selector switch between two banks is closed by making two nodes one, and each of its positions is a network
  of its own. Of such plans only the currents and voltages are compared, in each position and while an engine is cranked.

Run it when a formula is meant to change:  python3 tests/published/oracle-networks.py
Standard library only. The networks are drawn with a fixed seed: the same data give the same file, byte for byte.
"""

import importlib.util
import json
import random
from pathlib import Path

HERE = Path(__file__).parent
SPEC = importlib.util.spec_from_file_location("oracle_circuits", HERE / "oracle-circuits.py")
CIRCUITS = importlib.util.module_from_spec(SPEC)
SPEC.loader.exec_module(CIRCUITS)

# A battery is known by its cells, whatever is printed on it: 12 V and 12.8 V are both four cells of LiFePO4, 48 V and
# 51.2 V both sixteen. A system of four such cells is one of 12 V.
LITHIUM_CELLS = {6: 2, 6.4: 2, 12: 4, 12.8: 4, 24: 8, 25.6: 8, 48: 16, 51.2: 16}
# At rest if the scenario states no charge: the nominal voltage of lead-acid, 3.2 V a cell of LiFePO4.
REST_V_OF_LITHIUM_CELL = 3.2
# For the greatest short: the rest voltage of a full flooded battery of 12 V (magazine, read), and the end of charge of a
# LiFePO4 cell (row of 100 % of the list that was read).
FULL_V = {"flooded lead-acid": 12.66}
CHARGED_V_OF_LITHIUM_CELL = 3.65
# The lowest voltage at which devices work, if they state none: 1.75 V a lead-acid cell and 3.0 V a cell of LiFePO4 (common
# practice, from memory).
LOWEST_V_OF_12 = {"flooded lead-acid": 10.5, "LiFePO4": 12.0}
# Rest voltage by charge: the magazine's table for 12 V flooded, below it the 11.6 V of an empty one (mailing list post, read,
# rounded to 0.1 V); for a LiFePO4 cell the third list, and 3.40 V instead of its last row, which is a charging voltage (from
# memory). Straight lines between the rows.
REST_V_OF_12 = [(0, 11.6), (25, 12.15), (50, 12.3), (75, 12.45), (100, 12.66)]
REST_V_OF_CELL = [
    (0, 2.5), (10, 3.0), (20, 3.2), (30, 3.25), (40, 3.27), (50, 3.28), (60, 3.29), (70, 3.3), (80, 3.32), (90, 3.4), (100, 3.4),
]
# Internal resistance of 100 Ah, the high end of what is usual (common practice, from memory): a flooded battery of 12 V, and
# four LiFePO4 cells with their protection circuit.
USUAL_HIGH_OHM = {"flooded lead-acid": 0.012, "LiFePO4": 0.010}


# An engine is cranked for five seconds at most (common practice); the heating of copper by IEC 60949, A·s^0.5/mm2.
CRANKING_S = 5
ADIABATIC_K = 226


SOLID_OHM_PER_KM = {row["awg_alias"]: row["solid_ohm_per_km_20C"] for row in CIRCUITS.AWG["rows"]}


def copper_mm2(given):
    """A metric size states it; that of an AWG size follows from its solid resistance, copper of 1/58 ohm mm2/m."""
    return 1000 / 58 / SOLID_OHM_PER_KM[str(given["gauge"])] if "gauge" in given else given["mm2"]


def between_rows(rows, percent):
    for (low, low_v), (high, high_v) in zip(rows, rows[1:]):
        if low <= percent <= high:
            return low_v + (high_v - low_v) * (percent - low) / (high - low)
    raise ValueError(percent)


class Cells:
    """The voltages of one battery, from its chemistry and what is printed on it."""

    def __init__(self, chemistry, label_v):
        self.lithium = LITHIUM_CELLS[round(label_v, 1)] if chemistry == "LiFePO4" else None
        self.twelves = self.lithium / 4 if self.lithium else label_v / 12
        self.full = CHARGED_V_OF_LITHIUM_CELL * self.lithium if self.lithium else FULL_V[chemistry] * self.twelves
        # As printed on it.
        self.nominal = label_v
        self.lowest = LOWEST_V_OF_12[chemistry] * self.twelves
        self.usual_high_ohm = USUAL_HIGH_OHM[chemistry] * self.twelves

    def rest(self, percent):
        if percent is None:
            return REST_V_OF_LITHIUM_CELL * self.lithium if self.lithium else 12 * self.twelves
        if self.lithium:
            return between_rows(REST_V_OF_CELL, percent) * self.lithium
        return between_rows(REST_V_OF_12, percent) * self.twelves


class Drawing:
    """A plan such as a builder might write, drawn at random: a list of records."""

    def __init__(self, seed):
        self.draw = random.Random(seed)
        self.records = []

    def add(self, word, **given):
        self.records.append({"word": word, "input": given})
        return len(self.records) - 1

    def at(self, part, terminal):
        return {"kind": "terminal", "part": part, "of": self.records[part]["word"], "terminal": terminal}

    def maybe(self, share):
        return self.draw.random() < share

    def size(self, thin=False):
        metric = self.draw.random() < 0.4
        if metric:
            return {"mm2": self.draw.choice([1.5, 2.5, 4, 6] if thin else [10, 16, 25, 35, 50, 70])}
        return {"gauge": self.draw.choice([16, 14, 12, 10] if thin else [8, 6, 4, 2, 1, "1/0", "2/0"])}

    def device(self, least=2):
        rating = self.draw.choice([r for r in (3, 5, 10, 15, 20, 30, 40, 60, 80, 100, 150, 200, 250) if r >= least])
        return {"ratingA": rating, "distanceIn": self.draw.choice([2, 5, 6])}

    def device_part(self, least):
        """A fuse or breaker of its own, between two cables, with the resistance of its contacts."""
        given = {"ratingA": self.device(least)["ratingA"], "milliohm": self.draw.choice([0.2, 0.5, 1.5])}
        return self.add(self.draw.choice(["fuseHolder", "breaker"]), **given)

    def second_bank(self, positive, negative, chemistry, nominal_v):
        """A battery in reserve, on a relay or a selector switch; where the devices are connected then."""
        reserve = self.add(
            "battery", chemistry=chemistry, capacityAh=100, nominalV=nominal_v, internalMilliohm=round(self.draw.uniform(2, 9), 2)
        )
        self.cable(self.at(reserve, "negative"), negative, 3, near=0, far=0)
        if self.maybe(0.5):
            relay = self.add("relay", ratedA=200)
            self.cable(self.at(reserve, "positive"), self.at(relay, "line"), 3)
            self.cable(self.at(relay, "load"), positive, 3)
            return positive
        selector = self.add("selectorSwitch", ratedA=300)
        served = self.at(self.add("busBar", side="positive"), "stud")
        self.cable(positive, self.at(selector, "input1"), 2)
        self.cable(self.at(reserve, "positive"), self.at(selector, "input2"), 2)
        self.cable(self.at(selector, "common"), served, 2)
        return served

    def length(self, longest):
        if self.maybe(0.5):
            return {"lengthFt": round(self.draw.uniform(0.5, longest), 1)}
        return {"lengthM": round(self.draw.uniform(0.2, longest * 0.3), 2)}

    def cable(self, start, end, longest=6, thin=False, near=0.5, far=0.1):
        given = {"from": start, "to": end, **self.length(longest), **self.size(thin)}
        if self.maybe(near):
            given["protect"] = self.device()
        if self.maybe(far):
            given["protectFarEnd"] = self.device()
        return self.add("cable", **given)

    def circuit(self, start, back, **what):
        given = {"from": start, "returnTo": back, **self.size(thin=True), **what}
        if self.maybe(0.5):
            given["oneWayFt"] = round(self.draw.uniform(2, 25), 1)
        else:
            given["oneWayM"] = round(self.draw.uniform(0.5, 8), 2)
        if self.maybe(0.8):
            given["protect"] = self.device()
        return self.add("circuit", **given)


def drawn(seed):
    plan = Drawing(seed)
    draw = plan.draw
    system_v = draw.choice([12, 24, 48])
    plan.add(
        "build",
        voltage=system_v,
        insulationC=draw.choice([75, 90, 105]),
        **({"ambientC": draw.choice([20, 40])} if plan.maybe(0.3) else {}),
    )
    plus = plan.add("busBar", side="positive")
    minus = plan.add("busBar", side="negative")
    positive, negative = plan.at(plus, "stud"), plan.at(minus, "stud")

    # Strings of one or two batteries, one to three of them side by side.
    chemistry = draw.choice(["flooded lead-acid", "LiFePO4"])
    label = draw.choice([1, 12.8 / 12]) if chemistry == "LiFePO4" else 1
    two_banks = plan.maybe(0.4)
    in_string = 1 if two_banks else draw.choice([1, 1, 2])
    for _ in range(1 if two_banks else draw.choice([1, 1, 2, 3])):
        batteries = []
        for _ in range(in_string):
            given = {"chemistry": chemistry, "capacityAh": draw.choice([80, 100, 200])}
            given["nominalV"] = round(system_v / in_string * label, 1)
            if plan.maybe(0.5):
                given["internalMilliohm"] = round(draw.uniform(2, 9), 2)
            else:
                given["shortCircuitA"] = draw.choice([900, 1500, 2600])
            batteries.append(plan.add("battery", **given))
        for lower, upper in zip(batteries, batteries[1:]):
            plan.cable(plan.at(lower, "positive"), plan.at(upper, "negative"), 1, near=0, far=0)
        top, bottom = plan.at(batteries[-1], "positive"), plan.at(batteries[0], "negative")
        if not two_banks and plan.maybe(0.5):
            switch = plan.add("disconnect", ratedA=300)
            plan.cable(top, plan.at(switch, "line"), 2, near=0.8)
            plan.cable(plan.at(switch, "load"), positive, 2, near=0.2)
        elif plan.maybe(0.5):
            fuse = plan.device_part(least=40)
            plan.cable(top, plan.at(fuse, "line"), 1, near=0.2)
            plan.cable(plan.at(fuse, "load"), positive, 2, near=0.2)
        else:
            plan.cable(top, positive, 3, near=0.8)
        if plan.maybe(0.4):
            meter = plan.add("shunt", ratedA=draw.choice([100, 300]), ratedMV=50)
            plan.cable(bottom, plan.at(meter, "batterySide"), 2, near=0, far=0)
            plan.cable(plan.at(meter, "systemSide"), negative, 2, near=0, far=0)
        else:
            plan.cable(bottom, negative, 3, near=0, far=0)

    places = [(positive, negative)]
    starter = None
    if two_banks:
        places = [(plan.second_bank(positive, negative, chemistry, round(system_v * label, 1)), negative)]
        if plan.maybe(0.6):
            starter = plan.add("starterMotor", crankingA=draw.choice([60, 120, 180]))
            plan.cable(positive, plan.at(starter, "positive"), 2, near=0, far=0)
            plan.cable(plan.at(starter, "negative"), negative, 2, near=0, far=0)
    if plan.maybe(0.3):
        # A contactor only takes the supply from the devices behind it: it is judged closed alone.
        contactor = plan.add("relay", ratedA=200)
        behind = plan.add("busBar", side="positive")
        plan.cable(places[0][0], plan.at(contactor, "line"), 3)
        plan.cable(plan.at(contactor, "load"), plan.at(behind, "stud"), 3, near=0.2)
        places.append((plan.at(behind, "stud"), negative))
    for _ in range(draw.choice([0, 1, 2])):
        further_plus, further_minus = plan.add("busBar", side="positive"), plan.add("busBar", side="negative")
        start, back = draw.choice(places)
        for _ in range(draw.choice([1, 1, 2])):
            plan.cable(start, plan.at(further_plus, "stud"), 10, far=0.3)
        plan.cable(plan.at(further_minus, "stud"), back, 10, near=0, far=0)
        places.append((plan.at(further_plus, "stud"), plan.at(further_minus, "stud")))
    for _ in range(draw.choice([0, 1, 2])):
        panel = plan.add("fusePanel", positions=12)
        start, back = draw.choice(places)
        if plan.maybe(0.5):
            plan.circuit(start, back, to={"kind": "fusePanel", "id": panel}, **plan.size())
            for size in ("gauge", "mm2"):  # The later of the two sizes holds.
                given = plan.records[-1]["input"]
                if "gauge" in given and "mm2" in given:
                    del given[size]
        else:
            plan.cable(start, plan.at(panel, "feed"), 8)
            plan.cable(plan.at(panel, "negative"), back, 8, near=0, far=0)
        places.append((plan.at(panel, "branch"), plan.at(panel, "negative")))

    for _ in range(draw.choice([2, 4, 6])):
        start, back = draw.choice(places)
        kind = draw.choice(["load", "loadW", "current", "power", "resistance", "motor", "inverter"])
        amperes = round(draw.uniform(0.3, 9), 2)
        watts = round(amperes * system_v, 1)
        if kind == "load":
            plan.circuit(start, back, load=amperes)
            continue
        if kind == "loadW":
            plan.circuit(start, back, loadW=watts)
            continue
        if kind == "inverter":
            part = plan.add(
                "inverter",
                continuousW=watts,
                efficiencyPercent=draw.choice([85, 90]),
                cutOffV=system_v * 0.8,
                idleW=draw.choice([0, 5]),
            )
        elif kind == "motor":
            part = plan.add("motor", runningA=amperes, startingA=round(3 * amperes, 2))
        else:
            value = {"current": amperes, "power": watts, "resistance": round(system_v / amperes, 3)}[kind]
            name = {"current": "currentA", "power": "powerW", "resistance": "resistanceOhm"}[kind]
            part = plan.add("load", **{name: value})
        if plan.maybe(0.6):
            plan.circuit(start, back, to={"kind": plan.records[part]["word"], "id": part})
        else:
            plan.cable(start, plan.at(part, "positive"), 20, thin=True, near=0.8)
            plan.cable(plan.at(part, "negative"), back, 20, thin=True, near=0, far=0)
    # They can feed a short; in the one scenario of the plan none of them runs.
    if plan.maybe(0.5):
        word = draw.choice(["alternator", "shoreCharger"])
        output = {"ratedA": draw.choice([20, 60])} if word == "alternator" else {"outputA": draw.choice([15, 40])}
        part = plan.add(word, **output)
        start, back = draw.choice(places)
        plan.cable(plan.at(part, "positive"), start, 8, near=0.2, far=0.6)
        plan.cable(plan.at(part, "negative"), back, 8, near=0, far=0)
    charge = {"chargePercent": draw.choice([0, 10, 25, 33, 60, 95, 100])} if plan.maybe(0.4) else {}
    plan.add("scenario", name="on the bank", **charge)
    if starter is not None:
        plan.add("scenario", name="cranking", starting=[{"kind": "starterMotor", "id": starter}], **charge)
    return plan.records


def ampacity_and_column(given, build, together):
    """As in oracle-circuits.py, for one size without wires side by side, outside of engine spaces."""
    basis = CIRCUITS.AWG_BASIS if "gauge" in given else CIRCUITS.METRIC_BASIS
    size = str(given["gauge"]) if "gauge" in given else given["mm2"]
    table = basis["amperes"][size]
    column_c = max(printed for printed in table if printed <= build["insulationC"])
    ambient_c = build.get("ambientC", 30)
    bundle = next((less for least, less in reversed(basis["bundle"]) if together >= least), 1)
    return table[column_c] * CIRCUITS.ambient_factor(column_c, ambient_c) * bundle, column_c, basis["ohm_per_m"][size]


class Network:
    """Nodes are numbered; conductors, batteries and loads hang between them."""

    def __init__(self, records, position=None):
        """`position`: of the switch between two banks, as its record and its state: "open", or the one input that it connects."""
        self.records = records
        self.position = position
        self.build = records[0]["input"]
        self.system_v = self.build["voltage"]
        scenario = next(record for record in records if record["word"] == "scenario")
        self.charge = scenario["input"].get("chargePercent")
        self.nodes = {}
        self.conductors, self.batteries, self.loads, self.limited = [], [], [], []
        self.resistors, self.device_parts = [], []
        for index, record in enumerate(records):
            getattr(self, "read_" + record["word"], lambda *_: None)(index, record["input"])
        # Every string has a cable to the bus bar of the whole bank, or to a disconnect of its own, or a breaker, which is one too
        # (page of disconnect/missing). If one string has none, each disconnect may be open while everything is supplied; if it is closed, its string carries its share.
        behind = {self.node(i, "line") for i, r in enumerate(records) if r["word"] in ("disconnect", "breaker")}
        is_without = any(battery_plus not in self.led_to(behind) for battery_plus in tops(self))
        for conductor in self.conductors:
            conductor["spare"] = is_without and conductor["to"] in behind

    def led_to(self, nodes):
        """Where the conductors begin that end in these."""
        return {c["from"] for c in self.conductors if c["to"] in nodes}

    def node(self, part, terminal):
        word = self.records[part]["word"]
        one = {
            "fusePanel": {"feed": "branch"},
            "disconnect": {"line": "load"},
            "relay": {"line": "load"},
            "selectorSwitch": {"input1": "common", "input2": "common"},
        }.get(word, {})
        if self.position and self.position[0] == part:
            one = {one_input: common for one_input, common in one.items() if one_input == self.position[1]}
        return self.nodes.setdefault((part, one.get(terminal, terminal)), len(self.nodes))

    def node_of(self, written):
        return self.node(written["part"], written["terminal"])

    def read_battery(self, index, given):
        cells = Cells(given["chemistry"], given["nominalV"])
        full_v = cells.full
        # At its strongest the maker's short-circuit current tells; in use no less than the usual range's high end.
        strong = in_use = given["internalMilliohm"] / 1000 if "internalMilliohm" in given else full_v / given["shortCircuitA"]
        if "internalMilliohm" not in given:
            in_use = max(strong, cells.usual_high_ohm * 100 / given["capacityAh"])
        plus, minus = self.node(index, "positive"), self.node(index, "negative")
        self.batteries.append({"part": index, "plus": plus, "minus": minus, "strong": strong, "inUse": in_use, "v": cells.rest(self.charge), "full": full_v})
        self.nominal_v = cells.nominal / cells.twelves * self.system_v / 12
        # Alike in all of them, and the same share of the system's voltage whatever the number in series.
        self.lowest_v = cells.lowest / cells.twelves * self.system_v / 12

    def read_shunt(self, index, given):
        ohm = given["ratedMV"] / 1000 / given["ratedA"]
        self.resistors.append((self.node(index, "batterySide"), self.node(index, "systemSide"), ohm))

    def read_fuseHolder(self, index, given):
        ends = self.node(index, "line"), self.node(index, "load")
        self.resistors.append((*ends, given["milliohm"] / 1000))
        self.device_parts.append({"from": ends[0], "to": ends[1], "devices": [("part", given["ratingA"])], "ohm": given["milliohm"] / 1000})

    read_breaker = read_fuseHolder

    def read_starterMotor(self, index, given):
        self.loads.append({**self.poles(index), "currentA": 0, "crankingA": given["crankingA"]})

    def poles(self, index):
        return {"part": index, "plus": self.node(index, "positive"), "minus": self.node(index, "negative")}

    def read_load(self, index, given):
        self.loads.append({**self.poles(index), **given})

    def read_motor(self, index, given):
        self.loads.append({**self.poles(index), "currentA": given["runningA"]})

    def read_inverter(self, index, given):
        watts = given["continuousW"] / (given["efficiencyPercent"] / 100) + given["idleW"]
        self.loads.append({**self.poles(index), "powerW": watts, "lowestV": given["cutOffV"], "machine": True})

    def read_alternator(self, index, given):
        self.limited.append({**self.poles(index), "limitA": given["ratedA"]})

    def read_shoreCharger(self, index, given):
        self.limited.append({**self.poles(index), "limitA": given["outputA"]})

    def read_cable(self, index, given):
        metres = given.get("lengthM", given.get("lengthFt", 0) * CIRCUITS.METRES_PER_FOOT)
        self.conductor(index, "cable", given, self.node_of(given["from"]), self.node_of(given["to"]), metres, 1)

    def read_circuit(self, index, given):
        metres = given.get("oneWayM", given.get("oneWayFt", 0) * CIRCUITS.METRES_PER_FOOT)
        if "to" in given:
            to = given["to"]
            feed, back = ("feed", "negative") if to["kind"] == "fusePanel" else ("positive", "negative")
            plus, minus = self.node(to["id"], feed), self.node(to["id"], back)
        else:
            plus, minus = self.node(index, "positive"), self.node(index, "negative")
            load = {"currentA": given["load"]} if "load" in given else {"powerW": given["loadW"]}
            self.loads.append({"part": index, "plus": plus, "minus": minus, **load})
        self.conductor(index, "positive", given, self.node_of(given["from"]), plus, metres, 2)
        self.conductor(index, "return", given, minus, self.node_of(given["returnTo"]), metres, 2)

    def conductor(self, record, role, given, start, end, metres, together):
        ampacity_a, column_c, ohm_per_m = ampacity_and_column(given, self.build, together)
        devices = [] if role == "return" else [
            (end_name, given[name]["ratingA"])
            for end_name, name in (("near", "protect"), ("far", "protectFarEnd"))
            if name in given
        ]
        self.conductors.append(
            {
                "record": record,
                "role": role,
                "from": start,
                "to": end,
                "metres": metres,
                "ohm20": ohm_per_m * metres,
                "ampacity": ampacity_a,
                "column": column_c,
                "mm2": copper_mm2(given),
                "devices": devices,
            }
        )

    def warm_ohm(self, conductor, current_a):
        ambient_c = self.build.get("ambientC", 30)
        column_c = conductor["column"]
        warm_c = ambient_c + (column_c - ambient_c) * (current_a / conductor["ampacity"]) ** 2
        return conductor["ohm20"] * (1 + CIRCUITS.ALPHA_PER_K * (min(warm_c, column_c) - 20))


    def cranked_ohm(self, conductor, before_a, cranked_a):
        """The resistance of before; and the adiabatic heating of IEC 60949 over the seconds of cranking, first order."""
        before = self.warm_ohm(conductor, before_a)
        heating = CRANKING_S * (cranked_a / (ADIABATIC_K * conductor["mm2"])) ** 2
        return min(before * (1 + heating), self.warm_ohm(conductor, conductor["ampacity"]))


def inverted(rows):
    """Gauss and Jordan, with the greatest pivot of each column."""
    size = len(rows)
    work = [row[:] + [1.0 if i == j else 0.0 for j in range(size)] for i, row in enumerate(rows)]
    for column in range(size):
        best = max(range(column, size), key=lambda row: abs(work[row][column]))
        work[column], work[best] = work[best], work[column]
        pivot = work[column][column]
        work[column] = [value / pivot for value in work[column]]
        for row in range(size):
            factor = work[row][column]
            if row != column and factor:
                work[row] = [value - factor * other for value, other in zip(work[row], work[column])]
    return [row[size:] for row in work]


class Conductances:
    """The nodal matrix; the first battery's negative terminal is the reference. `one`: nodes that are the same as others."""

    def __init__(self, network, extra=0, one=None):
        self.network = network
        self.one = one or {}
        self.size = len(network.nodes) + extra
        self.reference = self.at(network.batteries[0]["minus"])
        self.joins = []
        for a, b, ohm in network.resistors:
            self.join(a, b, ohm)

    def at(self, node):
        return self.one.get(node, node)

    def merged(self, one):
        self.one = one
        self.reference = self.at(self.reference)
        return self

    def join(self, a, b, ohm):
        self.joins.append((a, b, 1 / ohm))

    def solver(self):
        rows = [[0.0] * self.size for _ in range(self.size)]
        for a, b, siemens in self.joins:
            a, b = self.at(a), self.at(b)
            for one, other in ((a, b), (b, a)):
                if a != b:
                    rows[one][one] += siemens
                    rows[one][other] -= siemens
        kept = [node for node in range(self.size) if node != self.reference and rows[node][node] > 0]
        inverse = inverted([[rows[i][j] for j in kept] for i in kept])

        def solve(into):
            volts = [0.0] * self.size
            for row, node in zip(inverse, kept):
                volts[node] = sum(a * into[other] for a, other in zip(row, kept))
            return volts

        return solve


def operating_point(network, lowest=None, only=None, opened=False, cranking=False):
    """Currents of the loads from the voltages, voltages from the currents, until neither moves; then the temperatures.

    `lowest`: which constant powers draw the current of the lowest voltage at which they work, whatever the voltage is: the
    loads, or all of them, inverters too.
    `only`: the one device that is on, as a constant current.
    `opened`: every disconnect is open without which the bank still supplies everything.
    `cranking`: starter motors draw their current, for so short a time that no heat leaves the conductors.
    """
    uncranked = operating_point(network, opened=opened) if cranking else None
    if cranking and uncranked is None:
        return None
    loads = network.loads if only is None else [only]
    is_open = [opened and c["spare"] for c in network.conductors]
    warm = [network.warm_ohm(c, 0) for c in network.conductors]
    volts = None
    for _ in range(60):
        matrix = Conductances(network)
        for conductor, ohm, opened in zip(network.conductors, warm, is_open):
            if not opened:
                matrix.join(conductor["from"], conductor["to"], ohm)
        for battery in network.batteries:
            matrix.join(battery["plus"], battery["minus"], battery["inUse"])
        for load in loads:
            if "resistanceOhm" in load:
                matrix.join(load["plus"], load["minus"], load["resistanceOhm"])
        solve = matrix.solver()
        for _ in range(200):
            into = [0.0] * matrix.size
            for battery in network.batteries:
                into[battery["plus"]] += battery["v"] / battery["inUse"]
                into[battery["minus"]] -= battery["v"] / battery["inUse"]
            for load in loads:
                if "powerW" in load and (lowest == "all" or (lowest == "loads" and "machine" not in load)):
                    drawn_a = load["powerW"] / load.get("lowestV", network.lowest_v)
                elif "powerW" in load:
                    across = volts[load["plus"]] - volts[load["minus"]] if volts else network.system_v
                    drawn_a = load["powerW"] / across
                elif cranking and "crankingA" in load:
                    drawn_a = load["crankingA"]
                else:
                    drawn_a = load.get("currentA", 0)
                into[load["plus"]] -= drawn_a
                into[load["minus"]] += drawn_a
            before, volts = volts, solve(into)
            if before and max(abs(a - b) for a, b in zip(before, volts)) < 1e-14 * network.system_v:
                break
        amperes = [
            0 if opened else (volts[c["from"]] - volts[c["to"]]) / ohm
            for c, ohm, opened in zip(network.conductors, warm, is_open)
        ]
        if cranking:
            warmer = [network.cranked_ohm(c, before_a, now_a) for c, before_a, now_a in zip(network.conductors, uncranked[1], amperes)]
        else:
            warmer = [network.warm_ohm(c, current) for c, current in zip(network.conductors, amperes)]
        moved = max(abs(a - b) / b for a, b in zip(warmer, warm))
        warm = warmer
        if moved < 1e-13:
            break
    if lowest or only:
        return volts, amperes
    lost = max((abs(volts[l["plus"]] - volts[l["minus"]]) for l in network.loads), default=0)
    least = min((volts[l["plus"]] - volts[l["minus"]] for l in network.loads), default=0)
    # Far from the nose, where repeating converges for certain, and only with loads that are fed.
    if not network.system_v * 0.6 < least <= lost < network.system_v * 1.2:
        return None
    return volts, amperes


def bottoms(network):
    """The negative poles of whole strings: those that no other battery's positive pole is linked to."""
    plus = {battery["plus"]: battery for battery in network.batteries}
    linked = set()
    for conductor in network.conductors:
        for one, other in (("from", "to"), ("to", "from")):
            if conductor[one] in plus and any(b["minus"] == conductor[other] for b in network.batteries):
                linked.add(conductor[other])
    return [battery["minus"] for battery in network.batteries if battery["minus"] not in linked]


def tops(network):
    """The positive poles of whole strings."""
    minus = {battery["minus"] for battery in network.batteries}
    linked = set()
    for conductor in network.conductors:
        for one, other in (("from", "to"), ("to", "from")):
            if conductor[one] in minus and any(b["plus"] == conductor[other] for b in network.batteries):
                linked.add(conductor[other])
    return [battery["plus"] for battery in network.batteries if battery["plus"] not in linked]


def greatest_fault(network, conductor, end):
    """A short right beside the device, on either side of it, to the bank's negative terminal; what flows through the device."""
    start, finish = (conductor["from"], conductor["to"]) if end == "near" else (conductor["to"], conductor["from"])
    ground = bottoms(network)[0]
    # No resistance at all on the way back: every negative pole of the bank, and the place of the short, are one node.
    one = {node: ground for node in bottoms(network)}
    place = len(network.nodes)
    one[place] = ground
    matrix = Conductances(network, extra=1, one=one)
    for other in network.conductors:
        if other is not conductor:
            matrix.join(other["from"], other["to"], other["ohm20"])
    # The device stands at the end of its conductor: the short lies between it and the whole length of the conductor.
    matrix.join(place, finish, conductor["ohm20"])
    for battery in network.batteries:
        matrix.join(battery["plus"], battery["minus"], battery["strong"])
    # What flows through the device is what the rest of the network sends to its terminal when that is at 0 V.
    one[start] = ground
    matrix = matrix.merged(one)
    into = [0.0] * matrix.size
    for battery in network.batteries:
        into[matrix.at(battery["plus"])] += battery["full"] / battery["strong"]
        into[matrix.at(battery["minus"])] -= battery["full"] / battery["strong"]
    for source in network.limited:
        into[matrix.at(source["plus"])] += source["limitA"]
        into[matrix.at(source["minus"])] -= source["limitA"]
    volts = matrix.solver()(into)

    def volt(node):
        return volts[matrix.at(node)]

    arriving = 0.0
    for other in network.conductors:
        if other is conductor:
            continue
        for here, there in (("from", "to"), ("to", "from")):
            if other[here] == start:
                arriving += (volt(other[there]) - volt(start)) / other["ohm20"]
    for part in network.device_parts:
        for here, there in (("from", "to"), ("to", "from")):
            if part[here] == start:
                arriving += (volt(part[there]) - volt(start)) / part["ohm"]
    for battery in network.batteries:
        if battery["plus"] == start:
            arriving += (battery["full"] - (volt(start) - volt(battery["minus"]))) / battery["strong"]
    for source in network.limited:
        if source["plus"] == start:
            arriving += source["limitA"]
    # The device stands between what comes to its terminal and what comes through its own conductor.
    return max(arriving, volt(finish) / conductor["ohm20"])


def unprotected(network):
    """Positive conductors and the ends at which some path brings a source that no device on it stops in time."""
    sources = [(node, float("inf")) for node in tops(network)]
    sources += [(source["plus"], source["limitA"]) for source in network.limited]
    positive = reached({node for node, _ in sources}, lines(network))
    found = []
    for conductor in network.conductors:
        if conductor["role"] == "return" or conductor["from"] not in positive or is_link(network, conductor):
            continue
        if is_lead(network, conductor):
            continue
        ends = []
        for end, node in (("near", conductor["from"]), ("far", conductor["to"])):
            if any(where == end for where, _ in conductor["devices"]):
                continue
            pushing = [start for start, limit in sources if limit > conductor["ampacity"]]
            if any(has_open_path(network, start, node, conductor) for start in pushing):
                ends.append(end)
        if ends:
            found.append([conductor["record"], ends])
    return found


def is_lead(network, conductor):
    """It only leads from a battery to a fuse or breaker that is small enough for it, and no further than 72 in."""
    at_battery = any(battery["plus"] == conductor["from"] for battery in network.batteries)
    return (
        at_battery
        and conductor["metres"] <= 72 * 0.0254
        and any(
            part["from"] == conductor["to"] and part["devices"][0][1] <= conductor["ampacity"]
            for part in network.device_parts
        )
    )


def lines(network):
    """The conductors, and the fuses and breakers between two cables."""
    return network.conductors + network.device_parts


def is_link(network, conductor):
    poles = {battery["plus"] for battery in network.batteries} | {battery["minus"] for battery in network.batteries}
    return conductor["from"] in poles and conductor["to"] in poles


def reached(nodes, conductors):
    nodes = set(nodes)
    grown = True
    while grown:
        grown = False
        for conductor in conductors:
            ends = {conductor["from"], conductor["to"]}
            if ends & nodes and not ends <= nodes:
                nodes |= ends
                grown = True
    return nodes


def has_open_path(network, start, goal, target):
    """Walks every path that repeats no place; a conductor with a device rated for the target stops it."""

    def walk(node, visited):
        if node == goal:
            return True
        for other in lines(network):
            if other is target or is_link(network, other):
                continue
            if any(rating <= target["ampacity"] for _, rating in other["devices"]):
                continue
            for here, there in (("from", "to"), ("to", "from")):
                if other[here] == node and other[there] not in visited and walk(other[there], visited | {other[there]}):
                    return True
        return False

    return walk(start, {start})


def gives(battery, volts):
    return max(0, (battery["v"] - (volts[battery["plus"]] - volts[battery["minus"]])) / battery["inUse"])


def alone(network, volts):
    """Every device that may be on by itself, with the currents that it causes in conductors and batteries, for ampacity and
    ratings: a load as the plan states it, and a charger, which is on in no scenario, with all that it gives. Inverters are in
    the scenario, and rules of their own judge their supply.

    `volts`: those of the scenario. Where ways divide, it shows the share of a load that draws as much there.
    """
    positions = [False, True] if any(c["spare"] for c in network.conductors) else [False]
    for source in network.limited:
        for opened in positions:
            yield "charger", *shares(network, source, source["limitA"], source["limitA"], opened)
    for load in network.loads:
        if "machine" in load:
            continue
        across = volts[load["plus"]] - volts[load["minus"]]
        if "powerW" in load:
            drawn_a, there_a = load["powerW"] / network.nominal_v, load["powerW"] / across
        elif "resistanceOhm" in load:
            drawn_a, there_a = network.nominal_v / load["resistanceOhm"], across / load["resistanceOhm"]
        else:
            drawn_a = there_a = load["currentA"]
        design_a = max(drawn_a, load["powerW"] / network.lowest_v) if "powerW" in load else drawn_a
        for opened in positions:
            carried, given = shares(network, load, drawn_a, design_a, opened)
            # The scenario has every disconnect closed.
            if not opened and there_a >= drawn_a * (1 - 1e-9):
                carried, given = ([a if a > design_a * (1 - 1e-7) else 0 for a in amperes] for amperes in (carried, given))
            yield "load", carried, given


def shares(network, device, drawn_a, design_a, opened):
    """How its current divides is found at the current that flows in use."""
    volts, amperes = operating_point(
        network, only={"plus": device["plus"], "minus": device["minus"], "currentA": drawn_a}, opened=opened
    )
    return [abs(a) * design_a / drawn_a for a in amperes], [
        gives(b, volts) * design_a / drawn_a for b in network.batteries
    ]


def answers(records):
    """None where the network lies near the limit of what it can carry: repeating does not converge there."""
    network = Network(records)
    solved = operating_point(network)
    if solved is None:
        return None
    volts, amperes = solved
    between_banks = switch_between_banks(records)
    if between_banks is not None:
        return in_every_position(records, between_banks)
    _, loads_at_lowest = operating_point(network, "loads")
    volts_at_lowest, _ = operating_point(network, "all")
    singly = list(alone(network, volts))
    design = [
        max(abs(amperes[i]), abs(loads_at_lowest[i]), *(carried[i] for _, carried, _ in singly))
        for i in range(len(amperes))
    ]
    # A charger charges them.
    single_loads = [given for kind, _, given in singly if kind == "load"]
    return {
        "conductors": [
            {"record": c["record"], "role": c["role"], "currentA": current, "designA": most}
            for c, current, most in zip(network.conductors, amperes, design)
        ],
        "batteries": [
            {
                "record": b["part"],
                "givesA": max(gives(b, volts), gives(b, volts_at_lowest), *(given[i] for given in single_loads)),
            }
            for i, b in enumerate(network.batteries)
        ],
        "loads": [{"record": l["part"], "voltageV": volts[l["plus"]] - volts[l["minus"]]} for l in network.loads],
        "greatestFaults": [
            {"record": c["record"], "end": end, "currentA": greatest_fault(network, c, end)}
            for c in network.conductors
            if c["role"] != "return"
            for end, _ in c["devices"]
        ],
        "unprotected": [{"record": record, "ends": ends} for record, ends in unprotected(network)],
    }


def switch_between_banks(records):
    """The first relay or selector: `second_bank` makes it before any contactor."""
    batteries = [index for index, record in enumerate(records) if record["word"] == "battery"]
    switches = [index for index, record in enumerate(records) if record["word"] in ("relay", "selectorSwitch")]
    # A reserve has the resistance of its own next to the switch: it is the record before its cable and the switch.
    return next((switch for switch in switches if switch - 2 in batteries), None)


def in_every_position(records, switch):
    """Currents and voltages in each position of the switch between two banks, for each scenario."""
    states = ["open"] if records[switch]["word"] == "relay" else ["input1", "input2"]
    names = [record["input"]["name"] for record in records if record["word"] == "scenario"]
    positions = []
    for state in ["all", *states]:
        network = Network(records, None if state == "all" else (switch, state))
        for name in names:
            solved = operating_point(network, cranking=name == "cranking")
            if solved is None:
                return None
            volts, amperes = solved
            positions.append(
                {
                    "scenario": name,
                    "switch": switch,
                    "state": state,
                    "conductors": [
                        {"record": c["record"], "role": c["role"], "currentA": current}
                        for c, current in zip(network.conductors, amperes)
                    ],
                    "loads": [{"record": l["part"], "voltageV": volts[l["plus"]] - volts[l["minus"]]} for l in network.loads],
                }
            )
    return {"positions": positions}


if __name__ == "__main__":
    import sys

    # A number of networks and a first seed may be given, for a longer comparison that is not kept.
    wanted, seed = (int(word) for word in (sys.argv[1:3] or ["160", "0"]))
    cases = []
    while len(cases) < wanted:
        plan = drawn(seed)
        found = answers(plan)
        if found is not None:
            cases.append({"seed": seed, "records": plan, "answers": found})
        seed += 1
    file = HERE / "oracle-networks.json" if len(sys.argv) == 1 else Path(sys.argv[3])
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in cases)
    file.write_text(f'{{"cases":[\n{lines}\n]}}\n', encoding="utf-8")
