"""The command line: the same core, the same words, as text or JSON."""

import argparse
import json
import os
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Any

from econ.case.form import json_schema
from econ.case.toml import read_case_file
from econ.evaluate.known import known_names
from econ.evaluate.load_measures import load_measures
from econ.evaluate.place import with_hourly_file
from econ.evaluate.prepare import findings_of_bills
from econ.kernel.errors import EconError
from econ.report import bills as told_bills
from econ.report import plain, terminal
from econ.report.numbers import UnitSystem
from econ.store.connection import store_path
from econ.store.weather_files import kept
from econ.tables.epw import limited_bytes
from econ.tables.hourly import KEPT_MARK
from econ.tables.loaders import Tables, load_tables
from econ.tables.place import data_root
from econ.uncertainty.answer import FULL_DRAWS, HOURLY_DRAWS, Answer, answer, usual_draws

BAD_INPUT = 2
MOST_USD = 50_000_000.0
"""Greatest budget, as the case's."""

MANY_ROOMS = 1000
"""Rooms from which progress is told."""

READERS = ("owner", "client", "landlord", "permit", "insurer", "neighbour", "helper")
"""Readers of a report, as `econ.report.document.readers.Reader` lists them: written out, as most commands need none."""


def cases_folder() -> Path:
    """Return the folder of the demo cases."""
    return data_root() / "cases"


def answered(options: argparse.Namespace) -> tuple[Answer, Tables]:
    """Return the answer to the case file named on the command line, and the tables it was worked out from."""
    file = Path(options.case)
    case = read_case_file(file, known_names())
    tables = with_hourly_file(load_tables(), case, lambda written: weather_file(file.parent, written))
    draws = usual_draws(case) if options.draws is None else options.draws
    return answer(case, tables, date.today(), draws=draws, seed=options.seed), tables


def weather_file(folder: Path, written: str) -> bytes:
    """Return an hourly weather file: one kept beside saved cases, or one beside the case file."""
    if written.startswith(KEPT_MARK):
        return kept(store_path(), written)[1]
    return limited_bytes(folder / written)


def show(document: dict[str, Any]) -> None:
    """Print one JSON object."""
    print(json.dumps(document, indent=2, allow_nan=False))


def compare(options: argparse.Namespace) -> None:
    """Print the comparison of the four ways to go."""
    found, _ = answered(options)
    if options.json:
        show(plain.compare_json(found))
    else:
        print(terminal.compare_text(found))


def loads(options: argparse.Namespace) -> None:
    """Print the loads, room by room."""
    options.draws, options.seed = 0, 0
    found, tables = answered(options)
    measures = load_measures(found.structure, found.sheet, tables)
    if options.json:
        show(plain.loads_json(found, measures))
    else:
        print(terminal.loads_text(found, measures))


def bills(options: argparse.Namespace) -> None:
    """Print what the bills in a case say: the fit and, bill by bill, fitted beside billed."""
    file = Path(options.case)
    case = read_case_file(file, known_names())
    if not (case.bills.electricity or case.bills.gas):
        raise SystemExit(refused(f"{file} | has no bills | got nothing | Give bills.electricity or bills.gas a text."))
    tables = with_hourly_file(load_tables(), case, lambda written: weather_file(file.parent, written))
    found = findings_of_bills(case, tables, date.today())
    if options.json:
        show(told_bills.document(found))
    else:
        print(terminal.bills_text(found))


def rooms(options: argparse.Namespace) -> None:
    """Print the plan for a file of rooms; rows that cannot be taken are told on the error stream."""
    from econ.portfolio.plan import evaluated, planned
    from econ.report import rooms as told_rooms
    from econ.report import rooms_text

    file = Path(options.case)
    case = read_case_file(file, known_names())
    tables = with_hourly_file(load_tables(), case, lambda written: weather_file(file.parent, written))
    found = evaluated(Path(options.rooms).read_bytes(), case, tables, date.today(), _progress)
    told = told_rooms.Told(planned(found, case, options.budget), case, tables)
    print(rooms_text.refused_text(found.table), file=sys.stderr)
    if options.out:
        Path(options.out).write_text(told_rooms.out_csv(told), encoding="utf-8-sig", newline="")
    if options.json:
        show(told_rooms.document(told))
    else:
        print(rooms_text.rooms_text(told))


def _progress(done: int, of: int) -> None:
    """Say on the error stream how far many rooms have come, where somebody looks on."""
    if of > MANY_ROOMS and sys.stderr.isatty():
        print(f"\r{done:,} of {of:,} rooms", end="" if done < of else "\n", file=sys.stderr)


def report(options: argparse.Namespace) -> None:
    """Write the answer as a document for one reader: one HTML file, or a PDF."""
    from econ.report.document.file import document_bytes, kind_of
    from econ.report.document.readers import Reader

    kind, reader = kind_of(options.out), Reader(options.reader)
    found, tables = answered(options)
    units = UnitSystem.SI if options.si else UnitSystem.US
    Path(options.out).write_bytes(document_bytes(found, tables, date.today(), reader, kind, units))
    print(f"wrote {options.out}")


def cases(options: argparse.Namespace) -> None:
    """List the demo cases, buildings of many rooms last, or copy one; a building brings its rooms file."""
    folder = cases_folder()
    files = {file.stem: file for place in (folder, folder / "buildings") for file in sorted(place.glob("*.toml"))}
    if not options.copy:
        print("\n".join(files))
        return
    name, target = options.copy
    if name not in files:
        raise SystemExit(refused(f"cases --copy | must be one of {', '.join(files)} | got {name} | Name one of these."))
    rooms_file = files[name].with_suffix(".csv")
    pairs = [
        (files[name], Path(target)),
        *([(rooms_file, Path(target).with_suffix(".csv"))] if rooms_file.exists() else []),
    ]
    for _, to in pairs:
        if to.exists():
            raise SystemExit(
                refused(f"cases --copy | must be a new file | got {to} | Name a file that does not exist.")
            )
    for source, to in pairs:
        to.write_text(source.read_text(encoding="utf-8"), encoding="utf-8")
    print(f"copied {name} to {' and '.join(str(to) for _, to in pairs)}")


def show_schema(_options: argparse.Namespace) -> None:
    """Print the JSON Schema of the case file."""
    show(json_schema())


def refused(message: str) -> int:
    """Say on the error stream what is wrong, and return the exit code of bad input."""
    print(message, file=sys.stderr)
    return BAD_INPUT


def parser() -> argparse.ArgumentParser:
    """Return the command line's grammar."""
    top = argparse.ArgumentParser(prog="python -m econ", description=__doc__)
    commands = top.add_subparsers(required=True, metavar="COMMAND")
    for name, action, text in (
        ("compare", compare, "compare the four ways to go"),
        ("loads", loads, "heating, cooling and drying need of each room"),
        ("bills", bills, "what a year of utility bills in the case says of it"),
    ):
        command = commands.add_parser(name, help=text)
        command.add_argument("case", metavar="CASE.toml")
        command.add_argument("--json", action="store_true", help="print one JSON object")
        command.set_defaults(action=action)
    _ask_draws(commands.choices["compare"])
    many = commands.add_parser("rooms", help="many rooms under a budget: what to do where, and when")
    many.add_argument("rooms", metavar="ROOMS.csv")
    many.add_argument("--case", required=True, metavar="CASE.toml", help="room types, place, prices and budgets")
    many.add_argument("--budget", type=dollars, metavar="USD", help="this year's, in place of the case's")
    many.add_argument("--out", metavar="OUT.csv", help="the rooms as they came, each with what to do")
    many.add_argument("--json", action="store_true", help="print one JSON object")
    many.set_defaults(action=rooms)
    printed = commands.add_parser("report", help="a document to print: for the owner, or another reader")
    printed.add_argument("case", metavar="CASE.toml")
    printed.add_argument("--out", required=True, metavar="FILE", help="its name ends in .html or .pdf")
    printed.add_argument("--reader", choices=READERS, default=READERS[0], help="for whom; the owner unless given")
    printed.add_argument("--si", action="store_true", help="SI units; US customary ones unless given")
    _ask_draws(printed)
    printed.set_defaults(action=report)
    listed = commands.add_parser("cases", help="the demo cases; copy one to start from")
    listed.add_argument("--copy", nargs=2, metavar=("NAME", "FILE.toml"))
    listed.set_defaults(action=cases)
    commands.add_parser("schema", help="JSON Schema of the case file").set_defaults(action=show_schema)
    return top


def _ask_draws(command: argparse.ArgumentParser) -> None:
    """Let a command take the number of draws and their seed."""
    command.add_argument(
        "--draws",
        type=draw_count,
        help=f"rounded up to a power of two; {FULL_DRAWS} unless given, {HOURLY_DRAWS} with an hourly file; "
        "0: no chances",
    )
    command.add_argument("--seed", type=int, default=1, help="of the draws; the same seed gives the same chances")


def draw_count(text: str) -> int:
    """Return a number of draws, or refuse it."""
    greatest = 2**20
    if not text.isdigit() or int(text) > greatest:
        raise argparse.ArgumentTypeError(f"must be a whole number from 0 to {greatest}; got {text}")
    return int(text)


def dollars(text: str) -> float:
    """Return an amount of money, or refuse it."""
    try:
        amount = float(text.removeprefix("$").replace(",", ""))
    except ValueError:
        amount = -1.0
    if not 0.0 <= amount <= MOST_USD:
        raise argparse.ArgumentTypeError(f"must be dollars from 0 to {MOST_USD:,.0f}; got {text}")
    return amount


def main(words: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code: 0 done, 2 bad input."""
    options = parser().parse_args(words)
    try:
        options.action(options)
        sys.stdout.flush()
    except BrokenPipeError:
        _let_go_of_stdout()
    except (EconError, OSError) as error:
        return refused(str(error))
    return 0


def _let_go_of_stdout() -> None:
    """Send what is left of the output nowhere: whoever read it has had enough, which is no fault."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


if __name__ == "__main__":
    sys.exit(main())
