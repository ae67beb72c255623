"""The addresses of all pages; each page's module lists its own."""

from shimstock.faces.web.pages import (
    bags,
    book,
    chains,
    diary,
    faults,
    gates,
    joint,
    live,
    machine,
    notes,
    papers,
    part,
    people,
    photos,
    reach,
    reading,
    readings,
    shed,
    sums,
)

PAGES = (
    shed, machine, joint, part, reach, reading, readings, chains, faults, gates, sums, diary, book,
    bags, notes, photos, papers, people, live,
)  # fmt: skip

urlpatterns = [address for page in PAGES for address in page.URLS]
