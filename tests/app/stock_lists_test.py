#!/usr/bin/env python3
"""Sizes in stock and steels are listed, own sizes are used: stock_lists_test.py PROGRAM"""
import json
import unittest

import program_run
from program_run import WITHIN, case_file, run

OWN = "shape,unit,depth,width,wall\nround_tube,mm,41,,4.4\n"


class Lists(unittest.TestCase):
    def test_lists_carry_sources_and_cautions_within_80_columns(self):
        for command in (["sections"], ["sections", "--all"], ["materials"], ["materials", "--all"],
                        ["materials", "--metric"], ["sections", "flat bar"]):
            result = run(*command)
            self.assertEqual((result.returncode, result.stderr), (0, ""))
            self.assertIn("CAUTION", result.stdout)
            self.assertLessEqual(max(map(len, result.stdout.splitlines())), 80)

    def test_json_stands_alone(self):
        for command, key in (("sections", "lists"), ("materials", "materials")):
            out = json.loads(run(command, "--json", "-").stdout)
            self.assertGreater(len(out[key]), 5)
            self.assertIn("kill", " ".join(out["cautions"]))

    def test_one_list_by_name(self):
        text = run("sections", "plate").stdout
        self.assertIn("plate", text)
        self.assertNotIn("DOM", text)
        wrong = run("sections", "plywood")
        self.assertEqual(wrong.returncode, 2)
        self.assertIn("no list is named `plywood`; there is: round tube, inch", wrong.stderr)

    def test_own_sizes_are_listed_and_picked_from(self):
        own = case_file(self, OWN, "own.csv")
        self.assertIn("41 x 4.4 mm round tube", run("sections", "--stock", own).stdout)
        result = run("pick", "-", "--part", "arm", "--stock", own, "--all", case=WITHIN)
        self.assertIn("41 x 4.4 mm round tube", result.stdout)

    def test_own_sizes_alone_are_picked_from(self):
        own = case_file(self, OWN, "own.csv")
        result = run("pick", "-", "--part", "arm", "--stock", own, "--only-stock", "--all",
                     case=WITHIN)
        self.assertIn("41 x 4.4 mm round tube", result.stdout)
        self.assertNotIn("40 x 5 mm round tube, EN 10305-1  ", result.stdout)
        self.assertNotIn("heavier", result.stdout)
        self.assertEqual(run("pick", "-", "--part", "arm", "--only-stock", case=WITHIN).returncode, 2)

    def test_a_wrong_list_is_refused_with_its_line(self):
        own = case_file(self, OWN.replace("4.4", "44"), "own.csv")
        for command in (["sections", "--stock", own],
                        ["pick", "-", "--part", "arm", "--stock", own]):
            result = run(*command, case=WITHIN)
            self.assertEqual(result.returncode, 2)
            self.assertIn("own.csv:2:1: wall: 44 mm", result.stderr)
        self.assertEqual(run("sections", "--stock", "missing.csv").returncode, 2)


if __name__ == "__main__":
    program_run.main()
