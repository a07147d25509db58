#!/usr/bin/env python3
"""What scripts/compare-expected lets pass and what it finds: compare_expected_test.py SCRIPT"""
import contextlib
import importlib.machinery
import importlib.util
import io
import pathlib
import sys
import tempfile
import unittest

sys.dont_write_bytecode = True
loader = importlib.machinery.SourceFileLoader("compare_expected", sys.argv.pop(1))
compare = importlib.util.module_from_spec(importlib.util.spec_from_loader(loader.name, loader))
loader.exec_module(compare)


class Lines(unittest.TestCase):
    def test_a_number_within_half_a_percent_passes(self):
        self.assertTrue(compare.same_line("force 1000 N", "force 1004 N"))
        self.assertTrue(compare.same_line("x = -0.2500 in", "x = -0.2501 in"))

    def test_a_number_off_by_more_is_found(self):
        self.assertFalse(compare.same_line("force 1000 N", "force 1006 N"))
        self.assertFalse(compare.same_line("force 1000 N", "force -1000 N"))
        self.assertFalse(compare.same_line("mu = 1.00e-03", "mu = 1.00e-04"))

    def test_a_count_must_agree(self):
        self.assertFalse(compare.same_line("of 12 cases", "of 13 cases"))

    def test_a_changed_word_is_found(self):
        self.assertFalse(compare.same_line("93 %  within", "93 %  over"))
        self.assertFalse(compare.same_line("tube A513", "tube A514"))
        self.assertFalse(compare.same_line("1-1/2 x 0.250 in", "1-3/4 x 0.250 in"))

    def test_the_width_of_a_gap_is_free(self):
        self.assertTrue(compare.same_line("axle    99.9 %", "axle   100.1 %"))

    def test_a_missing_line_is_found(self):
        self.assertEqual(len(compare.differences("exit 0\na\nb\n", "exit 0\na\n")), 1)

    def test_the_exit_status_counts(self):
        self.assertEqual(len(compare.differences("exit 0\na\n", "exit 1\na\n")), 1)


class Example(unittest.TestCase):
    def compared(self, expected):
        """The exit status for a program that prints its arguments: "check one.yaml"."""
        with tempfile.TemporaryDirectory() as folder:
            case = pathlib.Path(folder) / "one.yaml"
            if expected is not None:
                case.with_suffix(".expected.txt").write_text(expected)
            with contextlib.redirect_stdout(io.StringIO()):
                return compare.main("echo", case)

    def test_what_was_expected_passes(self):
        self.assertEqual(self.compared("exit 0\ncheck one.yaml\n"), 0)

    def test_another_line_is_found(self):
        self.assertEqual(self.compared("exit 0\ncheck two.yaml\n"), 1)

    def test_another_exit_status_is_found(self):
        self.assertEqual(self.compared("exit 1\ncheck one.yaml\n"), 1)

    def test_a_missing_expected_file_is_found(self):
        self.assertEqual(self.compared(None), 1)


if __name__ == "__main__":
    unittest.main()
