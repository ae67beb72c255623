"""The answer to text that cannot be read one way only."""


class NotUnderstood(ValueError):
    """Says what was typed, what is wrong with it and what would do."""

    def __init__(self, typed: str, wrong: str, would_do: tuple[str, ...] = ()) -> None:
        self.typed = typed
        self.wrong = wrong
        self.would_do = would_do
        shown = typed.strip() or "(nothing)"
        offer = f"; {' or '.join(would_do)} would do" if would_do else ""
        super().__init__(f"{shown} {wrong}{offer}")

    def __reduce__(self) -> tuple[type, tuple[str, str, tuple[str, ...]]]:
        return (NotUnderstood, (self.typed, self.wrong, self.would_do))


class HardlyMeant(NotUnderstood):
    """Something that can be read, and can hardly be so; it is kept where one says it is meant."""
