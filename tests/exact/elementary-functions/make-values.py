"""Writes values.csv: elementary functions to some 70 digits by mpmath 1.3 (arbitrary precision, its own algorithms).

Not part of any build or test; run again with `python3 make-values.py > values.csv` when functions or arguments change.
A value stands as the double nearest to it and what that leaves out, so that a hundredth of the last place can be told.
"""
import random
from mpmath import mp, mpf

mp.prec = 1400
draw = random.Random(1)


def spread(low, high, signed=False):
    """An argument of any magnitude between two powers of two."""
    value = 2.0 ** draw.uniform(low, high)
    return -value if signed and draw.random() < 0.5 else value


def between(low, high):
    return lambda: draw.uniform(low, high)


def next_to_quarter_turns():
    return float(draw.randrange(1, 10**6) * mp.pi / 2)


functions = {
    "exp": (mp.exp, [between(-708, 709), between(-745, -708), lambda: spread(-40, 3, True)]),
    "expm1": (mp.expm1, [between(-2, 2), lambda: spread(-60, 5, True)]),
    "log": (mp.log, [lambda: spread(-1074, 1023), between(0.97, 1.03), between(0.5, 2)]),
    "log1p": (mp.log1p, [lambda: spread(-60, 60), between(-0.9, 1)]),
    "log10": (mp.log10, [lambda: spread(-1074, 1023), between(0.97, 1.03)]),
    "log2": (lambda x: mp.log(x) / mp.log(2), [lambda: spread(-1074, 1023), between(0.97, 1.03)]),
    "sin": (mp.sin, [between(-7, 7), between(-1e6, 1e6), between(-1e9, 1e9), next_to_quarter_turns]),
    "cos": (mp.cos, [between(-7, 7), between(-1e6, 1e6), between(-1e9, 1e9), next_to_quarter_turns]),
    "tan": (mp.tan, [between(-7, 7), between(-1e6, 1e6), lambda: spread(-60, 0)]),
    "asin": (mp.asin, [between(-1, 1), lambda: 1 - spread(-50, 0), lambda: spread(-40, 0, True)]),
    "acos": (mp.acos, [between(-1, 1), lambda: 1 - spread(-50, 0), lambda: spread(-40, 0, True)]),
    "atan": (mp.atan, [between(-3, 3), lambda: spread(-60, 60, True)]),
    "sinh": (mp.sinh, [between(-3, 3), lambda: spread(-40, 9.4, True)]),
    "tanh": (mp.tanh, [between(-3, 3), lambda: spread(-40, 4, True)]),
    "acosh": (mp.acosh, [lambda: 1 + spread(-40, 3), lambda: spread(0, 1000)]),
    "atanh": (mp.atanh, [between(-1, 1), lambda: spread(-40, 0, True)]),
    "cbrt": (lambda x: mp.sign(x) * mp.cbrt(abs(x)), [lambda: spread(-1074, 1023, True)]),
    "pow": (
        lambda x, y: mp.power(x, y),
        [
            (between(0, 10), between(-5, 5)),
            (lambda: spread(-1000, 1000), between(-0.7, 0.7)),
            (between(0.99, 1.01), between(-30000, 30000)),
            (lambda: spread(-1074, -1022), between(-0.9, 0.9)),
        ],
    ),
    "atan2": (
        lambda y, x: mp.atan2(y, x),
        [(between(-1, 1), between(-1, 1)), (lambda: spread(-900, 900, True), lambda: spread(-900, 900, True))],
    ),
    "hypot": (
        lambda x, y: mp.sqrt(x * x + y * y),
        [(between(-1, 1), between(-1, 1)), (lambda: spread(-500, 500), lambda: spread(-1000, 1000))],
    ),
}
ROWS = 8

print("function,x,y,value,rest")
for name, (function, draws) in functions.items():
    for one in draws:
        for _ in range(ROWS):
            arguments = [own() for own in one] if isinstance(one, tuple) else [one()]
            exact = function(*[mpf(own) for own in arguments])
            value = float(exact)
            cells = [repr(own) for own in arguments] + [""] * (2 - len(arguments))
            print(",".join([name, *cells, repr(value), repr(float(exact - mpf(value)))]))
