# SPDX-License-Identifier: MIT
"""For a teacher: a sheet of exercises with its answer sheet, as one page to print and as Markdown.

Each number of a sheet gives another one, and the same number the same sheet again:

    examples/exercise_sheet.py --sheet 12 --topics "gear ratio,road speed"
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from layshaft import exercises

BUILD = Path(__file__).resolve().parents[1] / "build" / "examples"


def options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Writes a sheet of exercises on the final drive, with answers.")
    parser.add_argument("--sheet", default="1", help="the sheet's number, or any word")
    parser.add_argument("--topics", default=",".join(exercises.TOPICS), help="separated by commas; all unless stated")
    parser.add_argument("--count", type=int, default=10, help="how many exercises")
    parser.add_argument("--title", default="Exercises on the final drive", help="what the page is headed with")
    parser.add_argument("--worked", action="store_true", help="opens every working, so that all are printed")
    parser.add_argument("--pages", type=Path, default=BUILD, help="the folder to write to")
    return parser.parse_args()


def main() -> None:
    asked = options()
    topics = [topic.strip() for topic in asked.topics.split(",")]
    sheet = exercises.sheet(topics, asked.sheet, asked.count, title=asked.title)
    page = sheet.write(asked.pages / "exercise_sheet.html", worked=asked.worked)
    text = page.with_suffix(".md")
    text.write_text(sheet.questions("markdown") + "\n" + sheet.answers("markdown"), encoding="utf-8")

    first = sheet.exercises[0]
    print(f"{len(sheet.exercises)} exercises. The first one, on {first.topic}:\n\n{first.question}\n")
    print("What the checker says of three answers to it:")
    slip = f"{first.slips[0].value / first.unit_quantity:.6g}"
    for answer in (first.shown, slip, "no idea"):
        print(f"  {answer}: {first.check(answer).kind}")
    print(f"\nTo print: {page}\nAs text: {text}")


if __name__ == "__main__":
    try:
        main()
    except ValueError as error:
        sys.exit(str(error))
