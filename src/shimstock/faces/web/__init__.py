"""Pages for the phone at the machine, the tablet on the bench and the laptop in the kitchen."""
