"""Cautions that go with sums for work that can hurt: what to do, and whom to ask."""

BOOK_FIRST = "The maker's figure for the machine in hand goes before any sum."
BOLT = (
    "A book's torque is for the state of the thread that the book says; an oiled thread pulls "
    "harder at the same torque. The maker's torque goes before this one."
)
OLD_BOLT = (
    "A bolt that has yielded, rusted thin or stretched once is not pulled again; wear eye "
    "protection, pull steadily and never with a pipe on a small bolt."
)
PRESS = (
    "Pressed parts store force: guard or blanket, face shield, stand aside, support close to the "
    "bore, nothing cast or hardened pushed on its rim. Above about 30 tons send the work out."
)
HEAT = (
    "Before heat: fuel and oil drained and moved, no torch near tank or carburettor, an "
    "extinguisher at hand, and a watch kept for an hour after. A closed hollow part, a float or "
    "a tyre on its rim bursts when heated: vent it, take it out or off first. Ask the maker's book "
    "what heat the part may have."
)
SOLVENT_HEAT = (
    "Never heat a part cleaned with a chlorinated solvent: it gives phosgene. Rinse, dry and air "
    "it first."
)
COLD = (
    "Dry ice and liquid nitrogen burn the skin and take the air of a closed room: gloves, goggles, "
    "open doors, and someone who has done it."
)
RUNNING = (
    "A running engine, fan or belt takes sleeves and hands: guard it, nobody in line with pulley "
    "or belt, stop it before touching. Ask someone used to belt work."
)
GOVERNOR = (
    "An engine whose governor was apart can run away: prove the stop by hand, free the rack, and "
    "have a plate ready for the air inlet before the first start. The maker's top speed is a limit."
)
HIGH_PRESSURE_FUEL = (
    "Injected fuel goes through skin and gloves. Never feel for a leak. Any prick: hospital at "
    "once, and say high-pressure injection. Bench work belongs to the diesel shop."
)
HIGH_PRESSURE_OIL = (
    "Oil under pressure goes through skin: lower and release it first, look for a pin-hole with "
    "card or wood, never a hand. A prick goes to hospital at once."
)
BATTERY = (
    "A battery gives hydrogen and burns with acid: goggles, fresh air, no spark; earth lead off "
    "first and on last. Acid in the eye: water for a long time, then hospital."
)
SHOCK = "The high side of a coil or magneto gives a shock: stop the engine before a hand goes near."
CRANK = (
    "Cranking by hand: pull up, thumb on the same side, in neutral and chocked; no crank while the "
    "timing is unknown or the impulse does not snap."
)
HAND_CLEAR_OF_PTO = (
    "A turning power take-off shaft kills: shields on, stand clear, no loose clothes, nothing "
    "cleared while it turns. Ask the owner of the test rig."
)
BRAKES = (
    "A sum does not prove a brake. Prove it at walking pace first, then on level ground, with the "
    "hand brake tried; the maker's book and the road law of the place decide. Ask a brake fitter."
)
LINING_DUST = (
    "Old brake and clutch linings may be asbestos: treat them so until proved new. Wet first, "
    "wipe and bag; no compressed air, dry brush, dry drilling or grinding. Ask the waste authority."
)
SPRING = (
    "A compressed spring lets go at once: a proper compressor or a long bolt, let down evenly, "
    "stand aside. Track recoil springs go to a shop that has the fixture."
)
SLING = (
    "Nobody under a load; slings and eyes of known rating, looked at the same day, edges padded, "
    "never a wider angle than the maker of the sling allows. Ask a trained slinger for an engine."
)
JACK = (
    "A machine on a jack falls: level hard floor, chocks, rated stands before anyone reaches "
    "under; no raising for weighing with a person on or under it."
)
ROLLOVER = (
    "A tractor rears and rolls over: hitch at the drawbar only and never above the axle, low gear, "
    "gentle clutch, no slope, no passenger. The maker's book and licensed practice go before a sum."
)
PAINT = (
    "Two-pack paint with isocyanate needs air-fed breathing gear and a cleared room: give it to a "
    "sprayer who has them. Paint and thinner burn: no flame, earthed cans, lidded bin for rags. "
    "The sheet of the paint goes before any rule."
)
COOLANT = (
    "Never open a hot radiator; never put cold water into a hot dry engine. Ethylene glycol "
    "poisons children and animals: keep it closed and take the old to the collection."
)
USED_OIL = "Used oil goes to the collection, unmixed; hot oil burns. The maker's grade goes first."
EXHAUST = "Exhaust gas kills: run an engine outdoors or with the exhaust led outside."
OLD_GASKET = (
    "Old gaskets and their dust may be asbestos: treat them so until proved new. Wet them, lift "
    "them off whole, bag them; no power brush or grinder. Ask the waste authority."
)
