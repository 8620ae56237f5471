"""Memory that is let go is kept for the next arrays: asking the system for it again costs a tenth of all draws."""

import ctypes
from functools import lru_cache
from typing import Final

M_TRIM_THRESHOLD: Final = -1
"""Number by which the C library knows how much free memory it keeps before it gives any back. malloc.h of glibc."""

M_MMAP_THRESHOLD: Final = -3
"""Number by which it knows from what size on memory is asked for, and given back, piece by piece. Same header."""

LARGEST_BYTES: Final = 32 << 20
"""No array of a block of rows is larger, so that all of them come out of what is kept."""

KEPT_BYTES: Final = 64 << 20
"""Free memory kept: about what the arrays of a block of rows take, and no more than a page has in pictures."""


@lru_cache(maxsize=1)
def keep_freed_memory() -> bool:
    """Ask the C library to keep freed memory of arrays; return whether it could be asked, once a process.

    Only speed hangs on it: where the library has no such settings nothing changes.
    """
    try:
        ask = ctypes.CDLL(None).mallopt
    except (OSError, AttributeError, TypeError):
        return False
    return bool(ask(M_MMAP_THRESHOLD, LARGEST_BYTES) and ask(M_TRIM_THRESHOLD, KEPT_BYTES))
