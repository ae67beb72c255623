"""A fan that rocks, small enough to work out on paper. Invented numbers."""

from shimstock.trade.faults.network import Check, Finding, Network, Spread, Told

PRIORS = {"hub": 0.03, "bevel": 0.03, "mesh": 0.03, "breather": 0.10}
ROCKS = Finding(0.01, {"hub": 0.4, "bevel": 0.8, "mesh": 0.4})
HUNTS = Finding(0.02, {"mesh": 0.4})
OIL = Finding(0.05, {"breather": 0.4})
ROCK_READ = Finding(0.0, {"bevel": 1.0}, Spread(0.1, 0.05), Spread(0.3, 0.05))
NETWORK = Network(PRIORS, {"rocks": ROCKS, "hunts": HUNTS, "oil": OIL, "tip": ROCK_READ})
JOINTS = {"side-cover": 25.0, "top-cover": 45.0}
CHECKS = {
    "line": Check(5, confirms=("hub",)),
    "hold-bevel": Check(20, confirms=("bevel",), joints=frozenset({"side-cover"})),
    "hold-camshaft": Check(20, confirms=("mesh",), joints=frozenset({"side-cover", "top-cover"})),
    "blow": Check(5, confirms=("breather",)),
}
ROCKING = Told({"rocks": True})
