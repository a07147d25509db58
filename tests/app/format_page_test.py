#!/usr/bin/env python3
"""The format of the case file is printed, and its cases run: format_page_test.py PROGRAM"""
import pathlib
import unittest

import program_run
from program_run import run

CASES = pathlib.Path(__file__).parents[2] / "cases"


class FormatPage(unittest.TestCase):
    def test_the_page_in_the_repository_is_what_is_printed(self):
        result = run("format")
        self.assertEqual((result.returncode, result.stderr), (0, ""))
        self.assertEqual(result.stdout, (CASES / "FORMAT.md").read_text(encoding="utf-8"),
                         "to write it anew: scripts/run format > cases/FORMAT.md")

    def test_the_page_ends_with_the_cautions(self):
        last = run("format").stdout.rsplit("\n\n", 1)[-1]
        self.assertTrue(last.startswith("CAUTION: "), last)
        self.assertIn("licensed engineer", last)

    def test_its_case_files_are_within_the_limits_checked(self):
        for name in ("braced-link", "whole-axle", "any-frame"):
            result = run("check", str(CASES / "format" / f"{name}.yaml"))
            self.assertEqual(result.returncode, 0, result.stdout + result.stderr)


if __name__ == "__main__":
    program_run.main()
