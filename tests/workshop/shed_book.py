"""A small invented book that every workshop test can use."""

from datetime import datetime

TEXT = """\
book: shed-engine
title: Shed engine (invented)
prints: inch
parts:
  case: {name: Main case, mark: P1}
  hood: {name: Hood, mark: P2, sits-on: case}
  cover: {name: Side cover, mark: P3, sits-on: case}
  sump: {name: Sump, mark: P4, sits-on: case}
  pump: {name: Pump, mark: P5, sits-on: case, each: [left, right], set: pumps}
  liner: {name: Liner, mark: P6, sits-on: case, count: 2, set: liners}
joints:
  hood-joint:
    name: hood to case
    mark: J1
    between: [hood, case]
    seals: nothing
    open: 10 min
    close: 15 min
  cover-joint:
    name: side cover to case
    mark: J2
    between: [cover, case]
    seals: oil
    on-paint: yes
    after: hood-joint
    open: 25 min
    close: 50 min
    reaches: [pump]
    uses: [{gasket: side gasket, thickness: 0.015 in}]
    fasteners: {count: 12, what: bolt, thread: 3/8-16 UNC, torque: 24 lbf.ft}
  sump-joint:
    name: sump to case
    mark: J3
    between: [sump, case]
    seals: oil
    on-paint: yes
    open: 30 min
    close: 40 min
    reaches: [liner]
    uses: [{gasket: sump gasket}]
    fasteners: {count: 20, what: bolt}
sets:
  pumps: {same: [maker], proof: bench sheet}
  liners: {same: [size]}
figures:
  bore:
    name: liner bore
    mark: F1
    of: liner
    new: 5.7500 .. 5.7510 in
    limit: max 5.7600 in
    at: {depths: [top, middle, bottom], across: [thrust, pin]}
    with: bore gauge
    sizes: [+0.020 in, +0.040 in, +0.060 in]
    nominal: 5.7500 in
  taper:
    name: liner taper
    mark: F2
    of: liner
    limit: max 0.0050 in
    derive: {taper-of: bore}
  end-float:
    name: end float
    mark: F3
    of: case
    new: 0.004 .. 0.008 in
    limit: max 0.012 in
    with: dial gauge
  delivery:
    name: delivery
    mark: F4
    of: pump
    new: 24.0 .. 25.0 cc
    limit: min 20 cc
    with: graduate
    pair: max 0.5 cc
settings:
  idle: {name: idle speed, mark: S1, of: case, new: 580 .. 620 rpm}
gates:
  paint:
    name: Paint
    joints: paint joints dry
    points:
      degreased: {ask: Is it degreased?}
  first-start:
    name: First start
    joints: all closed
    figures: [end-float]
    points:
      stop: {ask: Does the stop work by hand?, hard: yes}
      mask: {ask: Who has air-fed gear?, answers: [named]}
"""

LINER_1 = ["5.7592", "5.7554", "5.7532", "5.7568", "5.7546", "5.7528"]
LINER_2 = ["5.7560", "5.7542", "5.7524", "5.7550", "5.7538", "5.7522"]
MONDAY = datetime(2026, 3, 2, 19, 30).astimezone()  # by the clock in the shed
