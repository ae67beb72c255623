import json

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
        ("shimstock machine add x --book nowhere.yaml", "nowhere.yaml", "its spelling"),
        ("shimstock machine add x --book petrol-crawler --serial 12", "12 is no", "=40-1187"),
        ("shimstock machine add x --book petrol-crawlr", "'petrol-crawlr'", "petrol-crawler"),
        ("shimstock book start 'My Tractor' --extends any-tractor", "hyphens", "my-tractor"),
        (
            "shimstock book figure brackwater F001 --limit 'max 5.70'",
            "max 5.70 cannot be: limit 'max 5.70 in' lies inside the new range.",
            "are max and min swapped?",
        ),
        (
            "shimstock book figure brackwater F001 --new '' --limit ''",
            "(nothing) as new and as limit leaves no figure of Liner bore",
            "5.7500 .. 5.7512 in and max 5.7600 in",
        ),
        ("shimstock undo 999999", "no entry in the diary", ""),
        (
            "shimstock book figure brackwater F001 --new '5.75 .. 5.751 furlong'",
            "ends in furlong, which is no unit known here",
            "5.75 .. 5.751 in or 5.75 .. 5.751 mm",
        ),
        (
            "shimstock book figure brackwater F001 --limit 'max 5.76 furlong'",
            "ends in furlong, which is no unit known here",
            "max 5.76 in or max 5.76 mm",
        ),
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
        ("shimstock machine add 'Grey Mare' --book petrol-crawler", "grey-mare would do"),
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


@pytest.mark.parametrize("line", ["shimstock", "shimstock book", "shimstock machine"])
def test_without_a_command_the_help_is_shown_as_it_is(line, run):
    ran = run(line)

    assert (ran.code, ran.err) == (UNDERSTOOD_NOT, "")
    assert ran.out.startswith(f"Usage: {line}")
    assert "Example" in ran.out or "To see it work" in ran.out


@pytest.mark.parametrize("path", ["", "book ", "machine "])
def test_no_line_of_the_list_of_commands_is_cut_off(path, run):
    assert "..." not in run(f"shimstock {path}--help").out.split("Commands:")[1]


@pytest.mark.parametrize(
    ("line", "would_do"),
    [
        ("shimstock cover", "for example: shimstock cover brackwater J33"),
        ("shimstock machine show hill", "shimstock machine list"),
        ("shimstock leak brackwater zeppelin dry", "shimstock machine names MACHINE WORD"),
        ("shimstock undo 999999", "shimstock diary MACHINE"),
        ("shimstock part brackwater fan received", "in hand"),
        ("shimstock read brackwater liner-bore 5.7591 5.7556", "type 1 or 2 before the values"),
    ],
)
def test_it_is_said_where_the_right_word_stands(line, would_do, in_demo, run):
    ran = run(line)

    assert ran.code == UNDERSTOOD_NOT
    assert would_do in " ".join(ran.err.split("Would do:")[1].split())


def test_several_reasons_are_numbered_and_so_is_what_would_do(in_demo, run):
    wrong, would = run("shimstock close brackwater J33").err.split("Would do:")

    for part in (wrong.split("Wrong:")[1], would):
        assert part.split()[0] == "1."
        assert "\n          2. " in part


def test_of_very_many_reasons_the_first_are_shown_and_the_others_counted(in_demo, run):
    points = json.loads(run("shimstock gate brackwater first-start --json").out)["gates"][0]["open"]
    ran = run("shimstock gate brackwater first-start --pass")

    assert ran.code == REFUSED
    assert len(points) > 20 and f"and {len(points) - 8} more" in ran.err
    assert len(ran.err.splitlines()) < 50


def test_an_alternative_belongs_to_what_would_do(in_demo, run):
    from shimstock.faces.cli.wrong import explain
    from shimstock.workshop.refused import Refused

    said = explain(
        Refused(["7 where 8 came off; look in the casting; or, where it is wrong, undo"])
    )
    assert said is not None
    assert list(said.wrong) == ["7 where 8 came off."]
    assert list(said.would_do) == ["look in the casting; or, where it is wrong, undo"]

    said = explain(Refused(['Is the oil in?; answer yes, and sign; or "not needed" and why']))

    assert said.wrong == ["Is the oil in?"]
    assert said.would_do == ['answer yes, and sign; or "not needed" and why']


def test_ctrl_c_says_that_nothing_is_lost(in_demo, run, monkeypatch):
    from shimstock.workshop import acts

    def interrupted(**_):
        raise KeyboardInterrupt

    monkeypatch.setattr(acts, "cover_joint", interrupted)

    ran = run("shimstock cover brackwater J36")

    assert (ran.code, ran.out) == (REFUSED, "")
    assert ran.err == "Stopped. What was kept before stays kept.\n"


def test_a_file_that_is_no_text_is_refused_in_words(in_demo, run, tmp_path):
    (tmp_path / "photo.yaml").write_bytes(b"\xff\xd8\xff\xe0")

    ran = run("shimstock book check photo.yaml")

    assert ran.code == UNDERSTOOD_NOT
    assert "not plain text" in ran.err


def test_an_answer_that_settles_nothing_says_what_would(in_demo, run):
    maybe = run("shimstock answer lowmere old-paint maybe")
    settled = run('shimstock answer lowmere old-paint "no old paint"')

    assert "does not settle it; to do: answer tested" in " ".join(maybe.out.split())
    assert "settle" not in settled.out
