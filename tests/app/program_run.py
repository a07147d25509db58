"""Runs the program under test, for the scripts beside this file."""
import os
import subprocess
import sys
import tempfile
import unittest

PROGRAM = None

CANTILEVER = """\
title: cantilever
points:
  root: [0, 0, 0 mm]
  tip: [500, 0, 0 mm]
members:
  arm:
    from: root
    to: tip
    section: 40 x 5 mm E355
supports:
  wall:
    at: root
forces:
  load:
    at: tip
    force_z: {force}
"""
WITHIN = CANTILEVER.format(force="-500 N")
OVER = CANTILEVER.format(force="-50 kN")


def run(*arguments, case=None, environment=None, **how):
    """The finished run; `case` goes to standard input. Output is captured unless `how` says."""
    variables = {k: v for k, v in os.environ.items() if k not in ("NO_COLOR", "TERM")}
    variables["TERM"] = "xterm"
    variables.update(environment or {})
    how = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE, **how}
    return subprocess.run(
        [PROGRAM, *arguments],
        input=case,
        env=variables,
        encoding="utf-8",
        check=False,
        timeout=300,
        **how,
    )


def case_file(test, text, name="case.yaml"):
    """Path of a file with this text, in a folder that goes when the test is over."""
    folder = tempfile.TemporaryDirectory()
    test.addCleanup(folder.cleanup)
    path = os.path.join(folder.name, name)
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)
    return path


def main():
    """Runs the tests of the calling script on the program that is its first argument."""
    global PROGRAM
    PROGRAM = os.path.abspath(sys.argv.pop(1))
    unittest.main(verbosity=2)
