"""What was written down of a joint is told again where it matters."""

import json


def words(text: str) -> str:
    return " ".join(text.split())


def test_a_joint_that_leaks_is_not_to_be_run_on(in_demo, run):
    unsafe = json.loads(run("shimstock machine show brackwater --json").out)["unsafe"]

    assert "Timing gear side cover to main case (J36) leaks: do not run on it" in unsafe


def test_what_lies_ready_is_not_ordered_again(in_demo, run):
    before = words(run("shimstock overhaul brackwater").out)
    run("shimstock ready brackwater J32 --gasket 'crankcase top cover gasket (cork)'")
    after = words(run("shimstock overhaul brackwater").out)

    assert "1 × crankcase top cover gasket (cork)" in before
    assert "× crankcase top cover gasket (cork)" not in after
    assert "× oil pump plate gasket" not in before  # it lies ready in the invented shed


def test_the_gasket_that_was_found_is_taken_off_the_lash(in_demo, run):
    links = json.loads(run("shimstock play brackwater fan-drive --json").out)["links"]

    (mesh,) = [link for link in links if link["figure"] == "governor-mesh-lash"]
    assert "the gasket adds" in mesh["says"]


def test_what_is_worn_comes_before_what_is_doubtful_and_that_before_the_rest(in_demo, run):
    told = json.loads(run("shimstock verdicts brackwater --json").out)["verdicts"]
    order = ["worn out", "borderline", "serviceable", "good"]

    places = [order.index(each["verdict"]) for each in told if each["verdict"] in order]
    assert set(places) == {0, 1, 2, 3}
    assert places == sorted(places)


def test_the_list_counts_what_stands_open_and_what_is_worn(in_demo, run):
    (machine,) = [
        each
        for each in json.loads(run("shimstock machine list --json").out)["machines"]
        if each["machine"] == "brackwater"
    ]
    shown = json.loads(run("shimstock machine show brackwater --json").out)
    verdicts = json.loads(run("shimstock verdicts brackwater --json").out)["verdicts"]

    assert machine["open"] == len(shown["open"]) > 0
    latest = {(v["figure"], v["piece"]): v["verdict"] for v in sorted(verdicts, key=stage)}
    assert machine["worn"] == list(latest.values()).count("worn out") > 0


def stage(verdict):
    """As finished comes after as found."""
    return ("as found", "as finished").index(verdict["stage"])


def test_a_book_that_somebody_has_changed_is_not_written_over(tmp_path):
    from shimstock.faces.cli.demo import write_books

    first, *_ = write_books(tmp_path)
    first.write_text("ours", encoding="utf-8")

    assert first in write_books(tmp_path)
    assert first.read_text(encoding="utf-8") == "ours"


def test_what_is_out_of_setting_is_not_called_worn(in_demo, run):
    shown = words(run("shimstock overhaul brackwater").out)

    assert "9 worn out, 2 out of setting, 1 too much in all" in shown


def test_a_gate_says_of_each_danger_what_to_do_and_what_never(in_demo, run):
    shown = run("shimstock gate brackwater paint").out

    caution = shown[shown.index("CAUTION: Diesel injected") :].splitlines()
    assert caution[1].startswith("  ") and "Never" not in caution[1]
    assert "  Never feel for a leak by hand." in shown.splitlines()


def test_closing_a_joint_says_how_tight(in_demo, run):
    ran = run("shimstock close brackwater J17 --torqued")

    assert "Fastened by 4 bolts 7/16-14 UNC, 38 lbf.ft (stand-in)" in ran.out


def test_the_diary_shows_what_an_entry_changed(in_demo, run):
    run("shimstock cover brackwater J56")
    plain, told = (
        run(f"shimstock diary brackwater --last 1{x}").out for x in ("", " --before-after")
    )

    assert "covered no -> yes" not in words(plain)
    assert "covered no -> yes" in words(told)


def test_a_newer_starter_is_told_and_not_taken_unasked(in_demo, run, monkeypatch):
    from shimstock.workshop import books

    before = run("shimstock machine show brackwater").out
    monkeypatch.setattr(books, "starter_text", lambda name: "better")
    after = words(run("shimstock machine show brackwater").out)

    assert "Newer texts" not in before
    assert "Newer texts of two-cylinder-diesel and any-tractor came with the program" in after
    assert "shimstock machine book brackwater two-cylinder-diesel" in after
