#!/usr/bin/env python3
"""An independent judge of systems of bodies.

Usage: judge_systems.py lines.jsonl [--details N] [--spoiled]

With --spoiled every result is made wrong by a little first, and the judge must see each of them.

Each line is {"id", "family", "problem", "result"}: a problem in the JSON form, and what the program
found. The judge reads the problem alone, does its own geometry, writes down the balances of every
body with SymPy and solves them. The program's numbers are only looked at afterwards.

Where every number is rational (directions upright, level, or three-four-five) it is SymPy's exact
arithmetic over the rationals from the geometry to the forces: DomainMatrix over QQ. Where sines and
square roots are needed, geometry is mpmath with 50 digits; the rank is told by elimination with
complete pivoting in 50 digits, and the independent equations are then solved by SymPy over the
rationals, so without rounding.

What is compared, and within what:
- the forces: the difference over the scale, which is the largest load; couples over the scale times
  the length, twice the farthest distance from the middle of the points where forces act. Where lines
  nearly meet forces grow far above the load and the rounding of doubles with them: a difference counts
  as a disagreement from 1e-9 of the largest force or load of that problem.
- the refusals, by their code. "Nearly singular" is the program's word where the smallest pivot of
  its scaled equations lies between 1e-11 and 1e-6. The judge measures by its own elimination
  (forces in units of the largest load, moments about the middle of a body's points also in units of
  its length, twice the farthest distance from there); within a factor of 2 of either threshold both answers are taken, and counted as such.
- signs and friction within 1e-7 of the scale of their limit: both answers are taken, and counted.
"""

import json
import sys
from collections import Counter, defaultdict

import mpmath
import sympy
from mpmath import mp, mpf
from sympy import QQ
from sympy.polys.matrices import DomainMatrix

from judge_geometry import (
    Problem, add, divide, farthest, is_exact, middle, minus, plus, quarter, rational, real, scaled, subtract, times,
)

EXACTLY_ZERO = mpf(10) ** -38
NEARLY, ZERO_PIVOT, BAND = 1e-6, 1e-11, 2.0
BORDER, DUST = 1e-7, 1e-35
GOAL = 1e-9


class Column:
    """What one action does to the bodies: forces at points, couples."""

    def __init__(self, name, sense=None):
        self.name, self.sense, self.parts = name, sense, []

    def force(self, body, at, vector):
        self.parts.append((body, at, vector, None))
        return self

    def couple(self, body, size):
        self.parts.append((body, None, None, size))
        return self


class Judgement:
    """The balances of a problem and what follows from them."""

    def __init__(self, form):
        self.problem = Problem(form)
        self.loads, self.unknowns, self.contacts, self.lines = [], [], [], {}
        self.known()
        self.ropes()
        for hold in self.problem.system["holds"]:
            self.hold(hold)
        self.scales()
        self.solve()

    def known(self):
        problem = self.problem
        for load in problem.system["weights"] + problem.system["loads"]:
            column, body = Column(load["symbol"]), load["body"]
            if "mass" in load:
                size = times(problem.quantity(load["mass"]), problem.gravity)
                column.force(body, problem.spot(load["at"]), (QQ(0), times(QQ(-1), size)))
            elif "force" in load:
                at = problem.spot(load["at"])
                way = problem.direction(load["direction"], at)
                column.force(body, at, scaled(way, problem.quantity(load["force"])))
            elif "couple" in load:
                sign = QQ(1) if load["turns"] == "anticlockwise" else QQ(-1)
                column.couple(body, times(sign, problem.quantity(load["couple"])))
            else:
                self.spread(column, load)
            self.loads.append(column)

    def spread(self, column, load):
        """Its two triangles: one that falls from the first value, one that rises to the last. Each
        has half of its value times the length, a third of the length from its higher end."""
        problem = self.problem
        leg = problem.bodies[load["body"]]["legs"][load.get("leg", 0)]
        begin = problem.place(load["from"], leg["length"])
        end = problem.place(load["to"], leg["length"])
        reach = subtract(end, begin)
        size = reach if real(reach) >= 0 else times(QQ(-1), reach)
        sizes, spots = [], []
        for key, third in (("first", QQ(1, 3)), ("last", QQ(2, 3))):
            if key in load:
                sizes.append(times(times(problem.quantity(load[key]), size), QQ(1, 2)))
                spots.append(add(begin, times(reach, third)))
        # A direction towards a point is that of the resultant.
        total, turning, share = QQ(0), QQ(0), begin
        for part, spot in zip(sizes, spots):
            total, turning = add(total, part), add(turning, times(part, spot))
        if real(total) != 0:
            share = divide(turning, total)
        way = problem.direction(load["direction"], plus(leg["start"], scaled(leg["way"], share)))
        for part, spot in zip(sizes, spots):
            column.force(load["body"], plus(leg["start"], scaled(leg["way"], spot)), scaled(way, part))

    def ropes(self):
        for rope in self.problem.system["ropes"]:
            column = Column(rope["symbol"], "pull")
            for end in rope["ends"]:
                at = self.problem.spot(end["at"])
                column.force(end["body"], at, self.problem.direction(end["direction"], at))
            self.lines[rope["symbol"]] = [len(self.unknowns)]
            self.unknowns.append(column)

    def hold(self, hold):
        problem, name, kind = self.problem, hold["symbol"], hold["kind"]
        at = problem.spot(hold["at"])
        mine = self.lines.setdefault(name, [])

        def unknown(sense=None, way=None):
            column = Column(name, sense)
            sides = [(hold["body"], QQ(1))] + ([(hold["by"], QQ(-1))] if "by" in hold else [])
            for body, sign in sides:
                if way is None:
                    column.couple(body, sign)
                else:
                    column.force(body, at, scaled(way, sign))
            mine.append(len(self.unknowns))
            self.unknowns.append(column)

        if kind in ("hinge", "built-in"):
            unknown(way=(QQ(1), QQ(0)))
            unknown(way=(QQ(0), QQ(1)))
        elif kind in ("push", "line"):
            unknown("push" if kind == "push" else None, problem.direction(hold["direction"], at))
        elif kind in ("rough", "base"):
            push = problem.direction(hold["direction"], at)
            friction = hold["friction"]
            if isinstance(friction, dict) and "limiting" in friction:
                way = problem.direction(friction["direction"], at)
                unknown("push", plus(push, scaled(way, problem.quantity(friction["limiting"]))))
            else:
                unknown("push", push)
                unknown(way=quarter(push))
        if kind in ("built-in", "base", "couple"):
            unknown()
        if kind in ("rough", "base"):
            self.contacts.append(hold)

    def scales(self):
        """The largest load, and how far apart forces act on each body."""
        points = defaultdict(list)
        for column in self.loads + self.unknowns:
            for body, at, _, _ in column.parts:
                points[body]
                if at is not None:
                    points[body].append((real(at[0]), real(at[1])))
        everything = [point for many in points.values() for point in many]
        self.length = farthest(everything) or 1.0
        self.lengths = {}
        for body, many in points.items():
            own = farthest(many)
            self.lengths[body] = own if own > 1e-9 * self.length else self.length
        largest = 0.0
        for load in self.loads:
            # A spread load is one load, though it comes in two triangles.
            x = sum((real(part[2][0]) for part in load.parts if part[2]), mpf(0))
            y = sum((real(part[2][1]) for part in load.parts if part[2]), mpf(0))
            turning = [abs(real(part[3])) / self.lengths[part[0]] for part in load.parts if part[3] is not None]
            largest = max([largest, float(mp.hypot(x, y))] + [float(turn) for turn in turning])
        self.force = largest or 1.0
        self.origins = {body: middle(many) for body, many in self.corners().items()}

    def corners(self):
        """Points where forces act on each body; moments are taken about their middle."""
        points = {name: [] for name in self.problem.bodies}
        for column in self.loads + self.unknowns:
            for body, at, _, _ in column.parts:
                if at is not None:
                    points[body].append(at)
        return points

    def equations(self):
        """Rows of the balances: forces to the right, forces up, moments except of knots. The last
        entry is the loads' own sum with its sign turned."""
        order = []
        for name, body in self.problem.bodies.items():
            order += [(name, 0), (name, 1)] + ([] if body["knot"] else [(name, 2)])
        index = {row: place for place, row in enumerate(order)}
        width = len(self.unknowns)
        rows = [[QQ(0)] * (width + 1) for _ in order]

        def put(column, place, sign):
            for body, at, vector, size in column.parts:
                turning = size
                if vector is not None:
                    for axis in (0, 1):
                        row = rows[index[(body, axis)]]
                        row[place] = add(row[place], times(sign, vector[axis]))
                    arm = minus(at, self.origins[body])
                    turning = subtract(times(arm[0], vector[1]), times(arm[1], vector[0]))
                if (body, 2) in index:
                    row = rows[index[(body, 2)]]
                    row[place] = add(row[place], times(sign, turning))

        for place, column in enumerate(self.unknowns):
            put(column, place, QQ(1))
        for load in self.loads:
            put(load, width, QQ(-1))
        return order, rows

    def solve(self):
        order, rows = self.equations()
        width = len(self.unknowns)
        self.exact = all(is_exact(entry) for row in rows for entry in row)
        self.values = None
        rank, consistent, self.pivot = self.ranks(order, rows, width)
        if self.exact:
            matrix = DomainMatrix([row[:width] for row in rows], (len(rows), width), QQ)
            whole = DomainMatrix(rows, (len(rows), width + 1), QQ)
            rank, with_loads = matrix.rank(), whole.rank()
            consistent = rank == with_loads
        if not consistent:
            self.codes = [("mechanism", None)]
        elif rank < width:
            self.codes = [("indeterminate", None)]
        else:
            self.values = self.exact_values(rows, width) if self.exact else self.real_values(rows, width)
            self.judge()

    def exact_values(self, rows, width):
        whole = DomainMatrix(rows, (len(rows), width + 1), QQ)
        reduced, pivots = whole.rref()
        if pivots != tuple(range(width)):
            raise ValueError("not one solution")
        return [real(reduced[index, width].element) for index in range(width)]

    def real_values(self, rows, width):
        """The rows that were independent, their 50 digits taken as the rational numbers that they
        are, so that SymPy solves without any further rounding."""
        chosen = [[rational(entry) for entry in rows[index]] for index in self.independent]
        return self.exact_values(chosen, width)

    def ranks(self, order, rows, width):
        """Elimination with complete pivoting on the scaled equations, 50 digits: the rank, whether
        the loads are held, and the smallest pivot over the largest."""
        unit = [self.lengths.get(name, self.length) if axis == 2 else 1 for name, axis in order]
        left = [[real(entry) / unit[place] for entry in row] for place, row in enumerate(rows)]
        for place, column in enumerate(self.unknowns):
            size = [real(part[3]) / self.lengths[part[0]] for part in column.parts if part[3] is not None]
            size += [mp.hypot(real(part[2][0]), real(part[2][1])) for part in column.parts if part[2]]
            worth = max([abs(part) for part in size])
            for row in left:
                row[place] /= worth
        for row in left:
            row[width] /= self.force
        free, taken, self.independent = list(range(len(left))), [], []
        columns = list(range(width))
        while free and columns:
            row, column = max(((r, c) for r in free for c in columns), key=lambda rc: abs(left[rc[0]][rc[1]]))
            size = abs(left[row][column])
            if size <= EXACTLY_ZERO:
                break
            taken.append(size)
            self.independent.append(row)
            free.remove(row)
            columns.remove(column)
            for other in free:
                if left[other][column]:
                    factor = left[other][column] / left[row][column]
                    for place in columns + [width]:
                        left[other][place] -= factor * left[row][place]
        over = [abs(left[row][width]) for row in free]
        pivot = float(min(taken) / taken[0]) if taken else 1.0
        return len(taken), all(rest <= EXACTLY_ZERO for rest in over), pivot

    def judge(self):
        """Ropes that push, contacts that pull; then friction and bases."""
        signs, self.borderline = [], False
        for column, value in zip(self.unknowns, self.values):
            if column.sense is None:
                continue
            sizes = [mp.hypot(real(part[2][0]), real(part[2][1])) for part in column.parts]
            share = float(value * max(sizes)) / self.force
            self.borderline |= DUST < abs(share) < BORDER
            if share < -1e-9:
                signs.append(({"pull": "rope-would-push", "push": "contact-would-pull"}[column.sense], column.name))
        self.codes = signs or self.friction() or [("solved", None)]

    def friction(self):
        troubles = []
        for hold in self.contacts:
            name, friction = hold["symbol"], hold["friction"]
            mine = self.lines[name]
            push, across = self.values[mine[0]], None
            limiting = isinstance(friction, dict) and "limiting" in friction
            if not limiting:
                across = self.values[mine[1]]
            if isinstance(friction, dict) and "up_to" in friction:
                most = real(self.problem.quantity(friction["up_to"])) * push
                over = float((abs(across) - most)) / self.force
                self.borderline |= DUST < abs(over) < BORDER
                if over > 1e-9:
                    troubles.append(("would-slip", name))
            if hold["kind"] == "base":
                if limiting:
                    # A friction that is not square to the push has a part along it.
                    at = self.problem.spot(hold["at"])
                    way = self.problem.direction(hold["direction"], at)
                    total = self.unknowns[mine[0]].parts[0][2]
                    push = push * (real(total[0]) * real(way[0]) + real(total[1]) * real(way[1]))
                half = real(self.problem.quantity(hold["width"])) / 2
                over = float((abs(self.values[mine[-1]]) - half * push) / half) / self.force
                self.borderline |= DUST < abs(over) < BORDER
                if over > 1e-9:
                    troubles.append(("would-topple", name))
        return troubles

    def forces(self):
        """Every action on the body named first: x, y, couple, size."""
        found = {}
        for load in self.loads:
            parts = [part for part in load.parts if part[2] is not None]
            couples = [part[3] for part in load.parts if part[3] is not None]
            x = sum((real(part[2][0]) for part in parts), mpf(0))
            y = sum((real(part[2][1]) for part in parts), mpf(0))
            couple = sum((real(size) for size in couples), mpf(0))
            found[load.name] = (x, y, couple, abs(couple) if couples else mp.hypot(x, y))
        contacts = {hold["symbol"] for hold in self.contacts}
        for name, places in self.lines.items():
            x = y = couple = mpf(0)
            for place in places:
                _, _, vector, size = self.unknowns[place].parts[0]
                if vector is None:
                    couple += self.values[place] * real(size)
                else:
                    x += self.values[place] * real(vector[0])
                    y += self.values[place] * real(vector[1])
            # Along a line the size has a sign; so has a couple that stands alone.
            size = mp.hypot(x, y)
            if len(places) == 1 and name not in contacts:
                size = couple if vector is None else self.values[places[0]]
            found[name] = (x, y, couple, size)
        return found

    def largest_force(self):
        return max([self.force] + [float(mp.hypot(x, y)) for x, y, _, _ in self.forces().values()])


def expected(judgement):
    """What the program should say: a list of answers that all are right, and the judge's own."""
    own = judgement.codes[0][0]
    pivot = judgement.pivot
    answers = {code for code, _ in judgement.codes}
    band = None
    if pivot < ZERO_PIVOT * BAND:
        # What lies below the threshold counts as exactly singular.
        answers = ({"mechanism", "indeterminate"} if pivot < ZERO_PIVOT / BAND
                   else {"mechanism", "indeterminate", "nearly-singular"})
        band = "at the lower threshold" if pivot > ZERO_PIVOT / BAND else None
        own = "singular to 1e-11"
    elif pivot < NEARLY * BAND:
        if pivot > NEARLY / BAND:
            band = "at the upper threshold"
            answers |= {"nearly-singular"}
        else:
            answers = {"nearly-singular"}
        own = "nearly-singular"
    return own, answers, band


def compare(line, counts, worst, details):
    judgement = Judgement(line["problem"])
    own, answers, band = expected(judgement)
    told = line["result"].get("refused", "solved")
    counts["kind", "rational, exact" if judgement.exact else "50 digits"] += 1
    counts["pair", own, told] += 1
    if band:
        counts["border", band] += 1
    if line["result"].get("pivot") and judgement.pivot > 0:
        ratio = line["result"]["pivot"] / judgement.pivot
        worst["ratio"] = max(worst.get("ratio", 1.0), ratio, 1 / ratio)
    borderline = judgement.values is not None and judgement.borderline
    if borderline:
        counts["border", "a sign, friction or edge within 1e-7 of its limit"] += 1
    if told not in answers and not borderline:
        counts["disagree", own, told] += 1
        details.append((line["id"], line["family"], f"judge {sorted(answers)}, program {told}, pivot {judgement.pivot:.1e}"))
        return
    about = line["result"].get("of")
    if about is not None and not borderline and (told, about) not in judgement.codes:
        details.append((line["id"], line["family"], f"judge {judgement.codes}, program {told} at {about}"))
        counts["disagree", own, told + " elsewhere"] += 1
    if told != "solved" or judgement.values is None:
        return
    theirs = line["result"]["forces"]
    ours = judgement.forces()
    if theirs.keys() != ours.keys():
        details.append((line["id"], line["family"], "not the same forces"))
        counts["disagree", own, "other forces"] += 1
        return
    difference = 0.0
    for name, (x, y, couple, size) in ours.items():
        of_size = judgement.length if couple and not x and not y else 1.0
        told_of = ((x, "x", 1.0), (y, "y", 1.0), (couple, "couple", judgement.length), (size, "size", of_size))
        for value, key, unit in told_of:
            difference = max(difference, abs(float(mpf(theirs[name][key]) - value)) / unit)
    loads = difference / judgement.force
    counts["forces", ""] += len(ours)
    if loads > GOAL:
        counts["above", "1e-9 of the largest load"] += 1
        worst["above"] = max(worst.get("above", 0.0), judgement.pivot)
    for name, value in (
        ("of the largest load", loads),
        ("of the largest load, smallest pivot at least 1e-2", loads if judgement.pivot >= 1e-2 else 0.0),
        ("of the largest load, smallest pivot at least 1e-3", loads if judgement.pivot >= 1e-3 else 0.0),
        ("of the largest force or load", difference / judgement.largest_force()),
    ):
        if value > worst.get(name, (0.0, None))[0]:
            worst[name] = (value, line["id"], judgement.pivot)
    if difference / judgement.largest_force() > GOAL:
        details.append((line["id"], line["family"], f"differs by {loads:.1e} of the largest load, pivot {judgement.pivot:.1e}"))
        counts["disagree", own, "other values"] += 1


def spoiled(line):
    """The line with a wrong result: a force off by 1e-8 of the largest, or another code."""
    result = line["result"]
    if "forces" in result:
        forces = list(result["forces"].values())
        largest = max([result["force_scale"]] + [abs(force[key]) for force in forces for key in ("x", "y")])
        forces[line["id"] % len(forces)][("x", "y", "size")[line["id"] % 3]] += 1e-8 * largest
    else:
        result["refused"] = "indeterminate" if result["refused"] != "indeterminate" else "mechanism"
        result["of"] = None
    return line


def main():
    shown = int(sys.argv[sys.argv.index("--details") + 1]) if "--details" in sys.argv else 20
    counts, worst, details = Counter(), {}, []
    with open(sys.argv[1], encoding="utf-8") as file:
        lines = [json.loads(line) for line in file]
    for line in map(spoiled, lines) if "--spoiled" in sys.argv else lines:
        compare(line, counts, worst, details)
    print(f"{len(lines)} problems, SymPy {sympy.__version__}, mpmath {mpmath.__version__}")
    for (group, *rest), count in sorted(counts.items(), key=str):
        if group == "kind":
            print(f"  {count:6} solved with {rest[0]}")
    print("judge                    program                 problems")
    for (group, *rest), count in sorted(counts.items(), key=str):
        if group == "pair":
            print(f"  {rest[0]:<22} {rest[1]:<22} {count:6}")
    for (group, *rest), count in sorted(counts.items(), key=str):
        if group == "border":
            print(f"  {count:6} {rest[0]}: either answer is taken")
    print(f"{counts['forces', '']} forces compared; largest difference")
    print(f"  the program's pivots and the judge's differ by a factor of at most {worst.pop('ratio', 1.0):.2f}")
    steepest = worst.pop("above", 0.0)
    for name, (value, where, pivot) in worst.items():
        print(f"  {value:.1e} {name} (problem {where}, smallest pivot {pivot:.1e})")
    above = counts["above", "1e-9 of the largest load"]
    print(f"  {above} problems differ by more than 1e-9 of the largest load; the largest of their smallest pivots is {steepest:.1e}")
    wrong = sum(count for key, count in counts.items() if key[0] == "disagree")
    if "--spoiled" in sys.argv:
        print(f"{wrong} of {len(lines)} spoiled results seen")
        sys.exit(0 if wrong == len(lines) else 1)
    print(f"{wrong} disagreements")
    for where, family, what in details[:shown]:
        print(f"  problem {where} ({family}): {what}")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
