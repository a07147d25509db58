#!/usr/bin/env python3
"""A long run says how far it is, on a terminal only, and leaves nothing behind:
progress_line_test.py PROGRAM"""
import os
import pty
import signal
import subprocess
import tempfile
import time
import unittest

import program_run
from program_run import WITHIN, case_file

LONG = 2.5  # seconds: well past the one from which the line is shown
MOST_STORIES = 400


def tower(stories, cases=3):
    """A braced tower of 12 members a story: as large a frame as is wanted."""
    corners = [(0, 0), (1, 0), (1, 1), (0, 1)]
    points, members, supports, forces = [], [], [], []
    for level in range(stories + 1):
        for i, (x, y) in enumerate(corners):
            points.append(f"  p{level}c{i}: [{x}, {y}, {level} m]")
    for level in range(stories):
        for i in range(4):
            j = (i + 1) % 4
            for start, end in (
                (f"p{level}c{i}", f"p{level + 1}c{i}"),
                (f"p{level + 1}c{i}", f"p{level + 1}c{j}"),
                (f"p{level}c{i}", f"p{level + 1}c{j}"),
            ):
                members.append(
                    f"  m{len(members)}:\n    from: {start}\n    to: {end}\n"
                    "    section: 60 x 5 mm E355"
                )
    for i in range(4):
        supports.append(f"  foot {i}:\n    at: p0c{i}")
    for n in range(cases):
        forces.append(
            f"  push {n}:\n    at: p{stories}c{n}\n    force_x: {100 + n} N\n"
            f"    force_z: -200 N\n    load_case: push {n}"
        )
    blocks = (("points", points), ("members", members), ("supports", supports), ("forces", forces))
    return "title: tower\n" + "".join(f"{name}:\n" + "\n".join(lines) + "\n" for name, lines in blocks)


class OnTerminal:
    """A check whose standard error is a terminal; its answer goes to a file, which never fills up
    while the terminal is read."""

    def __init__(self, path):
        self.leader, follower = pty.openpty()
        self.answer = tempfile.TemporaryFile()
        self.process = subprocess.Popen(
            [program_run.PROGRAM, "check", path],
            stdout=self.answer,
            stderr=follower,
            start_new_session=True,
        )
        os.close(follower)
        self.text = ""

    def read_some(self):
        """False when the program has closed the terminal."""
        try:
            block = os.read(self.leader, 4096)
        except OSError:
            return False
        self.text += block.decode("utf-8")
        return bool(block)

    def finish(self):
        while self.read_some():
            pass
        self.process.wait()
        os.close(self.leader)
        with self.answer:
            self.answer.seek(0)
            return self.answer.read().decode("utf-8")


def screen_after(text):
    """What is left on the line after these carriage returns and overwritings."""
    cells, at = [], 0
    for character in text:
        if character == "\r":
            at = 0
            continue
        cells[at : at + 1] = [character]
        at += 1
    return "".join(cells).rstrip()


class ProgressLine(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        """Finds a case that takes long, and runs it: the frame grows until it does."""
        folder = tempfile.TemporaryDirectory()
        cls.addClassCleanup(folder.cleanup)
        cls.path = os.path.join(folder.name, "tower.yaml")
        stories = 4
        while stories <= MOST_STORIES:
            with open(cls.path, "w", encoding="utf-8") as file:
                file.write(tower(stories))
            start = time.monotonic()
            cls.run_on_terminal = OnTerminal(cls.path)
            cls.answer = cls.run_on_terminal.finish()
            if time.monotonic() - start > LONG:
                return
            if cls.run_on_terminal.process.returncode > 1:
                raise AssertionError(cls.run_on_terminal.text)
            stories = stories * 3 // 2
        raise AssertionError(f"even {12 * MOST_STORIES} members are checked in no time")

    def test_it_tells_how_far_and_is_gone_at_the_end(self):
        run, answer = self.run_on_terminal, self.answer
        self.assertRegex(run.text, r"\r +\d{1,3} %(, \d+ (s|min) left)?  \S")
        self.assertRegex(run.text, r" left  \S")
        self.assertNotIn("\n", run.text)
        shown = [int(p.split("%")[0]) for p in run.text.split("\r") if "%" in p]
        self.assertEqual(shown, sorted(shown))
        self.assertLessEqual(max(shown), 100)
        self.assertEqual(screen_after(run.text), "")
        self.assertTrue(answer.startswith(("WITHIN", "OVER", "NOT DECIDED")))
        self.assertNotIn("\r", answer)

    def test_a_short_run_shows_none(self):
        run = OnTerminal(case_file(self, WITHIN))
        run.finish()
        self.assertEqual(run.text, "")

    def test_without_a_terminal_there_is_none(self):
        self.assertEqual(program_run.run("check", self.path).stderr, "")

    def test_an_interrupted_run_ends_at_once_and_prints_no_answer(self):
        run = OnTerminal(self.path)
        while "%" not in run.text and run.read_some():
            pass
        os.kill(run.process.pid, signal.SIGINT)
        self.assertEqual(run.finish(), "")
        self.assertEqual(run.process.returncode, 130)
        self.assertIn("interrupted before any part of the answer was complete", run.text)


if __name__ == "__main__":
    program_run.main()
