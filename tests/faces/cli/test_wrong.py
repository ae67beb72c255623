import pytest

UNDERSTOOD_NOT, REFUSED = 2, 1


def parts(err):
    return [line.split(":")[0] for line in err.splitlines() if not line.startswith(" ")]


@pytest.mark.parametrize(
    ("line", "wrong", "would_do"),
    [
        ("shimstock open brackwater J99", "no joint 'J99'", "J39"),
        ("shimstock open brackwatr J36", "no machine 'brackwatr'", "brackwater"),
        ("shimstock reach brackwater govenor-gear", "'govenor-gear'", "governor-gear"),
        ("shimstock read brackwater F0450 0.01", "no figure 'F0450'", "F045"),
        ("shimstock read brackwater F045 abc", "abc has no number", "5.7592"),
        ("shimstock read brackwater lost-motion 12psi", "is a pressure", "mm"),
        ("shimstock part brackwater liner 3 off", "no piece", "1 or 2"),
        ("shimstock part brackwater fan borrowed", "no state of a part 'borrowed'", ""),
        ("shimstock leak brackwater J36 soggy", "'soggy'", "dry"),
        ("shimstock book start x --extends steam", "no starter 'steam'", "petrol-crawler"),
        ("shimstock opne brackwater J36", "opne", "shimstock --help"),
        ("shimstock open", "MACHINE", "shimstock open --help"),
        ("shimstock read brackwater F045 0.01 --finishd", "--finishd", "read --help"),
        ("shimstock machine add x --book nowhere.yaml", "nowhere.yaml", "can be read"),
        ("shimstock machine add x --book petrol-crawler --serial 12", "'12'", "--help"),
        ("shimstock undo 999999", "no entry in the diary", ""),
    ],
)
def test_what_is_not_understood_is_said_in_three_parts(line, wrong, would_do, in_demo, run):
    ran = run(line)

    assert ran.code == UNDERSTOOD_NOT, ran.err
    assert ran.out == ""
    assert parts(ran.err) == ["Typed", "Wrong", "Would do"]
    typed, said = ran.err.split("Wrong:")
    assert " ".join(typed.split()) == f"Typed: {line}"
    said, would = said.split("Would do:")
    assert wrong in " ".join(said.split())
    assert would_do in " ".join(would.split())


@pytest.mark.parametrize(
    ("line", "reason"),
    [
        ("shimstock cover brackwater J59", "open it first"),
        ("shimstock accept brackwater steering-free-movement --reason fine", "nothing to accept"),
        ("shimstock machine add brackwater --book petrol-crawler", "here already"),
    ],
)
def test_what_is_refused_ends_with_1_and_its_reason(line, reason, in_demo, run):
    ran = run(line)

    assert ran.code == REFUSED, ran.err
    assert ran.out == ""
    assert reason in " ".join(ran.err.split())


def test_with_json_an_error_leaves_stdout_empty(in_demo, run):
    ran = run("shimstock open brackwater J99 --json")

    assert (ran.code, ran.out) == (UNDERSTOOD_NOT, "")
    assert "J99" in ran.err


def test_an_error_nobody_foresaw_is_not_hidden(in_demo, run, monkeypatch):
    from shimstock.workshop import acts

    monkeypatch.setattr(acts, "cover_joint", lambda **_: 1 / 0)

    with pytest.raises(ZeroDivisionError):
        run("shimstock cover brackwater J36")
