"""The answer to values that no machine can have, or that a formula is not good for."""


class NotPossible(ValueError):
    """Says which value it is, the rule that it breaks and what to do next.

    >>> print(NotPossible("stroke 0 mm", "must be above 0", "measure from end to end"))
    stroke 0 mm must be above 0; measure from end to end
    """

    def __init__(self, what: str, rule: str, would_do: str = "") -> None:
        self.what = what
        self.rule = rule
        self.would_do = would_do
        super().__init__(f"{what} {rule}; {would_do}" if would_do else f"{what} {rule}")

    def __reduce__(self) -> tuple[type, tuple[str, str, str]]:
        return (NotPossible, (self.what, self.rule, self.would_do))
