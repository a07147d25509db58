#!/usr/bin/env python3
"""Text, JSON and colors go where they were asked for: output_forms_test.py PROGRAM"""
import json
import os
import pty
import re
import unittest

import program_run
from program_run import OVER, WITHIN, case_file, run

ESCAPE = "\x1b["


def on_terminal(*arguments, case, environment=None):
    """What the program writes when its standard output is a terminal."""
    leader, follower = pty.openpty()
    with os.fdopen(follower, "w") as terminal:
        result = run(*arguments, case=case, environment=environment, stdout=terminal)
    text = b""
    while True:
        try:
            block = os.read(leader, 65536)
        except OSError:  # the other end is closed and everything is read
            break
        if not block:
            break
        text += block
    os.close(leader)
    return result.returncode, text.decode("utf-8")


class Json(unittest.TestCase):
    def test_a_dash_gives_json_alone(self):
        for command in (
            ["check", "-"],
            ["compare", "-", "--set", "members.arm.section=50 x 6 mm E355"],
            ["pick", "-", "--part", "arm"],
            ["rate", "-", "--over", "forces.load.force_z"],
            ["explain", "-", "arm"],
        ):
            result = run(*command, "--json", "-", case=WITHIN)
            out = json.loads(result.stdout)
            self.assertEqual(result.stderr, "")
            self.assertIn("kill", " ".join(out["cautions"]))
            self.assertRegex(out["about"]["version"], r"^\d+\.\d+\.\d+$")
            self.assertNotIn("null", result.stdout)

    def test_the_answer_is_the_same_for_any_number_of_jobs(self):
        wall = "members.arm.section=50 x 4 or 5 or 6 mm E355"
        for command in (
            ["compare", "-", "--set", wall],
            ["pick", "-", "--part", "arm"],
            ["rate", "-", "--over", "forces.load.force_z", "--for", wall],
        ):
            one, three = (
                run(*command, "--jobs", jobs, "--json", "-", case=WITHIN).stdout for jobs in "13"
            )
            self.assertTrue(one)
            self.assertEqual(one, three, command)

    def test_what_rate_finds_is_what_check_says_on_both_sides(self):
        span = ["--over", "forces.load.force_z", "--from", "-50 kN"]
        found = run("rate", "-", *span, "--json", "-", case=WITHIN)
        drawn = json.loads(found.stdout)["designs"][0]
        for key, status in (("holds_from", 0), ("fails_below", 1)):
            force = "{!r} N".format(drawn[key]["value_SI"])
            case = "sizes: minimum\n" + program_run.CANTILEVER.format(force=force)
            result = run("check", "-", case=case)
            self.assertEqual(result.returncode, status, (key, force, result.stdout))

    def test_a_file_is_written_beside_the_text(self):
        path = case_file(self, OVER)
        target = os.path.join(os.path.dirname(path), "out.json")
        result = run("check", path, "--json", target)
        self.assertEqual(result.returncode, 1)
        self.assertTrue(result.stdout.startswith("OVER"))
        with open(target, encoding="utf-8") as file:
            out = json.load(file)
        self.assertEqual(out["verdict"], "over the limit")
        self.assertGreater(out["findings"][0]["utilization"], 1)

    def test_json_balances(self):
        # 500 N down at the tip, 500 mm out: the wall pushes up with 500 N and holds 250 N m.
        out = json.loads(run("check", "-", "--json", "-", case=WITHIN).stdout)
        held = out["solved"][0]["reactions"][0]
        self.assertAlmostEqual(held["force_N"][2], 500, places=6)
        self.assertAlmostEqual(abs(held["moment_Nm"][1]), 250, delta=0.5)


    def test_cases_lists_the_library_without_a_case_file(self):
        out = json.loads(run("cases", "--json", "-").stdout)
        self.assertEqual(len(out["load_cases"]), 16)
        self.assertEqual(len(out["duty"]), 3)
        self.assertNotIn("null", json.dumps(out))

    def test_cases_of_a_case_file_hold_its_numbers(self):
        out = json.loads(run("cases", "-", "--json", "-", case=WITHIN).stdout)
        names = [kind["name"] for kind in out["load_cases"]]
        self.assertEqual(names, ["forces given"])
        self.assertEqual(out["load_cases"][0]["cases"][0]["pushes"][0]["force_N"], [0, 0, -500])


class Color(unittest.TestCase):
    def test_a_terminal_gets_color_and_a_pipe_none(self):
        status, text = on_terminal("check", "-", case=WITHIN)
        self.assertEqual(status, 0)
        self.assertIn(ESCAPE, text)
        self.assertNotIn(ESCAPE, run("check", "-", case=WITHIN).stdout)

    def test_no_color_and_a_dumb_terminal_turn_it_off(self):
        for environment in ({"NO_COLOR": "1"}, {"TERM": "dumb"}):
            _, text = on_terminal("check", "-", case=WITHIN, environment=environment)
            self.assertNotIn(ESCAPE, text, environment)
        _, text = on_terminal("check", "-", case=WITHIN, environment={"NO_COLOR": ""})
        self.assertIn(ESCAPE, text)

    def test_the_option_overrides_both(self):
        _, text = on_terminal("check", "-", "--color", "never", case=WITHIN)
        self.assertNotIn(ESCAPE, text)
        result = run("--color", "always", "check", "-", case=WITHIN, environment={"NO_COLOR": "1"})
        self.assertIn(ESCAPE, result.stdout)

    def test_json_is_never_colored(self):
        out = run("check", "-", "--json", "-", "--color", "always", case=WITHIN).stdout
        self.assertNotIn(ESCAPE, out)


class Text(unittest.TestCase):
    def test_every_output_carries_the_caution_and_none_promises(self):
        outputs = [
            run("check", "-", case=WITHIN).stdout,
            run("check", "-", "--all", case=WITHIN).stdout,
            run("compare", "-", "--set", "members.arm.section=50 x 6 mm E355", case=WITHIN).stdout,
            run("pick", "-", "--part", "arm", case=WITHIN).stdout,
            run("check", "-", "--json", "-", case=WITHIN).stdout,
            run("explain", "-", "arm", case=WITHIN).stdout,
            run("cases").stdout,
            run("cases", "-", case=WITHIN).stdout,
            run("cases", "--json", "-").stdout,
            run("--help").stdout,
        ]
        for text in outputs:
            self.assertIn("kill when they fail", " ".join(text.split()))
            self.assertIsNone(re.search(r"\b(safe|nan|inf)\b", text, re.IGNORECASE), text)

    def test_no_line_of_text_passes_80_columns(self):
        for arguments in (
            ["check", "-"],
            ["check", "-", "--all"],
            ["explain", "-", "arm"],
            ["pick", "-", "--part", "arm"],
        ):
            for line in run(*arguments, case=WITHIN).stdout.splitlines():
                self.assertLessEqual(len(line), 80, line)
        for arguments in (
            ["--help"],
            ["check", "--help"],
            ["explain", "--help"],
            ["report", "--help"],
            ["compare", "--help"],
            ["pick", "--help"],
            ["rate", "--help"],
            ["scatter", "--help"],
            ["gather", "--help"],
            ["cases", "--help"],
            ["cases"],
            ["new", "--help"],
            ["format", "--help"],
            ["schema", "--help"],
            ["completion", "--help"],
            ["man", "--help"],
            ["sections", "--help"],
            ["materials", "--help"],
        ):
            for line in run(*arguments).stdout.splitlines():
                self.assertLessEqual(len(line), 80, line)

    def test_an_answer_is_shown_in_the_units_asked_for(self):
        case = WITHIN.replace("-500 N", "-600 N")
        plain = run("check", "-", "--all", case=case).stdout
        metric = run("check", "-", "--all", "--units", "mm", case=case).stdout
        inches = run("check", "-", "--all", "--units", "in", case=case).stdout
        self.assertEqual(plain, metric)
        self.assertIn(" MPa", metric)
        self.assertNotIn(" ksi", metric)
        self.assertIn(" ksi", inches)
        self.assertNotIn(" MPa", inches)
        # The same answer: a ratio has no units.
        share = re.compile(r"utilization [\d.]+ %")
        self.assertEqual(share.findall(metric), share.findall(inches))
        for command in (["explain", "-", "arm"], ["pick", "-", "--part", "arm"]):
            self.assertNotIn(" kg/m", run(*command, "--units", "in", case=case).stdout)
            self.assertNotIn(" lb/ft", run(*command, "--units", "mm", case=case).stdout)
        wrong = run("check", "-", "--units", "cubits", case=case)
        self.assertEqual(wrong.returncode, 2)
        self.assertIn("in, mm", wrong.stderr)

    def test_what_is_over_names_what_would_mend_it(self):
        text = run("check", "-", case=program_run.CANTILEVER.format(force="-3 kN")).stdout
        self.assertRegex(" ".join(text.split()), r"tried, mends it: arm: \S.* mm tube \(then \d+ %\)")
        self.assertNotIn("tried, mends", run("check", "-", case=WITHIN).stdout)

    def test_help_has_a_line_for_each_command(self):
        text = run("--help").stdout
        for command in ("check", "report", "explain", "compare", "pick", "rate", "scatter", "gather", "cases", "new", "sections", "materials"):
            self.assertRegex(text, rf"(?m)^  {command} +\w")

    def test_the_version_names_a_commit_or_says_that_it_is_unknown(self):
        self.assertRegex(
            run("--version").stdout, r"^linkmargin \d+\.\d+\.\d+, (commit [0-9a-f]+|unknown commit)"
        )

    def test_the_command_for_more_can_be_pasted(self):
        path = case_file(self, WITHIN, name="it's a case.yaml")
        out = run("check", path).stdout
        self.assertIn("'\\''s a case.yaml' --all", " ".join(out.split()))


if __name__ == "__main__":
    program_run.main()
