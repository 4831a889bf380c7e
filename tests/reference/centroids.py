"""Centroids of laminae by integration with SymPy, exactly, and without any formula of a handbook.

Reads centroids.json (laminae as lists of shapes in the form of problem files) and writes it anew with the
area and centroid of each; see README.md. A shape is integrated over x between its edges, turned, and
moved; a hole is taken away.
"""

import json
import sys

from sympy import Matrix, Rational, integrate, sqrt, symbols

X, Y = symbols("x y", real=True)
TURNS = {"up": 0, "left": 1, "down": 2, "right": 3}


def metres(text):
    """'0.30 m' as an exact fraction."""
    number, unit = text.split()
    assert unit == "m", text
    return Rational(number)


def regions(shape):
    """The shape in its own axes: ranges of x, each with its lower and upper edge."""
    kind = shape["shape"]
    if kind in ("rectangle", "triangle"):
        width, height = metres(shape["width"]), metres(shape["height"])
        if kind == "rectangle":
            return [(0, width, 0, height)]
        apex = metres(shape["apex"]) if "apex" in shape else Rational(0)
        parts = []
        if apex > 0:
            parts.append((0, apex, 0, height * X / apex))
        if apex < width:
            parts.append((apex, width, 0, height * (width - X) / (width - apex)))
        return parts
    radius = metres(shape["radius"])
    arc = sqrt(radius**2 - X**2)
    return {
        "disc": [(-radius, radius, -arc, arc)],
        "semicircle": [(-radius, radius, 0, arc)],
        "quarter-circle": [(0, radius, 0, arc)],
    }[kind]


def moments(shape):
    """Area and first moments in the lamina's axes."""
    area, first = 0, Matrix([0, 0])
    for low, high, under, over in regions(shape):
        def over_region(what):
            return integrate(integrate(what, (Y, under, over)), (X, low, high))

        area += over_region(1)
        first += Matrix([over_region(X), over_region(Y)])
    quarter = Matrix([[0, -1], [1, 0]])
    first = quarter ** TURNS[shape.get("points", "up")] * first
    corner = Matrix([metres(shape.get(axis, "0 m")) for axis in "xy"])
    return area, first + area * corner


def main():
    laminae = json.load(open("centroids.json", encoding="utf-8"))
    for lamina in laminae:
        area, first = 0, Matrix([0, 0])
        for shape in lamina["shapes"]:
            sign = -1 if shape.get("hole") else 1
            one, its = moments(shape)
            area, first = area + sign * one, first + sign * its
        centre = (first / area).evalf(25)
        lamina["area"] = float(area.evalf(25) if hasattr(area, "evalf") else area)
        lamina["centroid"] = [float(centre[0]), float(centre[1])]
    # One lamina a line, so that changes are seen.
    lines = ",\n".join(json.dumps(lamina, ensure_ascii=False) for lamina in laminae)
    sys.stdout.write(f"[\n{lines}\n]\n")


if __name__ == "__main__":
    main()
