#!/usr/bin/env python3
"""Every worked line of the examples' answers, worked out again from its text alone, with its
units: worked_lines_test.py PROGRAM FOLDER, where the answers of the examples are NAME.json. The
cases beside this file, of the checks that no example has, are answered here."""
import json
import math
import pathlib
import re
import subprocess
import sys
import unittest

ANSWERS = None
# What a finding's check may be called; a new check needs a case in which its lines are read.
CHECKS = """bolt; bolt group; bolt hole; column; combined forces; end weld; frame stability;
    joint rating; joint tilt; net section; pad weld; rail wall; rated load; rosettes; seat weld; slip;
    strap; tab; tab root; tab wall; tab weld; thin wall; thread engagement; threaded shank; weld;
    yield"""
INCH = 0.0254
POUND = 4.4482216152605  # force
# Each unit as its size in N and m, and its powers of force and length.
UNITS = {
    "": (1.0, 0, 0),
    "deg": (math.pi / 180.0, 0, 0),
    "kip-in": (1000.0 * POUND * INCH, 1, 1),
    "kip/in": (1000.0 * POUND / INCH, 1, -1),
    "kip": (1000.0 * POUND, 1, 0),
    "ksi": (1000.0 * POUND / INCH**2, 1, -2),
    "in^4": (INCH**4, 0, 4),
    "in^3": (INCH**3, 0, 3),
    "in^2": (INCH**2, 0, 2),
    "in": (INCH, 0, 1),
    "N mm": (1.0e-3, 1, 1),
    "N/mm": (1.0e3, 1, -1),
    "N": (1.0, 1, 0),
    "MPa": (1.0e6, 1, -2),
    "mm^4": (1.0e-12, 0, 4),
    "mm^3": (1.0e-9, 0, 3),
    "mm^2": (1.0e-6, 0, 2),
    "mm": (1.0e-3, 0, 1),
}
UNIT = re.compile(" (" + "|".join(re.escape(u) for u in sorted(UNITS, key=len, reverse=True) if u)
                  + r")(?![\w/-])")
NUMBER = re.compile(r"\d+(\.\d+)?(e[+-]\d+)?")


class NoArithmetic(Exception):
    """The text is no formula, or adds what cannot be added."""


class Amount:
    """A number in N and m with its powers of them, and how far rounding may have put it off."""

    def __init__(self, value, error=0.0, force=0.0, length=0.0):
        self.value, self.error, self.force, self.length = value, error, force, length

    def alike(self, other):
        return self.force == other.force and self.length == other.length

    def plus(self, other, sign):
        if not self.alike(other):
            raise NoArithmetic("a sum of different units")
        return Amount(self.value + sign * other.value, self.error + other.error, self.force,
                      self.length)

    def times(self, other, power):
        value = self.value * other.value**power
        error = (self.error * abs(other.value**power)
                 + abs(self.value * other.value ** (power - 1)) * other.error)
        return Amount(value, error, self.force + power * other.force,
                      self.length + power * other.length)

    def to(self, power):
        if power.force or power.length:
            raise NoArithmetic("a power with a unit")
        value = self.value**power.value
        error = abs(power.value) * abs(value / self.value if self.value else 0.0) * self.error
        if power.error:
            error += abs(value * math.log(self.value)) * power.error
        return Amount(value, error, self.force * power.value, self.length * power.value)

    def agrees_with(self, other):
        room = 1.01 * (self.error + other.error) + 1e-12 * abs(self.value)
        return self.alike(other) and abs(self.value - other.value) <= room


class Side:
    """One side of an equation, by recursive descent."""

    def __init__(self, text):
        self.text, self.at = text.strip(), 0

    def worked_out(self):
        out = self.sum()
        self.take(" ")
        if self.at != len(self.text):
            raise NoArithmetic(self.text[self.at:])
        return out

    def take(self, word):
        if not self.text.startswith(word, self.at):
            return False
        self.at += len(word)
        return True

    def sum(self):
        out = self.product()
        while True:
            if self.take(" + "):
                out = out.plus(self.product(), 1)
            elif self.take(" - "):
                out = out.plus(self.product(), -1)
            else:
                return out

    def product(self):
        out = self.power()
        while True:
            if self.take(" * "):
                out = out.times(self.power(), 1)
            elif self.take(" / ") or self.take("/"):
                out = out.times(self.power(), -1)
            else:
                return out

    def power(self):
        out = self.atom()
        return out.to(self.atom()) if self.take("^") else out

    def atom(self):
        if self.take("-"):
            inner = self.atom()
            return Amount(-inner.value, inner.error, inner.force, inner.length)
        if self.take("sqrt("):
            return self.bracket().to(Amount(0.5))
        if self.take("("):
            return self.bracket()
        if self.take("pi"):
            return Amount(math.pi)
        return self.number()

    def bracket(self):
        inside = self.sum()
        if not self.take(")"):
            raise NoArithmetic(self.text[self.at:])
        return inside

    def number(self):
        found = NUMBER.match(self.text, self.at)
        if not found:
            raise NoArithmetic(self.text[self.at:])
        self.at = found.end()
        digits = found.group(0)
        unit = UNIT.match(self.text, self.at)
        size, force, length = UNITS[unit.group(1) if unit else ""]
        if unit:
            self.at = unit.end()
        mantissa, _, exponent = digits.partition("e")
        decimals = len(mantissa.partition(".")[2])
        # A bare whole number is of the formula, not a rounded one.
        exact = not unit and not decimals
        error = 0.0 if exact else 0.5 * 10.0 ** (int(exponent or 0) - decimals)
        return Amount(float(digits) * size, error * size, force, length)


def sides(text):
    return [Side(side).worked_out() for side in text.split(" = ")]


def amounts(text):
    """Every number that stands in a line, with its unit."""
    out = []
    at = 0
    while found := NUMBER.search(text, at):
        reader = Side(text[found.start():])
        out.append(reader.number())
        at = found.start() + reader.at
    return out


class Arithmetic(unittest.TestCase):
    def test_units_are_carried_and_rounding_is_allowed_for(self):
        a, b = sides("40000 N / 120.9 mm^2 = 330.9 MPa")
        self.assertTrue(a.agrees_with(b))
        a, b = sides("sqrt((3.000 kip-in)^2 + (4.000 kip-in)^2) / 2.500 in^3 = 2.000 ksi")
        self.assertTrue(a.agrees_with(b))
        a, b = sides("0.658^(50.00 ksi / 40.00 ksi) * 50.00 ksi = 29.63 ksi")
        self.assertTrue(a.agrees_with(b))

    def test_a_wrong_digit_or_unit_is_found(self):
        for text in ("40000 N / 120.9 mm^2 = 331.9 MPa", "40000 N / 120.9 mm^2 = 330.9 N/mm"):
            a, b = sides(text)
            self.assertFalse(a.agrees_with(b), text)
        for text in ("1.000 in + 1.000 kip", "1.000 in of 2.000 in", "2 *"):
            with self.assertRaises(NoArithmetic):
                sides(text)


class Examples(unittest.TestCase):
    def findings(self):
        for path in sorted(ANSWERS.glob("*.json")):
            for finding in json.loads(path.read_text(encoding="utf-8"))["findings"]:
                yield f"{path.stem}, {finding['part']}: {finding['check']}", finding

    def test_each_line_gives_the_number_it_shows(self):
        checked = 0
        for name, finding in self.findings():
            shown = []
            for line in finding["worked"]:
                shown += amounts(line["text"])
                if " = " not in line["text"]:
                    continue
                with self.subTest(name, line=line["symbols"]):
                    worked = sides(line["text"])
                    for side in worked[1:]:
                        self.assertTrue(worked[0].agrees_with(side), line["text"])
                    checked += 1
            self.reported(name, finding, shown)
        self.assertGreater(checked, 300)

    def test_every_check_has_lines_that_are_read(self):
        seen = {f["check"] for _, f in self.findings() if f["state"] != "not decided"}
        self.assertEqual(seen, {" ".join(name.split()) for name in CHECKS.split(";")})

    def test_the_least_strength_is_the_one_used(self):
        """An equation may hold with a strength that another line does not give."""
        seen = 0
        for name, finding in self.findings():
            strengths = []
            for line in finding["worked"]:
                if line["symbols"].startswith(("weld metal:", "fusion face", "the part itself")):
                    strengths.append(amounts(line["text"])[-1])
                if line["symbols"].startswith("capacity, the least"):
                    least = min(strengths, key=lambda s: s.value)
                    with self.subTest(name):
                        self.assertTrue(least.agrees_with(amounts(line["text"])[0]), line["text"])
                    seen += 1
        self.assertGreater(seen, 5)

    def reported(self, name, finding, shown):
        """What is reported stands among the numbers of the lines; the 1 of a ratio goes without."""
        if finding["state"] == "not decided":
            return
        for key in ("demand", "capacity"):
            value = finding[key]
            if value == 1 and finding["unit"] == "1":
                continue
            with self.subTest(name, reported=key):
                # Four digits: a whole number over 1000 is a rounded one here.
                room = 0.5 if abs(value) >= 1000 else 1e-9 * abs(value)
                self.assertTrue(
                    any(abs(s.value - value) <= s.error + room for s in shown),
                    f"{key} {value} {finding['unit']}")


def answer_cases_beside(program):
    for case in sorted(pathlib.Path(__file__).resolve().parent.glob("*.yaml")):
        run = subprocess.run([program, "check", case, "--json", ANSWERS / f"{case.stem}.json"],
                             stdout=subprocess.DEVNULL, check=False)
        if run.returncode > 1:
            sys.exit(f"{case.name}: exit {run.returncode}; it must be answered (exit 0 or 1)")


if __name__ == "__main__":
    PROGRAM = sys.argv.pop(1)
    ANSWERS = pathlib.Path(sys.argv.pop(1)).resolve()
    answer_cases_beside(PROGRAM)
    unittest.main()
