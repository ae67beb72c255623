"""Units as types: a length in millimetres cannot be handed in where inches are meant."""

from typing import NewType

Length = NewType("Length", float)  # in the unit that the call names as `unit`
Inch = NewType("Inch", float)
Mm = NewType("Mm", float)
Deg = NewType("Deg", float)
PerInch = NewType("PerInch", float)  # teeth per inch of pitch diameter
Teeth = NewType("Teeth", int)
