#!/usr/bin/env python3
"""What helps while a case is written: editor_help_test.py PROGRAM"""
import json
import os
import re
import shutil
import subprocess
import tempfile
import unittest

import program_run
from program_run import run


# A case with all that the examples of the help name, solved in an instant: one load case, no
# brace mount or rail that is not known.
SHORT = """\
title: short
vehicle: {axle_weight: 3000 lb, tire: 33 in, track: 64 in}
lateral_link:
  bolt_to_bolt: 34 in
  rise: 2 in
  tube: 1-1/2 x 0.250 in DOM
  ends: weld-on bushing
bracket:
  drop: 7 in
  plates: 2 of 3/8 in mild steel
  depth_at_rail: 6 in
  weld: 5/16 in fillet, both sides of each plate
  rail: boxed, 3 x 6 x 1/4 in, 1/4 in frame plate
  welded_to: bottom and inner side
  rail_stiffness: 200 kN m/rad
brace:
  tube: 1-3/4 x 0.156 in DOM
  length: 34 in
  slope: 15 deg
  far_end: welded to opposite rail
  end_mount: 50 kN/mm
load_cases: [hard corner]
"""


def commands():
    text = run("--help").stdout
    return re.findall(r"(?m)^  ([a-z]+) +\S", text[text.index("Commands:") :])


class EditorHelp(unittest.TestCase):
    def test_every_command_has_examples_that_run(self):
        program = os.path.join(self.folder("bin"), "linkmargin")
        os.symlink(program_run.PROGRAM, program)
        folder = self.folder("work")
        with open(os.path.join(folder, "mine.yaml"), "w", encoding="utf-8") as file:
            file.write(SHORT)
        path = os.path.dirname(program) + os.pathsep + os.environ["PATH"]
        for name in commands():
            text = run(name, "--help").stdout
            lines = re.findall(r"(?m)^  ((?:linkmargin|eval) .*)$", text[text.index("Example:") :])
            self.assertTrue(lines, name)
            for line in lines:
                self.assertIn(f"linkmargin {name}" if name != "gather" else "linkmargin", line)
                result = subprocess.run(
                    ["bash", "-c", line],
                    cwd=folder,
                    env={**os.environ, "PATH": path},
                    capture_output=True,
                    encoding="utf-8",
                    check=False,
                )
                self.assertIn(result.returncode, (0, 1), (line, result.stderr))
                self.assertEqual(result.stderr, "", line)
        for written in ("sheet.html", "linkmargin.1", "linkmargin.schema.json"):
            self.assertTrue(os.path.getsize(os.path.join(folder, written)), written)

    def folder(self, name):
        made = tempfile.TemporaryDirectory(prefix=name)
        self.addCleanup(made.cleanup)
        return made.name

    def test_the_manual_page_has_every_command_and_troff_takes_it(self):
        page = run("man").stdout
        self.assertIn('.TH LINKMARGIN 1', page)
        for name in commands():
            self.assertIn(f"\n.SS {name}\n", page)
        self.assertIn("kill when they fail", page)
        if shutil.which("groff"):
            result = subprocess.run(
                ["groff", "-man", "-ww", "-Tascii"],
                input=page,
                capture_output=True,
                encoding="utf-8",
                check=False,
            )
            self.assertEqual((result.returncode, result.stderr), (0, ""))
            self.assertIn("--share", result.stdout)

    def test_the_schema_is_json(self):
        schema = json.loads(run("schema").stdout)
        self.assertEqual(schema["required"], ["title"])
        self.assertIn("drop", schema["properties"]["bracket"]["properties"])

    def test_every_layout_is_written_and_an_unknown_one_is_refused(self):
        for layout in ("link", "radius-arms", "parallel-arms", "steering"):
            self.assertIn("title:", run("new", "--layout", layout).stdout)
        self.assertEqual(run("new", "--layout", "link").stdout, run("new").stdout)
        wrong = run("new", "--layout", "five-arms")
        self.assertEqual((wrong.returncode, wrong.stdout), (2, ""))
        self.assertIn("radius-arms", wrong.stderr)

    def test_completion_names_every_command_and_its_options(self):
        names = commands()
        self.assertIn("report", names)
        for shell in ("bash", "zsh", "fish"):
            script = run("completion", shell).stdout
            for name in names:
                self.assertIn(name, script)
            for option in ("json", "svg", "layout", "over"):
                self.assertIn(option, script)
        self.assertEqual(run("completion", "tcsh").returncode, 2)

    def test_bash_completes(self):
        script = run("completion", "bash").stdout

        def completed(*words):
            typed = " ".join(f"'{w}'" for w in words)
            ask = f"COMP_WORDS=({typed}); COMP_CWORD={len(words) - 1}; _linkmargin; echo ${{COMPREPLY[@]}}"
            result = subprocess.run(
                ["bash", "-c", script + ask], capture_output=True, encoding="utf-8", check=True
            )
            self.assertEqual(result.stderr, "")
            return result.stdout.split()

        self.assertEqual(completed("linkmargin", "rep"), ["report"])
        self.assertEqual(completed("linkmargin", "check", "--s"), ["--svg"])
        self.assertEqual(completed("linkmargin", "new", "--layout", "st"), ["steering"])
        self.assertEqual(completed("linkmargin", "completion", "f"), ["fish"])
        self.assertEqual(completed("linkmargin", "check", "my"), [])

    def test_the_scripts_parse_where_their_shells_are(self):
        for shell in ("zsh", "fish"):
            if not shutil.which(shell):
                continue
            script = run("completion", shell).stdout
            result = subprocess.run(
                [shell, "-n"], input=script, capture_output=True, encoding="utf-8", check=False
            )
            self.assertEqual((result.returncode, result.stderr), (0, ""))


if __name__ == "__main__":
    program_run.main()
