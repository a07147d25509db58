#!/usr/bin/env python3
"""What helps while a case is written: editor_help_test.py PROGRAM"""
import json
import re
import shutil
import subprocess
import unittest

import program_run
from program_run import run


def commands():
    text = run("--help").stdout
    return re.findall(r"(?m)^  ([a-z]+) +\S", text[text.index("Commands:") :])


class EditorHelp(unittest.TestCase):
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
