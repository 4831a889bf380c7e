#!/usr/bin/env python3
"""Draws the random problems of problems.json from a fixed seed.

Usage: draw_problems.py > problems.json   (lessons' own problems are added after them)
"""

import json
import random

LEVEL_UPRIGHT, LEVEL_OBLIQUE, TILTED = "level, upright rope", "level, oblique rope", "tilted"
LEANING, BUILT_IN = "leaning on a roller", "built-in"
COUNTS = {LEVEL_UPRIGHT: 24, LEVEL_OBLIQUE: 24, TILTED: 24, LEANING: 10, BUILT_IN: 6}


def angle(chance, low, high):
    """An angle in degrees or radians, so that both are read."""
    degrees = chance.randint(low, high)
    if chance.random() < 0.5:
        return {"angle_deg": degrees}
    return {"angle_rad": round(degrees * 0.017453292519943295 + chance.uniform(0, 0.01), 6)}


def slanted(chance, uprights, sides, low=15, high=70):
    form = angle(chance, low, high)
    form["from"] = chance.choice(["horizontal", "vertical"])
    form["upright"] = chance.choice(uprights)
    form["side"] = chance.choice(sides)
    return form


def somewhere(chance, length, low, high):
    kind = chance.random()
    if kind < 0.25 and high >= 1.0:
        return "tip"
    if kind < 0.35:
        return "middle"
    if kind < 0.5:
        under = chance.randint(3, 7)
        return {"over": chance.randint(max(1, round(low * under + 0.5)), under - 1), "under": under}
    return {"distance": round(length * chance.uniform(low, min(high, 0.97)), 2)}


def rope_direction(chance, kind, towards):
    back = "left" if towards == "right" else "right"
    if kind == LEVEL_UPRIGHT:
        return "up"
    if kind == LEVEL_OBLIQUE:
        if chance.random() < 0.2:
            return {"from_body_deg": chance.randint(20, 160)}
        return slanted(chance, ["up"], ["left", "right"])
    choice = chance.random()
    if choice < 0.25:
        return back
    if choice < 0.45:
        return "up"
    if choice < 0.65:
        return {"from_body_rad": round(chance.uniform(0.4, 2.6), 4)}
    return slanted(chance, ["up", "up", "up", "down"], [back, back, towards])


def drawn(chance, kind, number):
    length = round(chance.uniform(0.8, 9.0), 2)
    towards = chance.choice(["left", "right"])
    body = {"length": length, "tilt": "level", "towards": towards}
    if kind in (TILTED, LEANING):
        body["tilt"] = angle(chance, 15, 70)
        body["tilt"]["from"] = chance.choice(["horizontal", "vertical"])
    if chance.random() < 0.8:
        body["mass"] = round(chance.uniform(2.0, 90.0), 1)
        body["centre"] = "middle" if chance.random() < 0.7 else somewhere(chance, length, 0.2, 0.9)
    loads = []
    for index in range(chance.randint(1, 2)):
        load = {"name": f"W{index + 1}", "at": somewhere(chance, length, 0.1, 1.0)}
        if chance.random() < 0.65:
            load["mass"] = round(chance.uniform(1.0, 60.0), 1)
        else:
            load["force"] = round(chance.uniform(20.0, 500.0), 1)
            load["direction"] = slanted(chance, ["down", "down", "up"], ["left", "right"])
            if chance.random() < 0.2:
                load["direction"] = chance.choice(["up", "down", "left", "right"])
        loads.append(load)
    hinge = {"name": "H", "kind": "hinge", "at": "foot"}
    supports, ropes = [hinge], []
    if kind == LEANING:
        back = "left" if towards == "right" else "right"
        push = back if chance.random() < 0.5 else slanted(chance, ["up"], [back])
        supports.append({"name": "N", "kind": "roller", "at": "tip", "direction": push})
        loads = [load for load in loads if "mass" in load] or [{"name": "W1", "at": "middle", "mass": 12}]
    elif kind == BUILT_IN:
        hinge["kind"] = "built-in"
    else:
        ropes.append(rope_of(chance, kind, length, towards))
    return {
        "id": f"{kind} {number}",
        "gravity": chance.choice([9.8, 9.81, 9.80665]),
        "body": body,
        "supports": supports,
        "ropes": ropes,
        "loads": loads,
    }


def rope_of(chance, kind, length, towards):
    return {
        "name": "T",
        "at": somewhere(chance, length, 0.3, 1.0),
        "direction": rope_direction(chance, kind, towards),
    }


def main():
    chance = random.Random(20)
    lines = [
        json.dumps(drawn(chance, kind, number + 1))
        for kind, count in COUNTS.items()
        for number in range(count)
    ]
    print('{"problems": [\n' + ",\n".join(lines) + "\n]}")


if __name__ == "__main__":
    main()
