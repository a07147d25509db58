#!/usr/bin/env python3
"""The sheet of `report` is written whole or not at all: sheet_file_test.py PROGRAM"""
import os
import stat
import unittest

import program_run
from program_run import OVER, WITHIN, case_file, run


class SheetFile(unittest.TestCase):
    def written(self, case, *more):
        path = case_file(self, case)
        out = os.path.join(os.path.dirname(path), "sheet.html")
        return run("report", path, "-o", out, "--date", "2001-02-03", *more), out

    def test_it_is_written_with_the_exit_status_of_check(self):
        for case, status in ((WITHIN, 0), (OVER, 1)):
            result, out = self.written(case)
            self.assertEqual((result.returncode, result.stderr), (status, ""))
            self.assertIn("sheet: ", result.stdout)
            with open(out, encoding="utf-8") as file:
                page = file.read()
            self.assertTrue(page.startswith("<!DOCTYPE html>"))
            self.assertTrue(page.endswith("</html>\n"))
            self.assertIn("kill when they fail", page)
            self.assertEqual(os.listdir(os.path.dirname(out)), ["case.yaml", "sheet.html"])

    def test_a_dash_gives_the_sheet_alone_and_the_same_each_time(self):
        path = case_file(self, WITHIN)
        one, two = (
            run("report", path, "-o", "-", "--date", "2001-02-03", "--jobs", n).stdout for n in "12"
        )
        self.assertTrue(one.startswith("<!DOCTYPE html>"))
        self.assertEqual(one, two)

    def test_a_sheet_says_nothing_of_folders(self):
        path = case_file(self, WITHIN)
        page = run("report", path, "-o", "-").stdout
        self.assertNotIn(os.path.dirname(path), page)

    def test_where_it_cannot_be_written_one_message_says_so(self):
        result = run("report", "-", "-o", "/no-such-folder/sheet.html", case=WITHIN)
        self.assertEqual(result.returncode, 2)
        self.assertEqual(len(result.stderr.splitlines()), 1, result.stderr)
        self.assertIn("/no-such-folder/sheet.html could not be written", result.stderr)
        self.assertNotIn("sheet:", result.stdout)

    def test_a_chart_of_sizes_is_drawn_where_it_is_asked_for(self):
        page = run("report", "-", "-o", "-", "--pick", "arm", case=WITHIN).stdout
        self.assertIn("Stock sizes of the arm: mass against utilization", page)
        wrong = run("report", "-", "-o", "-", "--pick", "leg", case=WITHIN)
        self.assertEqual((wrong.returncode, wrong.stdout), (2, ""))
        self.assertIn("there is arm", wrong.stderr)

    def test_what_was_there_stays_when_the_new_one_cannot_be_written(self):
        path = case_file(self, WITHIN)
        folder = os.path.join(os.path.dirname(path), "kept")
        os.mkdir(folder)
        out = os.path.join(folder, "sheet.html")
        with open(out, "w", encoding="utf-8") as file:
            file.write("old")
        os.chmod(out, 0o640)
        result = run("report", path, "-o", out)
        self.assertEqual(result.returncode, 0)
        self.assertEqual(stat.S_IMODE(os.stat(out).st_mode), 0o640)
        # A full disk.
        result = run("report", path, "-o", "/dev/full")
        self.assertEqual(result.returncode, 2)
        self.assertTrue(os.path.exists("/dev/full"))

    def test_a_wrong_case_leaves_no_file(self):
        result, out = self.written(WITHIN.replace("-500 N", "-500"))
        self.assertEqual(result.returncode, 2)
        self.assertFalse(os.path.exists(out))


if __name__ == "__main__":
    program_run.main()
