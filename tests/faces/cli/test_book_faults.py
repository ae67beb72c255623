"""A book's check says how many causes and signs it has, and how many of them are stand-ins."""

import json

OWN = """\
book: shed
title: Shed (invented)
extends: petrol-crawler
causes:
  gear-loose: {prior: 0.2, page: our own eleven}
"""


def test_stand_ins_among_causes_and_signs_are_counted_until_their_page_is_typed(
    run, tmp_path, monkeypatch
):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "shed.yaml").write_text(OWN, encoding="utf-8")

    starter = json.loads(run("shimstock book check petrol-crawler --json").out)["counts"]
    own = json.loads(run("shimstock book check shed.yaml --json").out)["counts"]

    assert starter["stand_in_faults"] == starter["causes"] + starter["signs"]
    assert own["stand_in_faults"] == starter["stand_in_faults"] - 1
    said = run("shimstock book check shed.yaml").out
    assert f"{own['causes']} causes and {own['signs']} signs of faults" in said
    assert f"of which {own['stand_in_faults']} are stand-ins" in " ".join(said.split())


def test_a_book_that_knows_no_faults_says_nothing_of_them(run):
    assert "signs of faults" not in run("shimstock book check any-tractor").out
