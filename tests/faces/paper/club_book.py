"""A small invented book with a little of everything that a record tells."""

from datetime import date, datetime

NAME = "Grey № 1 “*Ünïcode* $5_ #7 <b>&amp; Größe Ёлка"
NOTES = "Came with #3 box, *two* keys, $40 owed and under_scored; a\\b [x](y) @ref ~ `raw` // end"
PRINTED = date(2026, 5, 3)
MONDAY = datetime(2026, 3, 2, 19, 30).astimezone()  # by the clock in the shed

TEXT = """\
book: club-engine
title: Club engine (invented)
prints: inch
parts:
  case: {name: Main case, mark: P1, group: engine}
  head: {name: Head, mark: P2, group: engine, sits-on: case}
  cover: {name: Side cover, mark: P3, group: engine, sits-on: case}
  liner: {name: Liner, mark: P4, group: engine, sits-on: case, each: ["1", "2"]}
  pump: {name: Pump, mark: P5, group: fuel, sits-on: case, each: [left, right], set: pumps}
  pipe: {name: Pipe <thin> & long, mark: P6, group: fuel, sits-on: pump}
joints:
  head-joint:
    {name: head to case, mark: J1, between: [head, case], seals: [coolant, combustion],
     on-paint: yes, open: 40 min, close: 60 min, reaches: [liner], dangers: [asbestos]}
  cover-joint:
    {name: side cover to case, mark: J2, between: [cover, case], seals: oil, on-paint: yes,
     open: 25 min, close: 50 min}
  pump-joint: {name: pump to case, between: [pump, case], seals: oil, open: 20 min, close: 20 min}
  pipe-joint:
    {name: pipe to head, mark: J4, between: [pipe, head], seals: fuel, open: 5 min, close: 5 min}
  cover-tap:
    {name: drain tap in side cover, mark: J5, between: [cover, case], seals: oil, on-paint: yes,
     open: 5 min, close: 5 min}
sets:
  pumps: {name: Pumps as a pair, same: [maker], proof: bench sheet}
figures:
  bore:
    name: liner bore
    mark: F1
    of: liner
    new: 5.7500 .. 5.7510 in
    limit: max 5.7600 in
    at: {depths: [top, middle, bottom], across: [thrust, pin]}
    with: bore gauge
    sizes: [+0.020 in, +0.040 in]
    nominal: 5.7500 in
    page: 41
  taper: {name: liner taper, mark: F2, of: liner, new: 0 .. 0.001 in, limit: max 0.0050 in,
          derive: {taper-of: bore}, if-outside: bore or new liner}
  end-float: {name: end float, mark: F3, of: case, new: 0.004 .. 0.008 in, limit: max 0.012 in,
              with: dial gauge}
  lift: {name: valve lift, mark: F4, of: head, new: 0.300 .. 0.310 in, limit: min 0.290 in}
settings:
  idle: {name: idle speed, mark: F5, of: case, new: 580 .. 620 rpm, with: hand tachometer}
cautions:
  asbestos:
    {name: Asbestos in old gaskets, dangers: [asbestos], do: Wet it first, never: no air gun,
     defer: the waste authority, source: common practice no source}
  rollover:
    {name: No roll bar, stays: yes, do: low gear, never: no passengers,
     defer: the bar's maker}
  battery: {name: Battery acid, do: goggles, never: no sparks}
gates:
  paint:
    name: paint
    joints: paint joints dry
    points: {degreased: {ask: Is it degreased?}}
  road:
    name: road
    points:
      linings: {ask: Are the gaskets proved?, answers: [new, tested], before-closing: [asbestos]}
"""
BARE = "book: bare\ntitle: Bare engine\nparts: {case: {name: Main case}}\n"

LINER_1 = ["5.7592", "5.7554", "5.7532", "5.7568", "5.7546", "5.7528"]
BORED = ["5.7701", "5.7700", "5.7700", "5.7700", "5.7699", "5.7700"]
