"""Numbers that stay rational as long as they can, and the geometry of a problem in the JSON form.

Part of judge_systems.py.
"""

from fractions import Fraction

import sympy
from mpmath import mp, mpf
from sympy import QQ

mp.dps = 50

UNITS = {
    "m": "1", "cm": "0.01", "mm": "0.001", "kg": "1", "g": "0.001", "N": "1", "kN": "1000",
    "N m": "1", "N/m": "1", "kN/m": "1000", "m/s^2": "1", "": "1",
}


def exact(text):
    """The rational number of a decimal or fraction."""
    return QQ(Fraction(text).numerator, Fraction(text).denominator)


def is_exact(value):
    return isinstance(value, type(QQ(1, 3))) or isinstance(value, int)


def real(value):
    """The same as a number of 50 digits."""
    return mpf(int(value.numerator)) / mpf(int(value.denominator)) if is_exact(value) else value


def mixed(one, other, operation):
    if is_exact(one) and is_exact(other):
        return operation(one, other)
    return operation(real(one), real(other))


def add(one, other):
    return mixed(one, other, lambda a, b: a + b)


def subtract(one, other):
    return mixed(one, other, lambda a, b: a - b)


def times(one, other):
    return mixed(one, other, lambda a, b: a * b)


def divide(one, other):
    return mixed(one, other, lambda a, b: a / b)


def root(value):
    """The square root, exact where the number is a square."""
    if is_exact(value):
        top, bottom = sympy.integer_nthroot(int(value.numerator), 2), sympy.integer_nthroot(int(value.denominator), 2)
        if top[1] and bottom[1]:
            return QQ(int(top[0]), int(bottom[0]))
    return mp.sqrt(real(value))


def rational(value):
    """The rational number that a binary one of 50 digits is."""
    if is_exact(value):
        return value
    sign, mantissa, exponent, _ = value._mpf_
    whole = QQ(-int(mantissa) if sign else int(mantissa))
    return whole * QQ(2) ** exponent if exponent >= 0 else whole / QQ(2) ** -exponent


def plus(one, other):
    return (add(one[0], other[0]), add(one[1], other[1]))


def minus(one, other):
    return (subtract(one[0], other[0]), subtract(one[1], other[1]))


def scaled(vector, factor):
    return (times(vector[0], factor), times(vector[1], factor))


def quarter(vector):
    """Turned a quarter anticlockwise."""
    return (times(QQ(-1), vector[1]), vector[0])


def length_of(vector):
    return root(add(times(vector[0], vector[0]), times(vector[1], vector[1])))


class Angle:
    """An angle in degrees, with its sine and cosine; exact at the quarters."""

    def __init__(self, degrees):
        self.degrees = degrees

    def unit(self, sense=1):
        quarters = {0: (1, 0), 90: (0, 1), 180: (-1, 0), 270: (0, -1)}
        whole = (self.degrees * sense) % 360
        if whole in quarters:
            return tuple(QQ(part) for part in quarters[whole])
        turned = mpf(whole.numerator) / mpf(whole.denominator) * mp.pi / 180
        return (mp.cos(turned), mp.sin(turned))


class Problem:
    """Reads the JSON form."""

    def __init__(self, form):
        self.system = form["system"]
        self.gravity = self.quantity(form["g"])
        self.givens = {}
        self.gather(self.system)
        self.bodies = {}
        for body in self.system["bodies"]:
            self.bodies[body["name"]] = {"legs": [], "knot": body.get("knot", False)}
            found = self.bodies[body["name"]]
            at = self.spot(body.get("start", "origin"))
            found["start"] = at
            for leg in body.get("legs", []):
                size, way = self.quantity(leg["length"]), self.direction(leg["direction"], at)
                end = plus(at, scaled(way, size))
                found["legs"].append({"start": at, "way": way, "length": size})
                at = end

    def gather(self, form):
        """Every given that is told in full, wherever it stands."""
        if isinstance(form, dict):
            if "symbol" in form and "is" in form:
                self.givens[form["symbol"]] = form["is"]
            for part in form.values():
                self.gather(part)
        elif isinstance(form, list):
            for part in form:
                self.gather(part)

    def quantity(self, form):
        """A quantity in SI units."""
        if isinstance(form, dict):
            form = form["is"] if "is" in form else self.givens[form["same_as"]]
        if form.endswith("°"):
            return Angle(Fraction(form[:-1]))
        number, _, unit = form.partition(" ")
        return exact(number) * exact(UNITS[unit])

    def coordinate(self, form):
        if isinstance(form, dict) and "sum" in form:
            total = QQ(0)
            for factor, symbol in form["sum"]:
                total = add(total, times(exact(factor), self.quantity(self.givens[symbol])))
            return total
        return self.quantity(form)

    def place(self, form, size):
        """Metres from the beginning of a leg of this length."""
        if form == "foot":
            return QQ(0)
        if form == "middle":
            return times(size, QQ(1, 2))
        if form == "tip":
            return size
        if isinstance(form, dict) and "fraction" in form:
            return times(size, exact(form["fraction"]))
        return self.quantity(form)

    def spot(self, form):
        if form == "origin":
            return (QQ(0), QQ(0))
        if "x" in form:
            return (self.coordinate(form["x"]), self.coordinate(form["y"]))
        leg = self.bodies[form["on"]]["legs"][form.get("leg", 0)]
        return plus(leg["start"], scaled(leg["way"], self.place(form["at"], leg["length"])))

    def direction(self, form, at):
        """The unit vector of a direction that is told at a point."""
        words = {"up": (0, 1), "down": (0, -1), "left": (-1, 0), "right": (1, 0)}
        if isinstance(form, str):
            return tuple(QQ(part) for part in words[form])
        if "towards" in form:
            way = minus(self.spot(form["towards"]), at)
            size = length_of(way)
            return (divide(way[0], size), divide(way[1], size))
        body = form.get("along") or form.get("across") or form.get("with")
        if body is not None:
            onward = self.bodies[body]["legs"][form.get("leg", 0)]["way"]
            if "across" in form:
                left = quarter(onward)
                return left if form["left"] else scaled(left, QQ(-1))
            base = onward if form["onward"] else scaled(onward, QQ(-1))
            if "along" in form:
                return base
            # Left of one who walks onward lies anticlockwise of the onward direction and clockwise
            # of the backward one.
            sense = 1 if form["left"] == form["onward"] else -1
            cosine, sine = self.quantity(form["angle"]).unit(sense)
            return (
                subtract(times(base[0], cosine), times(base[1], sine)),
                add(times(base[0], sine), times(base[1], cosine)),
            )
        cosine, sine = self.quantity(form["angle"]).unit()
        if form["from"] == "x-axis":
            return (cosine, sine)
        across, upright = (cosine, sine) if form["from"] == "horizontal" else (sine, cosine)
        return (
            across if form["side"] == "right" else times(QQ(-1), across),
            upright if form["up"] else times(QQ(-1), upright),
        )


def middle(points):
    """The mean of some points."""
    total = (QQ(0), QQ(0))
    for point in points:
        total = plus(total, point)
    return scaled(total, QQ(1, max(1, len(points))))


def farthest(points):
    """Twice the largest distance from the middle."""
    if not points:
        return 0.0
    x = sum(point[0] for point in points) / len(points)
    y = sum(point[1] for point in points) / len(points)
    reach = float(2 * max(mp.hypot(point[0] - x, point[1] - y) for point in points))
    # One point told in two ways differs by rounding in the fiftieth digit.
    return reach if reach > 1e-40 else 0.0
