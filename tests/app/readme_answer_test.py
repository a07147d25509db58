#!/usr/bin/env python3
"""The README's first case gives the answer that stands below it: readme_answer_test.py PROGRAM"""
import pathlib
import re
import tempfile
import unittest

import program_run

README = pathlib.Path(__file__).resolve().parents[2] / "README.md"


class Answer(unittest.TestCase):
    def test_the_first_case_gives_the_answer_below_it(self):
        blocks = re.findall(r"^```(\w*)\n(.*?)^```$", README.read_text(), re.DOTALL | re.MULTILINE)
        at = next(i for i, (kind, _) in enumerate(blocks) if kind == "yaml")
        case, answer = blocks[at][1], blocks[at + 1][1]
        with tempfile.TemporaryDirectory() as folder:
            pathlib.Path(folder, "mine.yaml").write_text(case)
            result = program_run.run("check", "mine.yaml", cwd=folder)
        self.assertEqual(result.stderr, "")
        self.assertEqual(result.stdout, answer)
        self.assertLessEqual(len(answer.splitlines()), 25)


if __name__ == "__main__":
    program_run.main()
