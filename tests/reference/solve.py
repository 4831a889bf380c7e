#!/usr/bin/env python3
"""A second solver, written on its own with SymPy, against which the program is tested.

Reads problems in the form of README.md, writes down for each the sums of forces to the right,
of forces upwards and of moments, and solves them with 40 digits. Nothing here comes from the
program: directions are found by turning vectors with rotation matrices, moments by the vector
product in space, about the tip of the body.

Usage: solve.py problems.json > solutions.json
"""

import json
import sys

import sympy
from sympy import Matrix, Rational, Symbol

DIGITS = 40
RIGHT = Matrix([1, 0, 0])
UP = Matrix([0, 1, 0])


def exact(number):
    """The decimal number as it is written, as a fraction."""
    return Rational(repr(number)) if isinstance(number, float) else Rational(number)


def turned(vector, angle):
    """The vector turned anticlockwise in the plane."""
    cos, sin = sympy.cos(angle), sympy.sin(angle)
    return Matrix([[cos, -sin, 0], [sin, cos, 0], [0, 0, 1]]) * vector


def angle_of(form, key="angle"):
    """The angle of a form, given in radians or in degrees."""
    if key + "_rad" in form:
        return exact(form[key + "_rad"])
    return exact(form[key + "_deg"]) * sympy.pi / 180


def slanted(form, upright, side):
    """A unit vector at an angle from the horizontal or the vertical."""
    level = RIGHT if side == "right" else -RIGHT
    plumb = UP if upright == "up" else -UP
    start, end = (level, plumb) if form["from"] == "horizontal" else (plumb, level)
    # From one axis towards the other, whichever way round that is.
    sense = start.cross(end)[2]
    return turned(start, sense * angle_of(form))


def axis(body):
    """Unit vector from the foot to the tip."""
    if body["tilt"] == "level":
        return RIGHT if body["towards"] == "right" else -RIGHT
    return slanted(body["tilt"], "up", body["towards"])


def direction(form, body):
    """Unit vector of a direction."""
    named = {"up": UP, "down": -UP, "right": RIGHT, "left": -RIGHT}
    if isinstance(form, str):
        return named[form]
    if "from" in form:
        return slanted(form, form["upright"], form["side"])
    # From the part that leads back to the foot, over the upper side of the body.
    sense = -1 if body["towards"] == "right" else 1
    return turned(-axis(body), sense * angle_of(form, "from_body"))


def place(form, body):
    """Distance from the foot."""
    length = exact(body["length"])
    if isinstance(form, str):
        return {"foot": 0, "middle": length / 2, "tip": length}[form]
    if "distance" in form:
        return exact(form["distance"])
    return length * form["over"] / form["under"]


def acting(problem):
    """Every force as (name, place, vector, couple, unknowns), vectors with symbols inside."""
    body, gravity = problem["body"], exact(problem["gravity"])
    if body.get("mass") is not None:
        weight = -UP * exact(body["mass"]) * gravity
        yield "own weight", place(body["centre"], body), weight, 0, []
    for load in problem["loads"]:
        if "mass" in load:
            vector = -UP * exact(load["mass"]) * gravity
        else:
            vector = direction(load["direction"], body) * exact(load["force"])
        yield load["name"], place(load["at"], body), vector, 0, []
    for rope in problem["ropes"]:
        size = Symbol(rope["name"])
        vector = direction(rope["direction"], body) * size
        yield rope["name"], place(rope["at"], body), vector, 0, [size]
    for support in problem["supports"]:
        name, at = support["name"], place(support["at"], body)
        if support["kind"] == "roller":
            size = Symbol(name)
            yield name, at, direction(support["direction"], body) * size, 0, [size]
            continue
        x, y, couple = Symbol(name + "_x"), Symbol(name + "_y"), Symbol(name + "_m")
        if support["kind"] == "hinge":
            yield name, at, RIGHT * x + UP * y, 0, [x, y]
        else:
            yield name, at, RIGHT * x + UP * y, couple, [x, y, couple]


def solved(problem):
    """The answer to one problem."""
    along = axis(problem["body"])
    tip = along * place("tip", problem["body"])
    forces = list(acting(problem))
    total, turning, unknowns = sympy.zeros(3, 1), 0, []
    for _, at, vector, couple, symbols in forces:
        total += vector
        turning += (along * at - tip).cross(vector)[2] + couple
        unknowns += symbols
    sums = [total[0], total[1], turning]
    matrix, right = sympy.linear_eq_to_matrix(sums, unknowns)
    answers = sympy.linsolve((matrix.evalf(DIGITS), right.evalf(DIGITS)), *unknowns)
    values = dict(zip(unknowns, next(iter(answers))))
    told = {}
    for name, _, vector, couple, symbols in forces:
        found = vector.subs(values).evalf(DIGITS)
        told[name] = {"x": float(found[0]), "y": float(found[1])}
        if len(symbols) == 1:
            told[name]["size"] = float(values[symbols[0]])
        if len(symbols) == 3:
            told[name]["couple"] = float(values[symbols[2]])
    return {"id": problem["id"], "forces": told}


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        problems = json.load(file)["problems"]
    lines = [json.dumps(solved(problem), ensure_ascii=False) for problem in problems]
    print('{"solutions": [\n' + ",\n".join(lines) + "\n]}")


if __name__ == "__main__":
    main()
