"""Store the results of the demo cases again: `python -m tests.cases.remake`, after a change that moves numbers."""

import json
from pathlib import Path

from econ.report.plain import compare_json, loads_json
from tests.demo import NAMES, demo_answer

FOLDER = Path(__file__).with_name("results")


def document(name):
    """Return comparison and loads of a demo case at likely values."""
    answer = demo_answer(name)
    return {"compare": compare_json(answer), "loads": loads_json(answer)}


def main():
    """Write one file a case."""
    FOLDER.mkdir(exist_ok=True)
    for name in NAMES:
        text = json.dumps(document(name), indent=1, sort_keys=True)
        (FOLDER / f"{name}.json").write_text(f"{text}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
