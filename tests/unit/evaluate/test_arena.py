"""Freed memory is kept for the next arrays, and nothing else hangs on it."""

import sys
import tracemalloc

import numpy as np

from econ.evaluate.arena import LARGEST_BYTES, keep_freed_memory


def test_it_is_asked_once_and_says_the_same_again():
    assert keep_freed_memory() is keep_freed_memory()


def test_a_library_that_has_the_settings_takes_them():
    assert keep_freed_memory() or not sys.platform.startswith("linux")


def test_an_array_goes_when_it_is_let_go():
    keep_freed_memory()
    tracemalloc.start()
    held = np.ones(LARGEST_BYTES // 16)
    most = tracemalloc.get_traced_memory()[0]
    del held
    left = tracemalloc.get_traced_memory()[0]
    tracemalloc.stop()
    assert left <= most - LARGEST_BYTES // 2
