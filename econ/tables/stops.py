"""Before which step each finding stands: the table as the plan reads it."""

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Final

from econ.tables.record import read_table

ASIDE: Final = "aside"
"""What stands in place of a step where the work is no step of a plan."""

STAR: Final = "*"


@dataclass(frozen=True, slots=True)
class Standing:
    """Where a finding stands.

    Attributes
    ----------
    before : tuple of str
        Tasks; the first that a plan holds is the one.
    signer : str
        ``step`` where whoever does the step may sign too; who signs a stop of the task's own.
    when : str
        ``turn`` where a signature counts only once all that comes before is settled.
    """

    before: tuple[str, ...]
    signer: str = ""
    when: str = ""


@dataclass(frozen=True, slots=True)
class StopTable:
    """Where every finding stands.

    Attributes
    ----------
    rows : mapping of str to Standing
        By code, or by family with a star.
    """

    rows: dict[str, Standing]

    def of(self, code: str) -> Standing | None:
        """Return where a finding stands by its code, else by its family; None where neither is listed."""
        return self.rows.get(code) or self.rows.get(f"{code.partition('.')[0]}.{STAR}")


@lru_cache(maxsize=4)
def stop_table(root: Path | None = None) -> StopTable:
    """Return where findings stand.

    Parameters
    ----------
    root : Path or None
        The data folder; None means the one this package brings.

    Returns
    -------
    table : StopTable
        Checked against its record.
    """
    rows = read_table("installation/stops", root).rows()
    return StopTable(
        {row["code"]: Standing(tuple(row["before"].split(";")), row["signer"], row["when"]) for row in rows}
    )
