"""A whole number as it comes in an address or a form."""

MOST_DIGITS = 18  # as many as a row's number can have


def whole_number(typed: str) -> int | None:
    """The number that was sent; None for anything else.

    >>> whole_number("12"), whole_number("²"), whole_number("-1"), whole_number("9" * 19)
    (12, None, None, None)
    """
    plain = typed.isascii() and typed.isdigit() and len(typed) <= MOST_DIGITS
    return int(typed) if plain else None
