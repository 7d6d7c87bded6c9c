"""Constants of small tests, each from its definition with 40 digits: python3 core/src/test/reference/constants.py

Gauss-Hermite: zeros of the Hermite polynomial of n points and weights 2^(n-1) n! root(pi)/(n H_(n-1)(x))^2 (Abramowitz and
Stegun 1964, 25.4.46), for GaussHermiteTest. Wallis's cubic x^3 - 2x - 5 by Cardano's formula, for BracketedRootTest.
Standard deviation from the limits 30.0 and 34.2 of a mean of 25: root(25) width/(2 t), Student's t on 24 from its own
integral, for SpreadConversionTest.
"""

from mpmath import beta, cbrt, factorial, findroot, hermite, inf, mp, mpf, pi, polyroots, quad, sqrt, taylor

mp.dps = 40


def show(what, value):
    print(f"{what}: {mp.nstr(value, 18)}")


for points in (2, 5):
    coefficients = taylor(lambda x: hermite(points, x), 0, points)[::-1]
    for zero in polyroots(coefficients, maxsteps=200, extraprec=200):
        if zero > -mpf(10) ** -20:
            weight = 2 ** (points - 1) * factorial(points) * sqrt(pi) / (points * hermite(points - 1, zero)) ** 2
            show(f"{points} points, zero", abs(zero))
            show(f"{points} points, weight", weight)

root = sqrt(mpf(25) / 4 - mpf(8) / 27)
show("x^3 - 2x - 5 = 0", cbrt(mpf(5) / 2 + root) + cbrt(mpf(5) / 2 - root))

degrees = mpf(24)


def above(t):
    scale = 1 / (sqrt(degrees) * beta(mpf(1) / 2, degrees / 2))
    return quad(lambda x: scale * (1 + x * x / degrees) ** (-(degrees + 1) / 2), [t, 2 * t, 10 * t, inf])


point = findroot(lambda t: above(t) - mpf(25) / 1000, (2, mpf(21) / 10), solver="secant")
show("Student's t on 24 at 97.5 %", point)
show("standard deviation of 25 with limits 30.0 and 34.2", sqrt(mpf(25)) * mpf("4.2") / (2 * point))
