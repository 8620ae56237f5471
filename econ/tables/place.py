"""Where data lives: the one function that knows."""

from pathlib import Path

import econ
from econ.kernel.errors import TableError


def data_root() -> Path:
    """Return the folder that holds the data tables.

    Returns
    -------
    root : Path
        ``data`` beside the package's modules in an installed wheel, else ``data`` at the root of the source tree.

    Raises
    ------
    TableError
        If neither exists.
    """
    package = Path(next(iter(econ.__path__)))
    for folder in (package / "data", package.parent / "data"):
        if folder.is_dir():
            return folder
    raise TableError(f"No data folder beside {package} or above it. Install the package again.")
