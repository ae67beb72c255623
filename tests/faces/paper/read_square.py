"""Reads a QR code out of a picture, so that a printed label is checked by what a phone would see.

Written from ISO/IEC 18004 (structure, masks, placement, table of blocks) for sizes 1 to 8; it does
not mend errors, and so fails on the first module that is drawn wrongly. It shares nothing with the
library that draws.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from PIL import Image

DARK = 128
LEVELS = {0b01: "L", 0b00: "M", 0b11: "Q", 0b10: "H"}
MASKS: tuple[Callable[[int, int], int], ...] = (
    lambda i, j: (i + j) % 2,
    lambda i, j: i % 2,
    lambda i, j: j % 3,
    lambda i, j: (i + j) % 3,
    lambda i, j: (i // 2 + j // 3) % 2,
    lambda i, j: i * j % 2 + i * j % 3,
    lambda i, j: (i * j % 2 + i * j % 3) % 2,
    lambda i, j: ((i + j) % 2 + i * j % 3) % 2,
)
# Data bytes of each block, by size and level (table 9 of the standard).
BLOCKS = {
    (1, "M"): [16], (1, "Q"): [13], (1, "H"): [9],
    (2, "M"): [28], (2, "Q"): [22], (2, "H"): [16],
    (3, "M"): [44], (3, "Q"): [17] * 2, (3, "H"): [13] * 2,
    (4, "M"): [32] * 2, (4, "Q"): [24] * 2, (4, "H"): [9] * 4,
    (5, "M"): [43] * 2, (5, "Q"): [15] * 2 + [16] * 2, (5, "H"): [11] * 2 + [12] * 2,
    (6, "M"): [27] * 4, (6, "Q"): [19] * 4, (6, "H"): [15] * 4,
    (7, "M"): [31] * 4, (7, "Q"): [14] * 2 + [15] * 4, (7, "H"): [13] * 4 + [14],
    (8, "M"): [38] * 2 + [39] * 2, (8, "Q"): [18] * 4 + [19] * 2, (8, "H"): [14] * 4 + [15] * 2,
}  # fmt: skip
LINED_UP = {1: [], 2: [6, 18], 3: [6, 22], 4: [6, 26], 5: [6, 30], 6: [6, 34], 7: [6, 22, 38],
            8: [6, 24, 42]}  # fmt: skip
ALPHANUMERIC = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"


@dataclass(frozen=True)
class Square:
    """What was read. module: pixels of one module. clear: pixels of white around it, the least."""

    text: str
    level: str
    module: float
    clear: float


def read_square(picture: Image.Image) -> Square:
    """Read the one code in a picture that holds nothing else."""
    grey = picture.convert("L").point(lambda shade: 0 if shade < DARK else 255)
    left, top, right, bottom = grey.point(lambda shade: 255 - shade).getbbox()
    module = _run(grey, left, top) / 7  # the upper edge of a finder is seven modules
    across = round((right - left) / module)
    module = (right - left) / across
    rows = [
        [
            grey.getpixel((int(left + (j + 0.5) * module), int(top + (i + 0.5) * module))) < DARK
            for j in range(across)
        ]
        for i in range(across)
    ]
    clear = min(left, top, grey.width - right, grey.height - bottom)
    return Square(*_decoded(rows), module, clear)


def _run(grey: Image.Image, left: int, top: int) -> int:
    x = left
    while grey.getpixel((x, top + 1)) < DARK:
        x += 1
    return x - left


def _decoded(rows: list[list[bool]]) -> tuple[str, str]:
    across = len(rows)
    version = (across - 17) // 4
    assert across == 17 + 4 * version, f"{across} modules is no size of a code"
    bits = [rows[8][j] for j in (0, 1, 2, 3, 4, 5, 7, 8)] + [
        rows[i][8] for i in (7, 5, 4, 3, 2, 1, 0)
    ]
    form = int("".join("1" if bit else "0" for bit in bits), 2) ^ 0b101010000010010
    level, mask = LEVELS[form >> 13], MASKS[form >> 10 & 7]
    stream = [rows[i][j] ^ (mask(i, j) == 0) for i, j in _way(version, across)]
    words = [
        int("".join("1" if bit else "0" for bit in stream[at : at + 8]), 2)
        for at in range(0, len(stream) - 7, 8)
    ]
    return _text(_in_order(words, BLOCKS[version, level]), version), level


def _way(version: int, across: int) -> Iterator[tuple[int, int]]:
    """The modules that hold data, up and down in pairs of columns from the right."""
    up = True
    for right in [*range(across - 1, 6, -2), 5, 3, 1]:
        for i in range(across - 1, -1, -1) if up else range(across):
            for j in (right, right - 1):
                if not _fixed(version, across, i, j):
                    yield i, j
        up = not up


def _fixed(version: int, across: int, i: int, j: int) -> bool:
    far = across - 9
    if (i < 9 and j < 9) or (i < 9 and j > far) or (i > far and j < 9) or 6 in (i, j):
        return True
    if version >= 7 and ((i < 6 and j > far - 3) or (j < 6 and i > far - 3)):
        return True
    at = LINED_UP[version]
    corners = {(6, 6), (6, at[-1]), (at[-1], 6)} if at else set()
    return any(abs(i - a) <= 2 and abs(j - b) <= 2 for a in at for b in at if (a, b) not in corners)


def _in_order(words: list[int], sizes: list[int]) -> list[int]:
    """Data bytes of the blocks one after the other; they lie interleaved."""
    blocks: list[list[int]] = [[] for _ in sizes]
    source = iter(words)
    for place in range(max(sizes)):
        for block, size in zip(blocks, sizes, strict=True):
            if place < size:
                block.append(next(source))
    return [word for block in blocks for word in block]


def _text(data: list[int], version: int) -> str:
    bits = "".join(f"{word:08b}" for word in data)
    at, text = 0, ""

    def take(count: int) -> int:
        nonlocal at
        at += count
        return int(bits[at - count : at] or "0", 2)

    while at + 4 <= len(bits) and (mode := take(4)):
        assert mode in (2, 4), f"mode {mode} is not read here"
        if mode == 4:
            text += bytes(take(8) for _ in range(take(8))).decode()
            continue
        count = take(9)
        for _ in range(count // 2):
            pair = take(11)
            text += ALPHANUMERIC[pair // 45] + ALPHANUMERIC[pair % 45]
        text += ALPHANUMERIC[take(6)] if count % 2 else ""
    return text
