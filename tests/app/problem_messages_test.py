#!/usr/bin/env python3
"""A case that cannot be used is answered in the form of a compiler's messages:
problem_messages_test.py PROGRAM"""
import json
import unittest

import program_run
from program_run import WITHIN, case_file, run


class Problems(unittest.TestCase):
    def refused(self, text):
        """The messages about a case, without the folder of its file."""
        path = case_file(self, text)
        result = run("check", path)
        self.assertEqual((result.returncode, result.stdout), (2, ""))
        return result.stderr.replace(path, "case.yaml")

    def test_each_has_file_line_column_and_key(self):
        messages = self.refused(WITHIN.replace("-500 N", "-500"))
        self.assertRegex(messages, r"^case\.yaml:16:\d+: forces\.load\.force_z: .*unit")

    def test_all_are_told_at_once_one_a_line(self):
        bad = WITHIN.replace("-500 N", "-500").replace("40 x 5 mm E355", "40 x 50 mm E355")
        lines = self.refused(bad).splitlines()
        self.assertEqual(len(lines), 2, lines)
        for line in lines:
            self.assertRegex(line, r"^case\.yaml:\d+:\d+: [\w.]+: ")

    def test_what_the_solver_finds_is_placed_in_the_file_too(self):
        loose = WITHIN.replace("supports:\n  wall:\n    at: root\n", "")
        self.assertRegex(self.refused(loose), r"^case\.yaml:\d+:\d+: points\.\w+: .*can move")

    def test_standard_input_is_named(self):
        result = run("check", "-", case=WITHIN.replace("-500 N", "-500"))
        self.assertRegex(result.stderr, r"^standard input:16:\d+: forces\.load")

    def test_an_empty_case_is_a_message(self):
        self.assertNotEqual(self.refused(""), "")

    def test_an_unknown_command_names_those_there_are(self):
        known = "check, report, explain, compare, pick, rate, scatter, gather, cases, new, format, schema, completion, man, sections and materials"
        self.assertIn(known, run("chek").stderr)

    def test_a_wrong_change_is_named_as_it_was_typed(self):
        path = case_file(self, WITHIN)
        result = run("compare", path, "--set", "members.arm.section=40 mm wide")
        self.assertIn('--set "members.arm.section=40 mm wide"', result.stderr)

    def test_an_unknown_part_names_those_there_are(self):
        path = case_file(self, WITHIN)
        self.assertRegex(run("pick", path, "--part", "wing").stderr, r"wing: .*\barm\b")

    def test_an_unknown_part_or_check_to_explain_names_the_nearest(self):
        path = case_file(self, WITHIN)
        result = run("explain", path, "amr")
        self.assertEqual((result.returncode, result.stdout), (2, ""))
        self.assertRegex(result.stderr, r"amr: .*the nearest is `arm`")
        self.assertRegex(run("explain", path, "arm", "yeild").stderr,
                         r"yeild: .*the nearest is `yield`")

    def test_a_misspelled_field_is_met_with_the_one_that_was_meant(self):
        small = run("new").stdout
        for typed, meant in (("drp=7 in", "bracket.drop"), ("weld_leg=3/8 in", "bracket.weld")):
            result = run("compare", "-", "--set", typed, case=small)
            self.assertEqual(result.returncode, 2)
            self.assertIn(f"did you mean `{meant}`?", result.stderr)
        messages = self.refused(small.replace("  weld: ", "  weld_leg: "))
        self.assertIn("did you mean `weld`?", messages)

    def test_a_word_of_a_part_finds_it(self):
        result = run("explain", "-", "link", case=run("new").stdout)
        self.assertEqual(result.returncode, 2)
        self.assertIn("the nearest is `lateral_link`", result.stderr)

    def test_the_usual_comparisons_repeat_none_of_the_case(self):
        case = run("new").stdout
        names = json.loads(run("compare", "-", "--usual", "--json", "-", case=case).stdout)
        variants = [v["name"] for v in names["variants"]]
        self.assertEqual(len(variants), len(set(variants)))
        self.assertEqual(sum("bar" in name for name in variants), 2, variants)

    def test_a_stream_without_end_is_refused(self):
        result = run("check", "/dev/zero")
        self.assertEqual(result.returncode, 2)
        self.assertIn("is over 16 MB", result.stderr)


if __name__ == "__main__":
    program_run.main()
