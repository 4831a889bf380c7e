#!/usr/bin/env python3
"""Writes tests/cases/: published cases as problem files, and index.json with what is printed of each.

    python3 tests/reference/published_cases.py COLLECTION.json

COLLECTION.json holds the cases as force vectors at points (`model.bodies`), as moments about a point,
or only in words; the last are written by hand below. Nothing is solved here: the program solves the
files, and its test compares. No network.
"""
import json
import math
import os
import re
import sys
from decimal import Decimal

HERE = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "cases")
# The unit as the collection names it: how it is written here, factor to that, SI value of one.
LENGTHS = {"m": ("m", 1, 1.0), "cm": ("cm", 1, 0.01), "mm": ("mm", 1, 0.001),
           "ft": ("m", "0.3048", 0.3048), "in": ("m", "0.0254", 0.0254)}
FORCES = {"N": ("N", 1, 1.0), "kN": ("kN", 1, 1000.0), "lb": ("lbf", 1, 4.4482216152605)}
BARE = ("m", 1, 1.0), ("N", 1, 1.0)

DIFFERS = {
    ("up-forearm-60-heavy", 0): "the source is about 0.15 % low in both answers; no rounding leads there",
    ("up-forearm-60-heavy", 1): "the source is about 0.15 % low in both answers; no rounding leads there",
    ("up-ladder-53", 4): "the source forms the resultant from the rounded 150.7 N",
    ("up-ladder-53", 5): "the source cuts the angle 69.35 off at 69.3",
    ("cp-spider-strand", 1): "the source divides numbers that are rounded already",
    ("up-climber", 0): "the source rounds on the way to the force on the feet; tension and friction agree",
    ("es-stepped-gate", 1): "the source's box and its worked lines differ",
    ("es-stepped-gate", 2): "the source's box and its worked lines differ: the digits are cut, not rounded",
    ("up-torque-pendulum", 0): "the source's value follows from no g in use",
    ("hb-5-6-beam-inclined-load", 2): "the source rounds A_y to 319 N before its last sum of forces",
}

KINDS = {
    "concurrent-forces": "Forces that meet", "two-supports": "A beam on two supports", "couple": "Turning about a point",
    "ladder-smooth-wall": "A ladder at a smooth wall", "truss-or-frame": "A frame", "distributed-load": "A spread load",
    "forearm-biomech": "Muscles and bones", "seesaw": "A lever", "tipping": "About to tip", "boom": "A boom",
    "ladder-rough": "A ladder on rough ground", "gate-hinges": "A gate on hinges", "centre-of-mass": "A centre of mass",
    "horizontal-beam-rope": "A level beam on a rope", "inclined-beam-rope": "A tilted beam on a rope",
}


def number(value):
    """Plain digits, no exponent, ten figures."""
    text = f"{Decimal(f'{value:.10g}'):f}"
    return (text.rstrip("0").rstrip(".") if "." in text else text) or "0"


def measure(value, unit):
    return f"{number(float(Decimal(repr(value)) * Decimal(unit[1])))} {unit[0]}"


def spot(at, length):
    if at == [0, 0]:
        return "origin"
    return {"x": measure(at[0], length), "y": measure(at[1], length)}


def direction(x, y):
    size = math.hypot(x, y)
    x, y = x / size, y / size
    if abs(x) < 1e-9:
        return "up" if y > 0 else "down"
    if abs(y) < 1e-9:
        return "right" if x > 0 else "left"
    degrees = f"{math.degrees(math.atan2(y, x)) % 360:.8f}".rstrip("0").rstrip(".")
    return {"angle": f"{degrees} deg", "from": "x-axis"}


def symbol(name, taken):
    """The collection's name as a name of the form, each only once."""
    text = re.sub(r"[^A-Za-z0-9_]", "_", name)
    text = text if text[:1].isalpha() else "F" + text
    text, number = text[:12], 2
    while text in taken:
        text, number = f"{text[:12]}_{number}", number + 1
    taken.add(text)
    return text


def along(vector, axis):
    """+1 or -1 along an axis, 0 otherwise."""
    other = 1 - axis
    if abs(vector[other]) < 1e-9 and abs(abs(vector[axis]) - 1) < 1e-9:
        return round(vector[axis])
    return 0


class Writer:
    def __init__(self, case):
        model = case["model"]
        self.length = LENGTHS.get(model["length_unit"], BARE[0])
        self.force = FORCES.get(model["force_unit"], BARE[1])
        self.system = {"bodies": [], "loads": [], "ropes": [], "holds": [], "asked": []}
        self.reads, self.taken, self.case = {}, set(), case
        self.couple = self.force[2] * self.length[2]

    def name(self, index):
        return "body" if len(self.case["model"].get("bodies", [1])) == 1 else f"body {index + 1}"

    def body(self, index, body):
        places = [tuple(action["at"]) for action in body["loads"] + body["unknowns"] if "at" in action]
        turning = body.get("couples") or any("couple" in unknown for unknown in body["unknowns"])
        form = {"name": self.name(index)}
        if len(set(places)) == 1 and not turning:
            form["knot"] = True
        self.system["bodies"].append(form)
        for load in body["loads"]:
            self.load(index, load)
        for couple in body.get("couples", []):
            size, unit = abs(couple["m"]) * self.couple, "N m"
            self.system["loads"].append({
                "symbol": symbol(couple["name"], self.taken), "noun": "couple", "body": self.name(index),
                "couple": f"{number(size)} {unit}", "turns": "clockwise" if couple["m"] < 0 else "anticlockwise"})

    def load(self, index, load):
        size = math.hypot(*load["f"])
        if size == 0:
            return
        self.system["loads"].append({
            "symbol": symbol(load["name"] + "_0", self.taken), "noun": f"load {load['name']}", "body": self.name(index),
            "at": spot(load["at"], self.length), "force": f"{number(size)} {self.force[0]}",
            "direction": direction(*load["f"])})

    def read(self, name, force, part, per):
        self.reads[name] = {"force": force, "part": part, "one_si": per}
        if force not in self.system["asked"]:
            self.system["asked"].append(force)

    def unknowns(self):
        acts = {}
        for index, body in enumerate(self.case["model"]["bodies"]):
            for unknown in body["unknowns"]:
                acts.setdefault(unknown["name"], []).append((index, unknown))
        self.shares(acts)
        for first, second in pairs(acts):
            self.hinge(first, second, acts.pop(first), acts.pop(second))
        for name, on in acts.items():
            self.single(name, on)

    def shares(self, acts):
        """Two forces that are told to be equal are one tension at two places."""
        for constraint in self.case["model"].get("constraints", []):
            first, second = constraint["coef"]
            on = acts.pop(first) + acts.pop(second)
            self.rope(first, on)
            self.reads[second] = self.reads[first]

    def hinge(self, first, second, on, other):
        name = symbol(re.sub("[xX]$", "", first) or first, self.taken)
        (index, unknown), (_, upright) = on[0], other[0]
        hold = {"symbol": name, "noun": "hinge", "body": self.name(index), "at": spot(unknown["at"], self.length),
                "kind": "hinge"}
        if len(on) == 2:
            hold["by"] = self.name(on[1][0])
        self.system["holds"].append(hold)
        self.read(first, name, "x", self.force[2] * along(unknown["dir"], 0))
        self.read(second, name, "y", self.force[2] * along(upright["dir"], 1))

    def single(self, name, on):
        index, unknown = on[0]
        if "couple" in unknown:
            held = symbol(name, self.taken)
            self.system["holds"].append({"symbol": held, "noun": "fixing couple", "body": self.name(index), "at": "origin",
                                         "kind": "couple"})
            return self.read(name, held, "couple", self.couple * unknown["couple"])
        size = math.hypot(*unknown["dir"])
        if len(on) == 2 and not (reversed_(on) and (same_place(on) or self.knots(on))):
            return self.rope(name, on)
        if len(on) == 1 and name.startswith("T"):
            return self.rope(name, on)
        held = symbol(name, self.taken)
        hold = {"symbol": held, "noun": f"force {name}", "body": self.name(index), "at": spot(unknown["at"], self.length),
                "kind": "line", "direction": direction(*unknown["dir"])}
        if len(on) == 2:
            hold["by"] = self.name(on[1][0])
        self.system["holds"].append(hold)
        self.read(name, held, "size", self.force[2] * size)

    def knots(self, on):
        return all(self.system["bodies"][index].get("knot") for index, _ in on)

    def rope(self, name, on):
        held = symbol(name, self.taken)
        sizes = {round(math.hypot(*unknown["dir"]), 9) for _, unknown in on}
        if len(sizes) > 1:
            # The other body meets only the resultant of both parts of the rope over a pulley.
            on = [(index, dict(unknown, parts=self.case["parts"][index])) for index, unknown in on]
        ends = []
        for index, unknown in on:
            for way in unknown.get("parts", [unknown["dir"]]):
                ends.append({"body": self.name(index), "at": spot(unknown["at"], self.length), "direction": direction(*way)})
        self.system["ropes"].append({"symbol": held, "noun": f"rope {name}", "ends": ends})
        self.read(name, held, "size", self.force[2] * (1 if len(sizes) > 1 else sizes.pop()))


def pairs(acts):
    """Unknowns that are the two parts of one hinge force."""
    found, used = [], set()
    for first, on in acts.items():
        for second, other in acts.items():
            if {first, second} & used or len(on) != len(other) or "dir" not in on[0][1] or "dir" not in other[0][1]:
                continue
            same = all(a[0] == b[0] and a[1]["at"] == b[1]["at"] for a, b in zip(on, other))
            crossed = all(along(a[1]["dir"], 0) and along(b[1]["dir"], 1) for a, b in zip(on, other))
            back = len(on) == 1 or (reversed_(on) and reversed_(other) and same_place(on))
            if first != second and same and crossed and back:
                found.append((first, second))
                used |= {first, second}
    return found


def reversed_(on):
    (_, one), (_, other) = on
    return all(abs(a + b) < 1e-9 for a, b in zip(one["dir"], other["dir"]))


def same_place(on):
    return on[0][1]["at"] == on[1][1]["at"]


def problem(case, system, gravity):
    return {"leverwright": 1, "g": f"{gravity} m/s^2", "system": {k: v for k, v in system.items() if v},
            "text": {"title": KINDS[case["kind"]], "statement": statement(system)}}


def listed(names):
    names = [name for name in dict.fromkeys(names) if name]
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1]


def statement(system):
    """The problem in our own words, from its parts."""
    name = lambda part: part.get("noun") or part.get("name") or part.get("symbol")
    bodies = list(dict.fromkeys(map(name, system["bodies"])))
    weights = ["weight of the " + (name(weight) or weight["body"]) for weight in system.get("weights", [])]
    on = weights + [name(load) for load in system.get("loads", [])]
    held = [name(hold) for hold in system.get("holds", []) + system.get("ropes", [])]
    asked = [one if isinstance(one, str) else "the couple of " + one["couple"] for one in system.get("asked", [])]
    if "sought" in system:
        asked.append("what is sought")
    told = f"At rest: the {listed(bodies)}."
    if on:
        told += f" On {'it' if len(bodies) == 1 else 'them'}: {listed(on)}."
    if held:
        told += f" Held by: {listed(held)}."
    if asked:
        told += f" Find {listed(asked)}."
    return told + " Every figure stands in this file."


def planar(case):
    if case["id"] == "es-two-hanging-weights":
        # Both parts of the rope at the pulley: towards A and towards C.
        a, c = (-20.0, 40.0), (80.0, -10.0)
        unit = lambda v: [v[0] / math.hypot(*v), v[1] / math.hypot(*v)]
        case["parts"] = [[[-0.9922778767, 0.1240347346]], [unit(a), unit(c)]]
    writer = Writer(case)
    for index, body in enumerate(case["model"]["bodies"]):
        writer.body(index, body)
    writer.unknowns()
    return writer.system, writer.reads, {}


def moment(case):
    """Moments about a point: what a built-in end there would have to turn back."""
    writer = Writer(case)
    body = {"loads": case["model"]["loads"], "couples": case["model"]["couples"], "unknowns": [{"couple": 1}]}
    writer.body(0, body)
    at = spot(case["model"]["about"], writer.length)
    writer.system["holds"].append({"symbol": "O", "noun": "built-in end", "body": "body", "at": at, "kind": "built-in"})
    writer.reads["M_net"] = {"force": "O", "part": "couple", "one_si": -writer.couple}
    writer.system["asked"] = [{"couple": "O"}]
    return writer.system, writer.reads, {}


def read(force, part="size", one_si=1.0):
    return {"force": force, "part": part, "one_si": one_si}


DEGREE = math.pi / 180


def ladder(length, parts, wall, floor, angle):
    """A ladder that leans to the right at a wall, its foot at the origin."""
    return {"bodies": [{"name": "ladder", "legs": [{"length": length, "direction": {
                "angle": angle, "from": "horizontal", "up": True, "side": "right"}}]}],
            "loads": [{"symbol": f"W_{i}", "noun": noun, "body": "ladder", "at": {"on": "ladder", "at": at},
                       "force": force, "direction": "down"} for i, (noun, force, at) in enumerate(parts)],
            "holds": [{"symbol": "F", "noun": "wall", "body": "ladder", "at": {"on": "ladder", "at": "tip"},
                       "kind": "rough", "direction": "left", "friction": wall},
                      {"symbol": "N", "noun": "floor", "body": "ladder", "at": {"on": "ladder", "at": "foot"},
                       "kind": "rough", "direction": "up", "friction": floor}]}


def seesaw(loads):
    """Where a child must sit so that the pivot need not turn the board."""
    return {"bodies": [{"name": "board"}],
            "weights": [{"symbol": f"W_{i}", "noun": noun, "body": "board", "at": {"x": x, "y": "0 m"}, "mass": mass}
                        for i, (noun, mass, x) in enumerate(loads)],
            "holds": [{"symbol": "P", "noun": "pivot", "body": "board", "at": "origin", "kind": "hinge"},
                      {"symbol": "M", "noun": "what is missing to balance", "body": "board", "at": "origin", "kind": "couple"}],
            "asked": ["sought", "P"],
            "sought": {"given": "r_2", "from": "0.1 m", "to": "5 m", "when": {"vanishes": "M"}}}


SEEK = {"symbol": "r_2", "sought": "length"}
BALANCED = {"r2": {"part": "sought", "one_si": 1.0}, "x2": {"part": "sought", "one_si": 1.0}, "Fp": read("P", "y")}


def by_hand():
    limiting = lambda mu, way: {"limiting": mu, "direction": way}
    hand = {}
    hand["up-pencil-angle"] = ({
        "bodies": [{"name": "pencil", "legs": [{"length": "0.15 m", "direction": {
            "angle": {"symbol": "θ", "sought": "angle"}, "from": "horizontal", "up": True, "side": "right"}}]}],
        "loads": [{"symbol": "P", "noun": "push", "body": "pencil", "at": {"on": "pencil", "at": "tip"}, "force": "10 N",
                   "direction": {"along": "pencil", "onward": False}}],
        "holds": [{"symbol": "N", "noun": "table", "body": "pencil", "at": {"on": "pencil", "at": "foot"}, "kind": "rough",
                   "direction": "up", "friction": "as-needed"}],
        "asked": ["sought"],
        "sought": {"given": "θ", "from": "10 deg", "to": "85 deg", "when": {"slips": "N", "coefficient": "0.80"}}},
        {"theta": {"part": "sought", "one_si": DEGREE}}, {})
    # Friction is at its limit at both ends, so balance of moments alone tells the number that is sought.
    missing = {"symbol": "M", "noun": "what is missing to balance", "body": "ladder", "at": "origin", "kind": "couple"}
    vanishes = {"vanishes": "M"}
    both = ladder("4.5 m", [("ladder", "200 N", "middle"), ("load", "900 N", "3.3 m")], limiting("0.2", "up"),
                  limiting("0.4", "right"), {"symbol": "θ", "sought": "angle"})
    both["holds"].append(missing)
    both.update(asked=["sought", "N", "F"], sought={"given": "θ", "from": "10 deg", "to": "85 deg", "when": vanishes})
    hand["bn-8-27-ladder-both-rough"] = (both, {"RA": read("N", "push"), "RB": read("F", "push")}, {})
    hand["bn-8-27-ladder-angle"] = (both, {"alpha": {"part": "sought", "one_si": DEGREE}}, {
        0: "the source cuts the tangent to 1.665 before it takes the angle"})
    man = ladder("1 m", [("ladder", "100 N", "middle"), ("man", "150 N", {"symbol": "d", "sought": "length"})],
                 limiting("0.5", "up"), limiting("0.5", "right"), "45 deg")
    man["holds"].append(missing)
    man.update(asked=["sought"], sought={"given": "d", "from": "0.05 m", "to": "0.95 m", "when": vanishes})
    hand["bh-5-12-ladder-man"] = (man, {"x": {"part": "sought", "one_si": 1.0}}, {
        0: "the source divides by 1 + μ where equilibrium needs 1 + μ²"})
    push = ladder("4 m", [("ladder", "200 N", "middle"), ("man", "600 N", "3 m")], limiting("0.2", "up"),
                  limiting("0.3", "right"), "60 deg")
    push["holds"].append({"symbol": "P", "noun": "push", "body": "ladder", "at": {"on": "ladder", "at": "foot"},
                          "kind": "line", "direction": "right"})
    push["asked"] = ["P"]
    hand["bh-5-10-ladder-push"] = (push, {"P": read("P")}, {0: "the source takes 3.14 for π in the angle"})
    rough = ladder("6.5 m", [("ladder", "100 N", "middle")], limiting({"same_as": "μ"}, "up"),
                   limiting({"symbol": "μ", "sought": "coefficient"}, "right"),
                   f"{number(math.degrees(math.atan2(6.0, 2.5)))} deg")
    rough["holds"].append(missing)
    rough.update(asked=["sought"], sought={"given": "μ", "from": "0.01", "to": "1.5", "when": vanishes})
    hand["bj-ladder-rough-mu"] = (rough, {"mu": {"part": "sought", "one_si": 1.0}}, {})
    hand["cp-seesaw-children"] = (seesaw([("lighter child", "26.0 kg", "-1.60 m"), ("heavier child", "32.0 kg", SEEK)]), BALANCED, {})
    hand["cp-seesaw-offset-board"] = (seesaw([("lighter child", "26.0 kg", "-1.60 m"), ("board", "12.0 kg", "-0.160 m"),
                                              ("heavier child", "32.0 kg", SEEK)]), BALANCED, {})
    hand["cp-seesaw-unreasonable"] = (seesaw([("heavier child", "30.0 kg", "-1.40 m"), ("lighter child", "18.0 kg", SEEK)]), BALANCED, {})
    hand["lm-flagpole"] = ({
        "bodies": [{"name": "pole", "legs": [{"length": "3 m", "direction": {
            "angle": {"symbol": "α", "sought": "angle"}, "from": "vertical", "up": True, "side": "right"}}]}],
        "weights": [{"noun": "pole", "body": "pole", "at": {"on": "pole", "at": "middle"}, "mass": "10 kg"}],
        "ropes": [{"symbol": "T", "noun": "cable", "ends": [{"body": "pole", "at": {"on": "pole", "at": "tip"}, "direction": "left"}]}],
        "holds": [{"symbol": "H", "noun": "foot", "body": "pole", "at": "origin", "kind": "hinge"}],
        "asked": ["sought"],
        "sought": {"given": "α", "from": "1 deg", "to": "89 deg", "when": {"reaches": "T", "limit": "70 N"}}},
        {"alpha": {"part": "sought", "one_si": DEGREE}}, {})
    hand["up-wheels-on-wedge"] = ({
        "bodies": [{"name": "rod", "legs": [{"length": "1 m", "direction": {
            "angle": {"symbol": "φ", "sought": "angle"}, "from": "horizontal", "up": False, "side": "right"}}]}],
        "loads": [{"symbol": f"W_{name}", "noun": noun, "body": "rod", "at": {"on": "rod", "at": at}, "force": force,
                   "direction": "down"} for name, noun, at, force in [
                       ("B", "wheel B", "foot", "200 N"), ("r", "rod", "middle", "50 N"), ("A", "wheel A", "tip", "100 N")]],
        "holds": [{"symbol": "N_B", "noun": "left face", "body": "rod", "at": {"on": "rod", "at": "foot"}, "kind": "push",
                   "direction": {"angle": "30 deg", "from": "vertical", "up": True, "side": "left"}},
                  {"symbol": "N_A", "noun": "right face", "body": "rod", "at": {"on": "rod", "at": "tip"}, "kind": "push",
                   "direction": {"angle": "30 deg", "from": "horizontal", "up": True, "side": "right"}},
                  {"symbol": "M", "noun": "what is missing to balance", "body": "rod", "at": "origin", "kind": "couple"}],
        "asked": ["sought"], "sought": {"given": "φ", "from": "1 deg", "to": "59 deg", "when": {"vanishes": "M"}}},
        {"phi": {"part": "sought", "one_si": DEGREE}, "alpha": {"part": "sought", "one_si": DEGREE}}, {
            0: "the source's angles belong to the two wheels interchanged",
            1: "the source's angles belong to the two wheels interchanged"})
    hand["yf-car-axles"] = ({
        "bodies": [{"name": "car"}],
        "loads": [{"symbol": "W", "noun": "car", "body": "car", "at": {"x": {"symbol": "d", "sought": "length"}, "y": "0 m"},
                   "force": "10000 N", "direction": "down"}],
        "holds": [{"symbol": "N_r", "noun": "rear axle", "body": "car", "at": "origin", "kind": "push", "direction": "up"},
                  {"symbol": "N_f", "noun": "front axle", "body": "car", "at": {"x": "2.46 m", "y": "0 m"}, "kind": "push", "direction": "up"}],
        "asked": ["sought"], "sought": {"given": "d", "from": "0 m", "to": "2.4 m", "when": {"reaches": "N_f", "limit": "5300 N"}}},
        {"x": {"part": "sought", "one_si": 1.0}}, {})
    built_in = [{"symbol": "O", "noun": "built-in end", "body": "body", "at": "origin", "kind": "built-in"}]
    hand["es-aquarium-window"] = ({
        "bodies": [{"name": "body", "legs": [{"length": "5 m", "direction": "down"}]}],
        "loads": [{"symbol": "Q", "noun": "water", "body": "body", "from": "2 m", "to": "tip", "first": "29.43 kN/m",
                   "last": "73.575 kN/m", "direction": "right"}], "holds": built_in, "asked": ["O"]},
        {"F": read("O", "x", -1000.0), "d": read("O", "couple", -1000.0 * 154.5075)}, {})
    hand["lv-2-7-parallel-resultant"] = ({
        "bodies": [{"name": "body"}],
        "loads": [{"symbol": f"W_{i}", "noun": "load", "body": "body", "at": {"x": f"{number(x * 0.3048)} m", "y": "0 m"},
                   "force": f"{kip}000 lbf", "direction": "down"} for i, (kip, x) in enumerate([(2, 5), (5, 10), (10, 15), (3, 20)])],
        "holds": built_in, "asked": ["O"]},
        {"R": read("O", "y", 4448.2216152605), "x": read("O", "couple", 4448.2216152605 * 20 * 0.3048)}, {})
    for case, places, unit in [("dh-56-plate-centroid", [(2, 0.5, 0.5), (1, 4 / 3, 1 / 3)], 1.0),
                               ("dh-57-angle-section", [(5.4375, 0.375, 4.375), (3, 2, 0.375)], 0.0254)]:
        total = sum(area for area, _, _ in places)
        loads = [{"symbol": f"{axis}_{i}", "noun": "part", "body": f"plate {axis}",
                  "at": {"x": f"{number(place[axis == 'y'] * unit)} m", "y": "0 m"}, "force": f"{area} N", "direction": "down"}
                 for axis in "xy" for i, (area, *place) in enumerate(places)]
        hand[case] = ({"bodies": [{"name": "plate x"}, {"name": "plate y"}], "loads": loads, "holds": [
            dict(built_in[0], symbol=f"O_{axis}", body=f"plate {axis}") for axis in "xy"], "asked": [{"couple": "O_x"}, {"couple": "O_y"}]},
            {axis: read(f"O_{axis}", "couple", total * unit) for axis in "xy"}, {})
    hand["up-pulley-incline-balance"] = ({
        "bodies": [{"name": "block", "knot": True}, {"name": "pulley"}, {"name": "pan", "knot": True}],
        "weights": [{"symbol": "W_1", "noun": "block", "body": "block", "at": "origin", "mass": "5.0 kg"},
                    {"symbol": "W_2", "noun": "hanging mass", "body": "pan", "at": "origin", "mass": {"symbol": "m_2", "sought": "mass"}}],
        "ropes": [{"symbol": "T_1", "noun": "inner cord", "ends": [
                      {"body": "block", "at": "origin", "direction": {"angle": "30 deg", "from": "horizontal", "up": True, "side": "right"}},
                      {"body": "pulley", "at": {"x": "-20 cm", "y": "0 m"}, "direction": "down"}]},
                  {"symbol": "T_2", "noun": "outer cord", "ends": [
                      {"body": "pulley", "at": {"x": "30 cm", "y": "0 m"}, "direction": "down"},
                      {"body": "pan", "at": "origin", "direction": "up"}]}],
        "holds": [{"symbol": "N", "noun": "incline", "body": "block", "at": "origin", "kind": "push",
                   "direction": {"angle": "30 deg", "from": "vertical", "up": True, "side": "left"}},
                  {"symbol": "A", "noun": "axle", "body": "pulley", "at": "origin", "kind": "hinge"},
                  {"symbol": "S", "noun": "what is missing to balance", "body": "pan", "at": "origin", "kind": "line", "direction": "up"}],
        "asked": ["sought"], "sought": {"given": "m_2", "from": "0.1 kg", "to": "10 kg", "when": {"vanishes": "S"}}},
        {"m2": {"part": "sought", "one_si": 1.0}, "tau": read("T_1", "size", 5.0)}, {})
    return hand


NOT_SAID = {
    "es-mud-wall-tipping": "the load grows with the square of the number that is sought",
    "up-pole-guy-wire": "forces in space, not in a plane",
    "es-utility-pole-guy": "forces in space, not in a plane",
}
# Quantities that are no result of the problem as it stands, but of a part of it.
PARTS = re.compile(r"M_F\d|M_A\b|M_T\b")


def main():
    cases = json.load(open(sys.argv[1], encoding="utf-8"))
    hand = by_hand()
    index, not_said = [], []
    os.makedirs(HERE, exist_ok=True)
    for case in cases:
        kind = case["model"]["type"]
        if case["id"] in NOT_SAID:
            not_said.append({"id": case["id"], "source": case["source"], "reason": NOT_SAID[case["id"]]})
            continue
        form = {"planar-equilibrium": planar, "moment-sum": moment}.get(kind)
        system, reads, differs = form(case) if form else hand[case["id"]]
        asks = []
        for number_, ask in enumerate(case["ask"]):
            told = {"quantity": ask["quantity"], "expression": ask["expr"].replace(" ", ""), "printed": ask["value"],
                    "unit": ask["unit"], "ulp": ask["ulp"]}
            if case["id"] == "up-wheels-on-wedge" and number_ == 1:
                told["expression"] = "60-alpha"
            if PARTS.search(ask["expr"]):
                told["left_out"] = "the moment of one force, which no balance asks for"
            elif not set(re.findall(r"[A-Za-z]\w*", told["expression"])) & set(reads):
                told["left_out"] = "it follows from given numbers alone"
            reason = differs.get(number_) or DIFFERS.get((case["id"], number_))
            if reason:
                told.update(differs=reason, recomputed=ask["recomputed"])
            asks.append(told)
        text = json.dumps(problem(case, system, case["g"] or 9.8), ensure_ascii=False, indent=1)
        with open(os.path.join(HERE, case["id"] + ".json"), "w", encoding="utf-8") as file:
            file.write(compact(text) + "\n")
        index.append({"id": case["id"], "source": case["source"], "from_memory": case["from_memory"], "reads": reads, "asks": asks})
    asks = [ask for case in index for ask in case["asks"]]
    counts = {"cases": len(index), "asks": len(asks), "agree": sum("differs" not in a and "left_out" not in a for a in asks),
              "differ": sum("differs" in a for a in asks), "left_out": sum("left_out" in a for a in asks),
              "from_memory": sum(case["from_memory"] for case in index), "not_said": len(not_said)}
    about = ("What is printed of the cases in this folder. An ask is an expression in the quantities under reads, each "
             "a part of a force divided by one_si, its unit in SI. ulp is one unit of the last printed place. An ask "
             "that differs carries the reason and what equilibrium gives. Written by tests/reference/published_cases.py.")
    with open(os.path.join(HERE, "index.json"), "w", encoding="utf-8") as file:
        file.write(compact(json.dumps({"about": about, "counts": counts, "cases": index, "not_said": not_said},
                                      ensure_ascii=False, indent=1)) + "\n")
    print(counts)


def compact(text):
    """Innermost objects and lists on one line each."""
    inner = re.compile(r"([\[{])\n\s+([^\[\]{}]*?)\n\s+([\]}])")
    return inner.sub(lambda m: m[1] + re.sub(r"\n\s+", " ", m[2]) + m[3], text)


if __name__ == "__main__":
    main()
