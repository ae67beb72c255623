"""How wide a line of print runs, near enough to break it where it must be broken."""

FONT = "DejaVu Sans"
_WIDTHS = {
    0.32: " .,:;'|!()[]ijlI·-/",
    0.41: 'frt"*−',
    0.52: "sczkxvy",
    0.64: "0123456789abdeghnopquEFLPSTYZJ_",
    0.70: "ABCDGHKNOQRUVX",
    0.98: "mwMW%@→…",
}
_WIDTH = {letter: width for width, letters in _WIDTHS.items() for letter in letters}
_UNKNOWN = 0.75

Piece = tuple[str, str]
"""Some words and the style that they are printed in."""


def width_of(text: str, size: float) -> float:
    """How wide text runs in the drawing's typeface; a little too wide rather than too narrow.

    size: of the type, in points; the answer is in points too.
    """
    return size * sum(_WIDTH.get(letter, _UNKNOWN) for letter in text)


def broken(pieces: list[Piece], size: float, width: float) -> list[list[Piece]]:
    """The pieces in lines of at most `width` points, broken at spaces, in a word only if it must.

    size: of the type, in points.
    """
    lines: list[list[Piece]] = [[]]
    used = 0.0
    for text, style in pieces:
        for word in _words(text, size, width):
            wide = width_of(word, size)
            if used and used + wide > width:
                lines.append([])
                used = 0.0
                word = word.lstrip()
            _append(lines[-1], word, style)
            used += width_of(word, size)
    return lines


def _words(text: str, size: float, width: float) -> list[str]:
    """Words with the space before them; a word longer than the line is cut."""
    words: list[str] = []
    for number, bare in enumerate(text.split(" ")):
        word = bare if number == 0 else f" {bare}"
        while width_of(word, size) > width and len(word) > 1:
            fits = max(
                1,
                next(
                    n
                    for n in range(len(word), 0, -1)
                    if n == 1 or width_of(word[:n], size) <= width
                ),
            )
            words.append(word[:fits])
            word = word[fits:]
        words.append(word)
    return words


def _append(line: list[Piece], word: str, style: str) -> None:
    if line and line[-1][1] == style:
        line[-1] = (line[-1][0] + word, style)
    elif word:
        line.append((word, style))
