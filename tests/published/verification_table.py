#!/usr/bin/env python3
"""The verification table: runs the tests, and lays out what they compare.

verification_table.py PROGRAM          prints the table and writes it into README.md beside this file
verification_table.py --check PROGRAM  says what in README.md is out of date, exit status 1 if so

PROGRAM is the executable of these tests. What stands above the mark in README.md is left alone.
"""
import math
import os
import pathlib
import re
import subprocess
import sys
import tempfile

README = pathlib.Path(__file__).with_name("README.md")
MARK = "<!-- scripts/verify writes what follows -->\n"
# Left as it is where the library that its tests need is not installed.
OPTIONAL = "solid_elements_test.cpp"
HEAD = "| source | quantity | published | computed | difference | allowed | basis |"
RULE = "| --- | --- | --- | --- | --- | --- | --- |"


def collected(program):
    """The rows of all tests, as lists of cells."""
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder, "rows")
        run = subprocess.run(
            [program],
            env={**os.environ, "LINKMARGIN_VERIFICATION_ROWS": str(file)},
            stdout=subprocess.PIPE,
            check=False,
        )
        if run.returncode != 0 or not file.exists():
            sys.exit(run.stdout.decode() + "a published value is not met: no table")
        return [line.split("\t") for line in file.read_text(encoding="utf-8").splitlines()]


def like(printed, value):
    """A value with one digit more than the printed number has, at least 4 and at most 6."""
    mantissa, e, _ = printed.partition("e")
    digits = re.sub(r"\D", "", mantissa).lstrip("0")
    if not digits:
        decimals = len(mantissa.partition(".")[2])
        text = f"{value:.{decimals}f}"
        return text.lstrip("-") if float(text) == 0.0 else text
    significant = min(6, max(4, len(digits) + 1))
    if e:
        mantissa, _, power = f"{value:.{significant - 1}e}".partition("e")
        return f"{mantissa}e{int(power)}"
    decimals = significant - 1 - math.floor(math.log10(abs(value))) if value else significant
    return f"{value:.{max(0, decimals)}f}"


def difference(printed, value):
    """Computed over published, in percent; of a zero, the distance itself."""
    if float(printed) == 0.0:
        return "0"
    text = f"{100.0 * (value / float(printed) - 1.0):+.2f}"
    return ("0.00" if float(text) == 0.0 else text) + " %"


def sections_of(rows):
    """Test file -> its table, in alphabetical order."""
    tables = {}
    for test_file, source, quantity, published, computed, allowed, basis in rows:
        number, _, unit = published.partition(" ")
        value = float(computed)
        cells = [source, quantity, published, f"{like(number, value)} {unit}".strip(),
                 difference(number, value), allowed, basis]
        tables.setdefault(test_file, [HEAD, RULE]).append("| " + " | ".join(cells) + " |")
    return {name: "\n".join(tables[name]) + "\n" for name in sorted(tables)}


def written(text):
    """Test file -> its table, as they stand in the README."""
    parts = re.split(r"^## \[(\S+)\]\(\S+\)\n\n", text, flags=re.MULTILINE)
    return {name: body.rstrip("\n") + "\n" for name, body in zip(parts[1::2], parts[2::2])}


def laid_out(tables):
    rows = sum(table.count("\n") - 2 for table in tables.values())
    return f"\n{rows} values.\n" + "".join(
        f"\n## [{name}]({name})\n\n{table}" for name, table in tables.items()
    )


def same_line(old, new):
    """Whether two rows have the same words, and numbers within a unit of the last digit: the last
    digit may turn with the compiler."""
    number = re.compile(r"(?<![\w.])[-+]?\d+(?:\.\d+)?(?:e-?\d+)?(?![\w.])")
    if number.sub("#", old) != number.sub("#", new):
        return False
    for a, b in zip(number.findall(old), number.findall(new)):
        if a == b:
            continue
        mantissa, _, power = a.partition("e")
        unit = 10.0 ** (int(power or 0) - len(mantissa.partition(".")[2]))
        if "." not in mantissa or abs(float(a) - float(b)) > 1.01 * unit:
            return False
    return True


def stale(old, new):
    """What of the README differs, line by line."""
    found = []
    for name in sorted(old.keys() | new.keys()):
        if name == OPTIONAL and name not in new:
            continue
        before = old.get(name, "").splitlines()
        after = new.get(name, "").splitlines()
        if len(before) != len(after):
            found.append(f"{name}: {len(before)} lines, now {len(after)}")
        found += [
            f"{name}\n  written:  {b}\n  computed: {a}"
            for b, a in zip(before, after)
            if not same_line(b, a)
        ]
    return found


def main(arguments):
    check = arguments[:1] == ["--check"]
    if len(arguments) != 1 + check:
        sys.exit(__doc__)
    head, mark, tail = README.read_text(encoding="utf-8").partition(MARK)
    if not mark:
        sys.exit(f"{README}: the line {MARK.strip()!r} is missing")
    old = written(tail)
    new = sections_of(collected(pathlib.Path(arguments[-1]).resolve()))
    if check:
        found = stale(old, new)
        if found:
            print("tests/published/README.md is out of date; scripts/verify writes it anew:")
            print(*found, sep="\n")
        return 1 if found else 0
    if OPTIONAL in old and OPTIONAL not in new:
        print(f"{OPTIONAL} was not run: its rows are left as they were", file=sys.stderr)
        new = dict(sorted({**new, OPTIONAL: old[OPTIONAL]}.items()))
    README.write_text(head + mark + laid_out(new), encoding="utf-8")
    print(laid_out(new).lstrip("\n"), end="")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
