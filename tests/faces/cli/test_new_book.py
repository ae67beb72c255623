import re

STARTED = "shimstock book start my-tractor --extends two-cylinder-diesel"


def test_a_started_book_has_no_faults_and_is_never_overwritten(in_demo, run, tmp_path):
    first = run(STARTED)
    text = (tmp_path / "my-tractor.yaml").read_text()

    assert first.code == 0
    assert run("shimstock book check my-tractor.yaml").code == 0

    again = run(STARTED)
    assert again.code == 1
    assert "my-tractor.yaml is there already" in again.err
    assert (tmp_path / "my-tractor.yaml").read_text() == text


def test_every_line_that_waits_to_be_filled_in_is_right(in_demo, run, tmp_path):
    run(STARTED)
    book = tmp_path / "my-tractor.yaml"
    filled = re.sub(r"(?m)^#(?=  +[a-z][a-z0-9-]*:)(?!  name-of)", "", book.read_text())
    book.write_text(re.sub(r"(?m)^(    page:)$", r"\1 12", filled))

    ran = run("shimstock book check my-tractor.yaml")

    assert ran.code == 0, ran.out
    assert "of which 0 are stand-in figures" in " ".join(ran.out.split())


def test_faults_are_all_shown_with_their_line_and_end_with_1(in_demo, run, tmp_path):
    (tmp_path / "bad.yaml").write_text(
        "book: bad\ntitle: Bad\nextends: two-cylinder-diesel\n"
        "figures:\n  liner-bore:\n    page: 3\n    lmit: max 5.76 in\n"
        "joints:\n  bonnet:\n    hands: many\n"
    )

    ran = run("shimstock book check bad.yaml")

    assert ran.code == 1
    assert "bad.yaml:7" in ran.out
    assert "bad.yaml:10" in ran.out
    assert "2 faults" in ran.out
