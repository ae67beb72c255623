"""Where the program `shimstock` begins.

Nothing is imported here that takes time: whoever stops it at once sees no traceback.
"""

import sys


def run(arguments: list[str] | None = None) -> None:
    """Do what was typed; ends the program with 0 done, 1 refused, 2 not understood."""
    typed = sys.argv[1:] if arguments is None else list(arguments)
    try:
        from shimstock.faces.cli.program import outcome

        code = outcome(typed)
    except KeyboardInterrupt:
        print("Stopped. What was kept before stays kept.", file=sys.stderr)
        code = 1
    sys.exit(code)
