#!/bin/sh
# Solves problems.json and lesson_problems.json anew with SymPy and compares with the kept solutions, integrates
# centroids.json anew; judges systems.jsonl.
# Ends with 0 where they agree, and where python3 or sympy is missing (and says so).
set -eu
cd "$(dirname "$0")"
if ! command -v python3 >/dev/null 2>&1; then
    echo "not checked: python3 is missing"
    exit 0
fi
if ! python3 -c 'import sympy' 2>/dev/null; then
    echo "not checked: python3 has no sympy (install it with: python3 -m pip install sympy)"
    exit 0
fi
fresh=$(mktemp)
trap 'rm -f "$fresh"' EXIT
for kept in "" lesson_; do
    python3 solve.py "${kept}problems.json" >"$fresh"
    python3 compare.py "${kept}solutions.json" "$fresh"
done
# Centroids of laminae by integration.
python3 centroids.py >"$fresh"
cmp centroids.json "$fresh"
echo "centroids.json: the same"
# Systems of bodies: the kept results are right, and results that are made wrong are seen to be.
python3 judge_systems.py systems.jsonl
python3 judge_systems.py systems.jsonl --spoiled | tail -n 1
