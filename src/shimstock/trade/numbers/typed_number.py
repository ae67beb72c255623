"""Reads a number as people in a shed write it: fractions, commas, thousandths, feet and inches."""

import re
from fractions import Fraction

from shimstock.trade.numbers.not_understood import NotUnderstood

VULGAR = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
    "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6",
}  # fmt: skip
LOOKALIKES = str.maketrans(
    {"−": "-", "–": "-", "⁄": "/", "″": '"', "”": '"', "“": '"', "′": "'", "’": "'"}
)
NUMBER = re.compile(
    r"[-+]?\s*[\d.,](?:[\d.,/]|\s*-\s*(?=\d)|\s+(?=[\d.,/])|\s*/\s*|e[-+]?\d+)*", re.I | re.A
)

PLAIN = re.compile(r"(\d+\.?\d*|\.\d+)(e[-+]?\d{1,3})?", re.I)
COMMA = re.compile(r"(\d*),(\d+)")
GROUPED = re.compile(r"\d{1,3}(,\d{3})+\.\d*|\d{1,3}(,\d{3}){2,}")
DOTTED = re.compile(r"\d{1,3}(\.\d{3})+,\d*|\d{1,3}(\.\d{3}){2,}")
FRACTION = re.compile(r"(\d+(?:\.\d+)?|\.\d+)\s*/\s*(\d+)")
MIXED = re.compile(r"(\d+)(\s+|-)(\d+)\s*/\s*(\d+)")
TOO_LONG = 40


def tidy(typed: str) -> str:
    """The text with plain signs: one kind of minus, quote, space, and ½ as 1/2."""
    text = " ".join(typed.translate(LOOKALIKES).split())
    for sign, plain in VULGAR.items():
        if sign in text:
            text = re.sub(rf"(?<=\d)\s*{sign}", f" {plain}", text).replace(sign, plain)
    return text


def split_number(text: str) -> tuple[str, str]:
    """The number at the start of tidy text, and what follows it.

    >>> split_number("2-1/2 in")
    ('2-1/2', 'in')
    """
    match = NUMBER.match(text)
    number = match.group().strip() if match else ""
    return number, text[len(match.group()) if match else 0 :].strip()


def number(text: str, typed: str) -> Fraction:
    """The exact number that tidy text spells; `typed` is named in the error.

    Raises NotUnderstood where the text can be read in no way or in more than one.

    >>> number("2 1/2", "2 1/2"), number("63,46", "63,46"), number("-.0015", "-.0015")
    (Fraction(5, 2), Fraction(3173, 50), Fraction(-3, 2000))
    """
    if len(text) > TOO_LONG:
        raise NotUnderstood(typed, "is too long for a number", ("2.4985",))
    sign = -1 if text.startswith("-") else 1
    body = text.lstrip("+-").strip()
    for read in (_plain, _with_commas, _fraction, _mixed):
        found = read(body, typed)
        if found is not None:
            return sign * found
    raise NotUnderstood(typed, f"cannot be read as one number ({text})", _guesses(body))


def _plain(body: str, typed: str) -> Fraction | None:
    if not PLAIN.fullmatch(body):
        return None
    value = Fraction(body)
    if value > 10**12 or 0 < value < Fraction(1, 10**12):
        raise NotUnderstood(typed, "is beyond anything that is measured here", ("2.4985",))
    return value


def _with_commas(body: str, typed: str) -> Fraction | None:
    if GROUPED.fullmatch(body):
        return _plain(body.replace(",", ""), typed)
    if DOTTED.fullmatch(body):
        return _plain(body.replace(".", "").replace(",", "."), typed)
    match = COMMA.fullmatch(body)
    if not match:
        return None
    whole, rest = match.groups()
    if len(rest) == 3 and 1 <= len(whole) <= 3 and not whole.startswith("0"):
        wrong = "has a comma that may be the decimal point or may part thousands"
        raise NotUnderstood(typed, wrong, (f"{whole}.{rest}", whole + rest))
    return _plain(f"{whole or 0}.{rest}", typed)


def _fraction(body: str, typed: str) -> Fraction | None:
    match = FRACTION.fullmatch(body)
    if not match:
        return None
    over, under = match.groups()
    if int(under) == 0:
        raise NotUnderstood(typed, "divides by nothing", (f"{over}/16",))
    return Fraction(over) / int(under)


def _mixed(body: str, typed: str) -> Fraction | None:
    match = MIXED.fullmatch(body)
    if not match:
        return None
    whole, _, over, under = match.groups()
    if not 0 < int(over) < int(under):
        wrong = "has a fraction that is not between nothing and one"
        raise NotUnderstood(typed, wrong, (f"{whole} 1/2", f"{whole}.5"))
    return int(whole) + Fraction(int(over), int(under))


def _guesses(body: str) -> tuple[str, ...]:
    """What the writer may have meant."""
    dashed = re.fullmatch(r"(\d+)\s+-\s*(\d+/\d+)|(\d+)\s*-\s+(\d+/\d+)", body)
    if dashed:
        whole, part = [g for g in dashed.groups() if g]
        if Fraction(part) < 1:
            return (f"{whole} {part}", f"{float(int(whole) - Fraction(part)):.6g}")
    points = body.split(".")
    if len(points) == 3 and all(p.isdigit() for p in points):
        return (f"{points[0]}.{points[1]}{points[2]}", f"{points[0]}{points[1]}.{points[2]}")
    slashes = body.split("/")
    if len(slashes) == 3 and all(p.strip().isdigit() for p in slashes):
        whole, over, under = (int(p) for p in slashes)
        mixed = (f"{whole} {over}/{under}",) if over < under else ()
        return (*mixed, f"{whole}/{over}")
    joined = re.fullmatch(r"(\d+)((?: \d{3})+)", body)
    if joined:
        return (body.replace(" ", ""),)
    return ("2.4985", "2 1/2")
