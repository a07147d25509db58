#!/usr/bin/env python3
"""The exit status says what became of a run: exit_status_test.py PROGRAM"""
import os
import signal
import subprocess
import time
import unittest

import program_run
from program_run import OVER, WITHIN, case_file, run


class ExitStatus(unittest.TestCase):
    def test_0_when_everything_checked_is_within(self):
        result = run("check", "-", case=WITHIN)
        self.assertEqual(result.returncode, 0, result.stderr)
        self.assertTrue(result.stdout.startswith("WITHIN THE LIMITS CHECKED"))

    def test_1_when_something_is_over(self):
        result = run("check", "-", case=OVER)
        self.assertEqual(result.returncode, 1, result.stderr)
        self.assertTrue(result.stdout.startswith("OVER"))

    def test_explain_tells_by_what_it_shows(self):
        self.assertEqual(run("explain", "-", "arm", "yield", case=WITHIN).returncode, 0)
        self.assertEqual(run("explain", "-", "arm", "yield", case=OVER).returncode, 1)

    def test_1_when_something_is_not_decided(self):
        # At 500 kN the frame cannot stand: no check of it can be decided.
        case = program_run.CANTILEVER.format(force="-500 N\n    force_x: -5000 kN")
        result = run("check", "-", case=case)
        self.assertEqual(result.returncode, 1, result.stderr)
        self.assertTrue(result.stdout.startswith(("NOT DECIDED", "OVER")), result.stdout)

    def test_2_when_the_case_is_wrong(self):
        result = run("check", "-", case=WITHIN.replace("-500 N", "-500"))
        self.assertEqual((result.returncode, result.stdout), (2, ""))

    def test_2_when_the_case_cannot_be_opened(self):
        for path in ("no-such-file.yaml", os.path.dirname(__file__)):
            result = run("check", path)
            self.assertEqual((result.returncode, result.stdout), (2, ""))
            self.assertEqual(len(result.stderr.splitlines()), 1, result.stderr)
            self.assertIn(path, result.stderr)

    def test_2_when_the_command_is_wrong(self):
        path = case_file(self, WITHIN)
        twice = [f"--for=members.arm.section = {size} mm E355" for size in ("50 x 6", "60 x 6")]
        for arguments in (
            [],
            ["chek", path],
            ["check"],
            ["check", path, "--every"],
            ["check", path, path],
            ["pick", path],
            ["check", path, "--color", "purple"],
            ["check", path, "--json"],
            ["compare", path],
            ["cases", path, path],
            ["cases", "no-such-file.yaml"],
            ["compare", path, "--set", "members.arm.color=red"],
            ["pick", path, "--part", "wing"],
            ["rate", path],
            ["rate", path, "--over", "members.arm.section"],
            ["rate", path, "--over", "forces.load.force_z", "--from", "2 in"],
            ["rate", path, "--over", "forces.load.force_z", "--for", "no wing"],
            ["rate", path, "--over", "forces.load.force_z", *twice],
            ["explain", path],
            ["explain", path, "wing"],
            ["explain", path, "arm", "wield"],
        ):
            result = run(*arguments)
            self.assertEqual((result.returncode, result.stdout), (2, ""), arguments)
            self.assertNotEqual(result.stderr, "", arguments)

    def test_explain_of_no_part_says_which_there_are(self):
        result = run("explain", "-", case=WITHIN)
        self.assertEqual((result.returncode, result.stdout), (2, ""))
        self.assertIn("say which part; there is: arm", result.stderr)

    def test_compare_follows_the_base_case(self):
        change = ("--set", "members.arm.section=50 x 6 mm E355")
        self.assertEqual(run("compare", "-", *change, case=WITHIN).returncode, 0)
        self.assertEqual(run("compare", "-", *change, case=OVER).returncode, 1)

    def test_pick_is_0_when_a_size_passes_and_1_when_none_does(self):
        self.assertEqual(run("pick", "-", "--part", "arm", case=WITHIN).returncode, 0)
        none = run("pick", "-", "--part", "arm", case=WITHIN.replace("500 N", "5000 kN"))
        self.assertEqual(none.returncode, 1, none.stderr)
        self.assertTrue(none.stdout.startswith("NONE PASSES"))

    def test_new_gives_a_case_that_check_can_read(self):
        new = run("new")
        self.assertEqual(new.returncode, 0)
        answer = run("check", "-", case=new.stdout)
        self.assertIn(answer.returncode, (0, 1), answer.stderr)
        self.assertLessEqual(len(answer.stdout.splitlines()), 25)
        self.assertLessEqual(max(len(line) for line in answer.stdout.splitlines()), 80)

    def test_every_layout_gives_a_case_that_check_answers(self):
        for layout in ("radius-arms", "parallel-arms", "steering"):
            answer = run("check", "-", case=run("new", "--layout", layout).stdout)
            self.assertIn(answer.returncode, (0, 1), (layout, answer.stderr))
            self.assertLessEqual(max(len(line) for line in answer.stdout.splitlines()), 80)

    def test_help_and_version_are_0(self):
        for arguments in (["--help"], ["check", "--help"], ["--version"], ["cases"]):
            self.assertEqual(run(*arguments).returncode, 0, arguments)

    def test_2_with_a_message_when_the_disk_is_full(self):
        with open("/dev/full", "w", encoding="utf-8") as full:
            result = run("check", "-", case=WITHIN, stdout=full)
        self.assertEqual(result.returncode, 2)
        self.assertIn("standard output could not be written", result.stderr)
        result = run("check", "-", "--json", "/dev/full", case=WITHIN)
        self.assertEqual(result.returncode, 2)
        self.assertIn("/dev/full could not be written", result.stderr)

    def test_2_with_a_message_when_the_pipe_is_closed(self):
        reading, writing = os.pipe()
        os.close(reading)
        with os.fdopen(writing, "w") as pipe:
            result = run("check", "-", "--all", case=WITHIN, stdout=pipe)
        self.assertEqual(result.returncode, 2)
        self.assertIn("standard output could not be written", result.stderr)

    def test_2_when_there_is_no_standard_output_at_all(self):
        path = case_file(self, WITHIN)
        result = subprocess.run(
            ["sh", "-c", '"$1" check "$2" >&-', "sh", program_run.PROGRAM, path],
            stderr=subprocess.PIPE,
            check=False,
        )
        self.assertEqual(result.returncode, 2)

    def test_3_when_the_program_itself_is_broken(self):
        # A broken invariant ends in abort(): here the signal of it comes while the case is awaited.
        process = subprocess.Popen(
            [program_run.PROGRAM, "check", "-"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            encoding="utf-8",
        )
        while not self.handles(process.pid, signal.SIGABRT):
            time.sleep(0.01)
        process.send_signal(signal.SIGABRT)
        out, messages = process.communicate()
        self.assertEqual((process.returncode, out), (3, ""))
        self.assertIn("fault of the program", messages)

    @staticmethod
    def handles(pid, number):
        """Whether the process has set up a handler for this signal."""
        with open(f"/proc/{pid}/status", encoding="utf-8") as status:
            for line in status:
                if line.startswith("SigCgt:"):
                    return bool(int(line.split()[1], 16) >> (number - 1) & 1)
        return False


if __name__ == "__main__":
    program_run.main()
