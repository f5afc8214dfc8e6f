"""Works out circuits a second time, from the reference data beside this file and in another language, and writes the
answers into oracle-circuits.json. It knows nothing of the library: the formulas are those of the rules' pages.

Run it when a table or a formula is meant to change:  python3 tests/published/oracle-circuits.py
Standard library only. The circuits are drawn with a fixed seed: the same data give the same file, byte for byte.
"""

import json
import math
import random
from pathlib import Path

HERE = Path(__file__).parent


def read(name):
    return json.loads((HERE / name).read_text(encoding="utf-8"))


CFR, METRIC, AWG, IEC, FUSES, NEC = map(
    read, ("33cfr183.json", "metric.json", "awg.json", "iec60228.json", "fuses.json", "nec.json")
)


def column(printed):
    """The column printed 85-90 is for insulation from 85 degC up."""
    return int(str(printed).split("-")[0])


def columns(cells):
    return {column(key): value for key, value in cells.items() if key != "confirmed"}


# 33 CFR 183.425 Table 5, notes 1 and 2; ASTM B258 with the annealed copper standard; 2 % for the lay of the strands.
AWG_BASIS = {
    "amperes": {row["awg_alias"]: columns(row["amps"]) for row in CFR["rows"]},
    "engine": columns(CFR["note_1_engine_space_factor"]["factors"]),
    "engine_c": CFR["base_conditions"]["engine_space_ambient_degC"],
    "bundle": [(row["min"], row["factor"]) for row in CFR["note_2_conductor_count_factor"]["factors"]],
    "ohm_per_m": {row["awg_alias"]: row["solid_ohm_per_km_20C"] * 1.02 / 1000 for row in AWG["rows"]},
}
# ISO 10133 Annex A and its notes, recalled: only copied faithfully. Its 60 degC column is that of a ship-cable table, the
# stricter one. IEC 60228 class 5.
TABLE_A1 = METRIC["iso10133_annexA_table_A1"]
METRIC_BASIS = {
    "amperes": {row["mm2"]: columns(row["amps"]) for row in TABLE_A1["rows"]},
    "engine": columns(TABLE_A1["engine_space_60C_ambient_factor"]),
    "engine_c": 60,
    "bundle": [
        (int(row["conductors"].rstrip("+").split("-")[0]), row["factor"]) for row in TABLE_A1["bundling_factor"]["rows"]
    ],
    "ohm_per_m": {row["mm2"]: row["class5_plain_max_ohm_per_km_20C"] / 1000 for row in IEC["rows"]},
}
# 5 and 7.5 A breakers: FAA AC 43.13-1B CHG 1, Table 11-3. 601 A is a fuse for one purpose.
BREAKERS = NEC["standard_device_ratings_240_6_A"]
MADE = {
    family["designation"].split(",")[0]: sorted([*family["ratings_A"], *family.get("also_made_A", [])])
    for family in FUSES["families"]
    if "ratings_A" in family
}
# Of these only the scope was read. Their ratings are taken to be those of the strip fuses, within the scope.
STRIP = sorted({*MADE["ISO 8820-5 Type SF 30"], *MADE["ISO 8820-5 Type SF 51"]})
SCOPES = {family["designation"].split(" SF")[0]: family for family in FUSES["families_scope_only"]}
MADE |= {name: [rating for rating in STRIP if rating <= scope["rating_max_A"]] for name, scope in SCOPES.items()}
MADE["circuit breaker"] = sorted({*BREAKERS["amps"], *BREAKERS["additional_fuse_ratings"], 5, 7.5} - {601})
# Empty: only the marking tells. Rated for alternating current alone is the same.
MADE_FOR_V = {name: [] for name in MADE} | {
    family["designation"].split(",")[0]: family.get("rated_V", []) for family in FUSES["families"] if "ratings_A" in family
} | {name: scope["rated_V"] for name, scope in SCOPES.items()}
# Breakers of the metric countries: IEC 60898-1 and 60947-2, preferred rated currents (from memory). A plan may state them.
METRIC_BREAKERS = {2, 4, 8, 13, 16, 32, 63, 160, 315, 630}
MADE_BY_ANY = {rating for ratings in MADE.values() for rating in ratings} | METRIC_BREAKERS

METRES_PER_FOOT = 0.3048
# Lowest voltage at which devices work on a lead-acid battery, for each 12 V (common practice, from memory).
LOWEST_V_OF_12 = 10.5
CHARGED_V_OF_12 = 14.4
ALPHA_PER_K = next(c["value"] for c in AWG["constants"] if c["name"] == "copper_temperature_coefficient_20C")


def ambient_factor(column_c, ambient_c):
    """NFPA 70, 310.15(B)(1); nothing is earned by a cool place, nothing left where the place is as hot as the column."""
    return 0 if ambient_c >= column_c else min(1, math.sqrt((column_c - ambient_c) / (column_c - 30)))


def answers(circuit, build):
    def stated(name, otherwise=None):
        return circuit.get(name, build.get(name, otherwise))

    system_v = stated("voltage", 12)
    load_a = circuit["load"] if "load" in circuit else circuit["loadW"] / circuit.get("minimumV", system_v)
    # For ampacity and ratings a power draws what it draws at the lowest voltage at which the device works: as stated, else
    # 1.75 V a lead-acid cell. Outside of a network the battery is unknown, and lithium ends at a higher voltage.
    design_a = circuit["load"] if "load" in circuit else circuit["loadW"] / circuit.get("minimumV", LOWEST_V_OF_12 / 12 * system_v)
    if "oneWayFt" in circuit or "oneWayM" in circuit:
        lengths = [circuit.get("oneWayM", circuit.get("oneWayFt", 0) * METRES_PER_FOOT)] * 2
    elif "positiveFt" in circuit:
        lengths = [circuit["positiveFt"] * METRES_PER_FOOT, circuit["negativeFt"] * METRES_PER_FOOT]
    else:
        lengths = [circuit["positiveM"], circuit["negativeM"]]

    basis = AWG_BASIS if "gauge" in circuit else METRIC_BASIS
    size = str(circuit["gauge"]) if "gauge" in circuit else circuit["mm2"]
    table = basis["amperes"][size]
    column_c = max(printed for printed in table if printed <= stated("insulationC", 75))
    ambient_c = stated("ambientC", 30)
    factor = ambient_factor(column_c, ambient_c)
    if stated("engineSpace", False):
        factor = min(factor, basis["engine"].get(column_c, 0))
        if basis is METRIC_BASIS:  # Its factor is unconfirmed, and milder than the equation for the same 60 degC.
            factor = min(factor, ambient_factor(column_c, basis["engine_c"]))
        ambient_c = max(basis["engine_c"], stated("ambientC", basis["engine_c"]))
    parallel = circuit.get("parallel", 1)
    together = 1 + circuit.get("bundledWith", 2 * parallel - 1)
    factor *= next((less for least, less in reversed(basis["bundle"]) if together >= least), 1)
    by_insulation_a = table[column_c] * parallel * factor

    # NFPA 70, 110.14(C): at most what the column of the coolest terminal carries, without factors.
    def at_terminals_a(rated_c):
        return table[max(printed for printed in table if printed <= rated_c)] * parallel

    ends = [circuit[end] for end in ("protect", "protectFarEnd") if isinstance(circuit.get(end), dict)]
    terminals_c = [end["terminalC"] for end in ends if "terminalC" in end]
    ampacity_a = min([by_insulation_a, *map(at_terminals_a, terminals_c)])

    judged = by_insulation_a > 0
    conductor_c = ambient_c + ((column_c - ambient_c) * (load_a / by_insulation_a) ** 2 if judged else 0)
    resistance_c = min(conductor_c, column_c) if judged else conductor_c
    ohm_per_m = basis["ohm_per_m"][size] * (1 + ALPHA_PER_K * (resistance_c - 20))
    drop_v = load_a * ohm_per_m * sum(lengths) / parallel
    usual = build.get("criticalDropPercent", 3) if circuit.get("critical") else build.get("dropPercent", 10)
    figures = {
        "loadA": load_a,
        "designA": design_a,
        "systemV": system_v,
        "lengthOneWayM": sum(lengths) / 2,
        "ampacityA": ampacity_a if judged else None,
        "dropV": drop_v,
        "dropPercent": 100 * drop_v / system_v,
        "dropLimitPercent": circuit.get("dropLimitPercent", usual),
        "conductorC": conductor_c,
    }
    warned = judged and not terminals_c and stated("insulationC", 75) > 75
    usual_a = min(at_terminals_a(75), by_insulation_a)
    about_terminals = warned and usual_a < by_insulation_a and above(design_a, usual_a)
    # NFPA 70, 310.10(G), and N - 1: the bundle stays as it is stated, or that of the wires that are left is not counted anew.
    about_parallel = False
    if parallel > 1:
        too_small = circuit.get("gauge") in range(1, 19) if "gauge" in circuit else circuit["mm2"] < 50
        rest_a = min(
            by_insulation_a * (parallel - 1) / parallel,
            *(at_terminals_a(rated_c) * (parallel - 1) / parallel for rated_c in terminals_c),
            math.inf,
        )
        devices_a = [end["ratingA"] if isinstance(end, dict) else end for end in (circuit.get("protect"), circuit.get("protectFarEnd")) if end]
        lost = judged and (above(design_a, rest_a) or bool(devices_a) and above(min(devices_a), rest_a))
        about_parallel = too_small or lost
    found = findings(circuit, figures, lengths, stated) + ["conductor/parallel info"] * about_parallel
    return {
        **figures,
        "findings": sorted(found + ["conductor/terminal-temperature info"] * about_terminals),
    }


def above(value, limit):
    """Above by more than the arithmetic can blur."""
    return value - limit > 1e-9 * max(abs(value), abs(limit))


def findings(circuit, figures, lengths, stated):
    """Rule and severity of everything that is wrong, sorted. Doubts about units are not worked out here."""
    load_a, design_a, ampacity_a = figures["loadA"], figures["designA"], figures["ampacityA"]
    found = []
    if ampacity_a is None:
        found.append("conductor/ambient error")
    elif above(design_a, ampacity_a):
        found.append("conductor/ampacity error")
    # By the maximum on the nameplate; banks of 12 V are charged with 14.4 V (common practice, from memory). Else by the minimum.
    system_v = figures["systemV"]
    if "maximumV" in circuit:
        if above(system_v, circuit["maximumV"]):
            found.append("part/other-voltage error")
        elif system_v in (12, 24, 36, 48) and above(system_v * CHARGED_V_OF_12 / 12, circuit["maximumV"]):
            found.append("part/other-voltage warning")
    elif "minimumV" in circuit and circuit["minimumV"] < system_v / 2:
        found.append("part/other-voltage info")
    if "minimumV" in circuit and above(circuit["minimumV"], figures["systemV"] - figures["dropV"]):
        found.append("conductor/voltage-drop error")
    elif above(figures["dropPercent"], figures["dropLimitPercent"] + 0.05):  # common practice: met up to 0.05 points above
        found.append("conductor/voltage-drop warning")
    # 33 CFR 183.425(d), (e): 18 AWG only in a sheath. ISO 10133, 7.7: the same for 0.75 mm2 of more than 200 mm.
    thin = circuit.get("gauge") == 18 or (circuit.get("mm2") == 0.75 and max(lengths) > 0.2)
    if thin and not circuit.get("sheathed"):
        found.append("conductor/minimum-size warning")
    if stated("insulationC") is None:
        found.append("conductor/insulation-not-stated hint")
    if "protect" not in circuit:
        found.append("protection/missing error")
    elif circuit.get("fedFromBothEnds") and "protectFarEnd" not in circuit:
        found.append("protection/both-ends error")
    for end in ("protect", "protectFarEnd"):
        if end not in circuit:
            continue
        device = circuit[end] if isinstance(circuit[end], dict) else {"ratingA": circuit[end]}
        rating_a = device["ratingA"]
        if ampacity_a is not None and above(rating_a, ampacity_a):
            found.append("protection/above-conductor error")
        if above(design_a, rating_a):
            found.append("protection/below-load error")
        # NFPA 70, 210.20(A); common practice in a hot place: a fuse carries 70 % of its rating for hours.
        elif stated("continuous", True) and above((1 / 0.70 if stated("ambientC", 30) >= 50 else 1.25) * load_a, rating_a):
            found.append("protection/headroom warning")
        made = set(MADE[device["family"]]) if "family" in device else MADE_BY_ANY
        if rating_a not in made | (METRIC_BREAKERS if device.get("family") == "circuit breaker" else set()):
            found.append("protection/standard-rating warning")
        # 33 CFR 183.455(d).
        versions = [device["ratedV"]] if "ratedV" in device else MADE_FOR_V.get(device.get("family"), [])
        if versions and above(figures["systemV"], max(versions)):
            found.append("protection/voltage-rating error")
        elif versions and above(figures["systemV"], min(versions)):
            found.append("protection/voltage-rating warning")
        elif not versions and figures["systemV"] > 32:
            # A breaker or a Class T fuse is bought by its marking; a fuse of no family may be any.
            found.append("protection/voltage-rating " + ("info" if "family" in device else "warning"))
        # 33 CFR 183.455(b) and, from a battery, 183.460(a); practice there is 7 in without a sheath.
        at_battery = circuit.get("fromBattery") and end == "protect"
        most_in = 72 if at_battery else 40 if circuit.get("sheathed") else 7
        distance_in = device.get("distanceIn", device.get("distanceMm", 0) / 25.4)
        if above(distance_in, most_in):
            found.append("protection/distance warning")
        elif at_battery and not circuit.get("sheathed") and above(distance_in, 7):
            found.append("protection/distance info")
    return sorted(found)


def drawn(draw):
    """A circuit such as nobody would think of: every property, near the limits as often as far from them."""

    def maybe(share):
        return draw.random() < share

    def about(low, high, places):
        return max(round(10 ** draw.uniform(low, high), places), 10**-places)

    def device():
        device = {"ratingA": draw.choice(RATINGS)}
        if maybe(0.4):
            return device["ratingA"]
        if maybe(0.5):
            device["family"] = draw.choice(sorted(MADE))
        if maybe(0.5):
            device["distanceIn"] = draw.choice([0, 7, 7.1, 40, 41, 72, 73])
        elif maybe(0.5):
            device["distanceMm"] = draw.choice([177, 178, 1016, 1017, 1828, 1829])
        if maybe(0.2):
            device["ratedV"] = draw.choice([12, 24, 32, 58])
        # From numbers of its own: the circuits of an earlier version stay as they were.
        terminal_c = random.Random(json.dumps(device)).choice([None, None, 60, 75, 90, 105])
        if terminal_c is not None:
            device["terminalC"] = terminal_c
        return device

    circuit = {"load": about(-1, 2.3, 2)} if maybe(0.7) else {"loadW": about(0.5, 3.3, 0)}
    unit, longest = draw.choice([("Ft", 1.8), ("M", 1.3)])
    for name in draw.choice([["oneWay"], ["positive", "negative"]]):
        circuit[name + unit] = about(-0.7, longest, 2)
    if maybe(0.5):
        circuit["gauge"] = draw.choice([18, 16, 14, 12, 10, 8, 6, 4, 2, 1, "1/0", "2/0", "3/0", "4/0"])
    else:
        circuit["mm2"] = draw.choice([row["mm2"] for row in TABLE_A1["rows"]])
    optional = {
        "voltage": (0.4, [12, 13.8, 24, 48, 50]),
        "minimumV": (0.3, [9, 10.5, 11.5, 12]),
        "critical": (0.3, [True]),
        "dropLimitPercent": (0.2, [1, 2.5, 5]),
        "continuous": (0.3, [True, False, False]),
        "insulationC": (0.6, [60, 70, 75, 80, 85, 90, 105, 125, 200]),
        "engineSpace": (0.3, [True, True, False]),
        "ambientC": (0.4, [-10, 20, 30, 31, 40, 45, 50, 55, 60, 69, 75, 90]),
        "bundledWith": (0.3, [0, 1, 2, 3, 5, 6, 23, 24]),
        "parallel": (0.2, [2, 3, 4]),
        "sheathed": (0.25, [True]),
        "fromBattery": (0.2, [True]),
        "fedFromBothEnds": (0.2, [True]),
    }
    for name, (share, values) in optional.items():
        if maybe(share):
            circuit[name] = draw.choice(values)
    # From numbers of its own, as above.
    maximum_v = random.Random(json.dumps(circuit)).choice([None, None, None, 12.5, 14.4, 15, 28.7, 32, 60])
    if maximum_v is not None:
        circuit["maximumV"] = maximum_v
    if maybe(0.85):
        circuit["protect"] = device()
    if maybe(0.2):
        circuit["protectFarEnd"] = device()
    return circuit


def drawn_build(draw):
    optional = {
        "voltage": [12, 24, 36],
        "insulationC": [60, 75, 105],
        "ambientC": [30, 40, 55],
        "engineSpace": [True, False],
        "continuous": [False],
        "criticalDropPercent": [2, 4],
        "dropPercent": [5, 15],
    }
    return {name: draw.choice(values) for name, values in optional.items() if draw.random() < 0.25}


RATINGS = [1, 2, 3, 5, 7.5, 10, 12, 15, 20, 25, 30, 40, 50, 60, 70, 80, 100, 125, 150, 200, 250, 400]

if __name__ == "__main__":
    draw = random.Random(183425)
    cases = []
    while len(cases) < 160:
        build, circuit = drawn_build(draw), drawn(draw)
        cases.append({"build": build, "circuit": circuit, "answers": answers(circuit, build)})
    rows = ",\n".join("  " + json.dumps(case, ensure_ascii=False) for case in cases)
    title = "Circuits worked out a second time by oracle-circuits.py, from the reference data in this folder"
    (HERE / "oracle-circuits.json").write_text(
        '{\n "title": ' + json.dumps(title) + ',\n "cases": [\n' + rows + "\n ]\n}\n", encoding="utf-8"
    )
