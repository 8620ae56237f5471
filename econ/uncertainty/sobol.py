"""Sobol points, each dimension scrambled by a random triangular matrix and shift: even, and free of bias."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Self

import numpy as np
from numpy.typing import NDArray

from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError
from econ.tables.record import read_table

BITS: Final = 30
"""Binary digits of a point."""

Words = NDArray[np.uint32]


@dataclass(frozen=True, slots=True, eq=False)
class Sequence:
    """A Sobol sequence scrambled once, of which any run of points can be had.

    Attributes
    ----------
    shift : ndarray of uint32, shape (n_input,)
        The first point. [dimensionless]
    directions : ndarray of uint32, shape (n_input, BITS)
        Scrambled direction numbers. [dimensionless]
    """

    shift: Words
    directions: Words

    def points(self, first: int, count: int) -> FloatArray:
        """Return a run of points, shape (n_input, count), from 0 to below 1. [dimensionless]

        Parameters
        ----------
        first : int
            Where the run begins, a multiple of its length. [dimensionless]
        count : int
            Its length, a power of two. [dimensionless]

        Raises
        ------
        OutOfRangeError
            If the run is no power of two long, or begins elsewhere.
        """
        _check_run(first, count)
        points = np.empty((len(self.shift), count), dtype=np.uint32)
        points[:, 0] = self._point(first)
        for digit in range(count.bit_length() - 1):
            known = 1 << digit
            np.bitwise_xor(
                points[:, known - 1 :: -1], self.directions[:, digit, None], out=points[:, known : 2 * known]
            )
        even: FloatArray = points.astype(np.float64) * 0.5**BITS
        return even

    def only(self, inputs: IntArray) -> Self:
        """Return the same sequence in some of its dimensions.

        Parameters
        ----------
        inputs : ndarray of int, shape (n,)
            Positions. [dimensionless]
        """
        return type(self)(self.shift[inputs], self.directions[inputs])

    def _point(self, at: int) -> Words:
        """Return one point in digits, shape (n_input,): the digits of its number's Gray code choose directions."""
        gray = at ^ (at >> 1)
        chosen = [digit for digit in range(BITS) if gray >> digit & 1]
        point: Words = self.shift ^ np.bitwise_xor.reduce(self.directions[:, chosen], axis=1, initial=0)
        return point


def scrambled_sequence(n_input: int, rng: np.random.Generator) -> Sequence:
    """Return a Sobol sequence with a scramble of its own.

    Parameters
    ----------
    n_input : int
        Dimensions. [dimensionless]
    rng : numpy.random.Generator
        Draws the scramble.

    Returns
    -------
    sequence : Sequence
        Its points are those of ``scipy.stats.qmc.Sobol`` with the same generator, digit by digit.

    Raises
    ------
    OutOfRangeError
        If there are more dimensions than the table of direction numbers has.

    References
    ----------
    .. [1] Joe, Kuo (2008), SIAM J. Sci. Comput. 30(5), 2635-2654: direction numbers.
    .. [2] Matousek (1998), J. Complexity 14, 527-556: scrambling by linear matrix and digital shift.
    """
    return Sequence(*_scrambled(_directions()[: _checked(n_input)], rng.spawn(1)[0]))


def _check_run(first: int, count: int) -> None:
    """Raise unless a run of points is a power of two long and begins at a multiple of it."""
    if count < 1 or count & (count - 1) or first + count > 1 << BITS:
        raise OutOfRangeError("draws", count, "", "a power of two", "Round it up with draw_count first.")
    if first % count:
        raise OutOfRangeError("first draw", first, "", f"a multiple of {count}", "Begin where a whole run begins.")


def _checked(n_input: int) -> int:
    """Return a number of dimensions that the table has."""
    most = len(_directions())
    if not 1 <= n_input <= most:
        raise OutOfRangeError("uncertain inputs", n_input, "", f"between 1 and {most}", "Split the case into several.")
    return n_input


@lru_cache(maxsize=1)
def _directions() -> Words:
    """Return the direction numbers of every dimension, shape (n_dimension, BITS), most significant digit first."""
    table = read_table("draws/sobol")
    polynomial = table.numbers("polynomial").astype(np.int64)
    degree = np.array([int(each).bit_length() - 1 for each in polynomial])
    numbers = np.ones((len(polynomial), BITS), dtype=np.int64)
    for row, first in enumerate(table.texts("first")):
        given = [int(each) for each in first.split()]
        numbers[row, : len(given)] = given
    for each in range(1, int(degree.max()) + 1):
        rows = np.flatnonzero(degree == each)
        numbers[rows] = _continued(numbers[rows], polynomial[rows], each)
    return (numbers << np.arange(BITS - 1, -1, -1)).astype(np.uint32)


def _continued(numbers: NDArray[np.int64], polynomial: NDArray[np.int64], degree: int) -> NDArray[np.int64]:
    """Return direction numbers past the first few, which the polynomial's coefficients hand on."""
    for digit in range(degree, BITS):
        numbers[:, digit] = numbers[:, digit - degree]
        for back in range(1, degree + 1):
            is_in = (polynomial >> (degree - back)) & 1
            numbers[:, digit] ^= is_in * (numbers[:, digit - back] << back)
    return numbers


def _scrambled(directions: Words, rng: np.random.Generator) -> tuple[Words, Words]:
    """Return a random shift (n_input,) and direction numbers through random triangular matrices (n_input, BITS)."""
    n_input, places = len(directions), np.arange(BITS, dtype=np.uint32)
    shift = rng.integers(2, size=(n_input, BITS), dtype=np.uint32) << places
    below = np.tril(rng.integers(2, size=(n_input, BITS, BITS), dtype=np.uint32), -1)
    below[:, places, places] = 1
    matrix = (below << places[::-1]).sum(axis=2, dtype=np.uint32)
    is_odd = np.bitwise_count(matrix[:, None, :] & directions[:, :, None]) & 1
    scrambled = (is_odd.astype(np.uint32) << places[::-1]).sum(axis=2, dtype=np.uint32)
    return shift.sum(axis=1, dtype=np.uint32), scrambled
