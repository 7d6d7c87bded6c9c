"""What the tests hold: data and expected values below ../resources/published. Used by the other scripts."""

import csv
import json
import pathlib
import sys

PUBLISHED = pathlib.Path(__file__).resolve().parents[1] / "resources" / "published"

# Below this size (p-values of next to nothing, zeros) a difference is told as it is, not as a share.
SMALLEST = 1e-9


def rows(name):
    """The rows of a data set, numbers as numbers."""
    with open(PUBLISHED / name / f"{name}.csv", newline="", encoding="utf-8") as file:
        return [{key: number(cell) for key, cell in row.items()} for row in csv.DictReader(file)]


def number(cell):
    try:
        return float(cell)
    except ValueError:
        return cell


def expected(name):
    """Expected values by their id."""
    with open(PUBLISHED / name / "expected.json", encoding="utf-8") as file:
        return {one["id"]: one for one in json.load(file)["expected"]}


def compare(name, computed, label=None):
    """Holds computed values, by id, against the expected ones; ends the run if one is off."""
    held = expected(name)
    shared = [key for key in computed if key in held]
    worst, at, off = 0.0, "", []
    for key in shared:
        value, found = held[key]["value"], computed[key]
        apart = abs(found - value)
        share = apart / abs(value) if abs(value) >= SMALLEST else apart
        if not share <= worst:
            worst, at = share, key
        if not apart <= held[key]["tolerance"]:
            off.append(f"{key}: expected {value}, computed {found}")
    print(f"{label or name}: {len(shared)} of {len(held)} values, largest relative difference {worst:.1e} ({at})")
    if off or not shared:
        sys.exit("\n".join(off) or "nothing to compare")
