#!/usr/bin/env python3
"""Compares two files of solutions number by number.

Usage: compare.py kept.json fresh.json
"""

import json
import sys

TOLERANCE = 1e-12


def numbers(path):
    """Every force of every problem, by its place, in the order of the file."""
    with open(path, encoding="utf-8") as file:
        solutions = json.load(file)["solutions"]
    return {solution["id"]: solution["forces"] for solution in solutions}, len(solutions)


def main():
    (kept, kept_count), (fresh, fresh_count) = numbers(sys.argv[1]), numbers(sys.argv[2])
    if kept_count != len(kept) or fresh_count != len(fresh):
        sys.exit("two solutions have the same id")
    if kept.keys() != fresh.keys():
        sys.exit(f"not the same problems: {sorted(kept.keys() ^ fresh.keys())}")
    for name, forces in fresh.items():
        largest = max(abs(part) for force in forces.values() for part in force.values())
        flat = {(force, key): value for force in forces for key, value in forces[force].items()}
        old = {(force, key): value for force in kept[name] for key, value in kept[name][force].items()}
        if flat.keys() != old.keys():
            sys.exit(f"{name}: not the same forces")
        for key, value in flat.items():
            if not abs(value - old[key]) <= TOLERANCE * largest:
                sys.exit(f"{name}: {key} is {old[key]} in the kept file, {value} now")
    print(f"{len(fresh)} solutions agree to {TOLERANCE}")


if __name__ == "__main__":
    main()
