"""Certified values of NIST's linear regressions again: python3 core/src/test/reference/nist_least_squares.py

Solves the normal equations X'X b = X'y of the files in resources/nist-strd in whole fractions, without any rounding, and
rounds the coefficients and their standard deviations root(s^2 (X'X)^-1) once at the end. Each value of certified.csv must
agree to every digit it prints; the last digit may differ by one where the printed value was rounded from fewer digits.
"""

import csv
import pathlib
import sys
from decimal import Decimal, getcontext
from fractions import Fraction

getcontext().prec = 60
FOLDER = pathlib.Path(__file__).resolve().parents[1] / "resources" / "nist-strd"


def table(name):
    with open(FOLDER / name, newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def solve(matrix, sides):
    """Gauss and Jordan in fractions: the matrix becomes 1, the sides the solutions."""
    rows = [line + side for line, side in zip(matrix, sides)]
    for i in range(len(rows)):
        pivot = next(j for j in range(i, len(rows)) if rows[j][i])
        rows[i], rows[pivot] = rows[pivot], rows[i]
        rows[i] = [value / rows[i][i] for value in rows[i]]
        for j in range(len(rows)):
            if j != i and rows[j][i]:
                rows[j] = [a - rows[j][i] * b for a, b in zip(rows[j], rows[i])]
    return [line[len(rows):] for line in rows]


def regression(x, y):
    p = len(x[0])
    square = [[sum(a[i] * a[j] for a in x) for j in range(p)] for i in range(p)]
    sides = [[sum(a[i] * b for a, b in zip(x, y))] + [Fraction(int(i == j)) for j in range(p)] for i in range(p)]
    solved = solve(square, sides)
    b = [line[0] for line in solved]
    residual = sum((value - sum(c * a for c, a in zip(b, row))) ** 2 for row, value in zip(x, y))
    variance = residual / (len(y) - p)
    return [(decimal(b[i]), decimal(variance * solved[i][1 + i]).sqrt()) for i in range(p)]


def decimal(fraction):
    return Decimal(fraction.numerator) / Decimal(fraction.denominator)


def fraction(text):
    return Fraction(Decimal(text))


def model(name):
    lines = table("wampler.csv" if name.startswith("wampler") else name + ".csv")
    if name == "longley":
        return [[Fraction(1)] + [fraction(line[f"x{i}"]) for i in range(1, 7)] for line in lines], [
            fraction(line["y"]) for line in lines]
    degree = {"pontius": 2, "filip": 10}.get(name, 5)
    value = name if name.startswith("wampler") else "y"
    return [[fraction(line["x"]) ** i for i in range(degree + 1)] for line in lines], [
        fraction(line[value]) for line in lines]


def digits(printed, exact):
    """How many digits agree: 15 if the exact value rounds to what is printed."""
    if exact == printed:
        return 15.0
    apart = abs(exact - printed) / abs(printed) if printed else abs(exact)
    return min(15.0, float(-apart.log10()))


certified, least = table("certified.csv"), 15.0
for name in dict.fromkeys(line["dataset"] for line in certified):
    solution = regression(*model(name))
    held = [line for line in certified if line["dataset"] == name]
    agreed = [digits(Decimal(line[key]), solution[int(line["column"])][i])
              for line in held for i, key in enumerate(("estimate", "standardDeviation"))]
    least = min(least, *agreed)
    print(f"{name}: {len(agreed)} certified values, at least {min(agreed):.1f} digits agree")
    for line in held if name == "longley" else []:
        estimate, deviation = solution[int(line["column"])]
        print(f"  longley,{line['column']},{estimate:.15g},{deviation:.15g}")
if least < 14:
    sys.exit("a certified value differs")
