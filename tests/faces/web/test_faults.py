"""The pages of the search for a fault: what shows, what it can be, the check, and how it ended."""

import json
import re
from dataclasses import replace
from itertools import product

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from shimstock.trade.machine.starters import starter_text
from shimstock.workshop import acts
from shimstock.workshop.fault_search.again import look_again
from shimstock.workshop.looking import see
from workshop.shed_book import MONDAY, TEXT

FAULTS = """
causes:
  battery-weak:
    name: Battery weak
    mark: C1
    part: case
    prior: common
    check: {do: measure it while cranking, minutes: 5 min, needs: [voltmeter], dangers: [spring]}
    points-to: under 9 V
    points-away: over 10 V
  thrust-worn:
    name: Thrust worn
    mark: C2
    part: case
    prior: occasional
    check: {do: dial at the shaft end, minutes: 10 min}
    figures: [end-float]
  pump-worn:
    name: Pump worn
    mark: C3
    part: pump
    prior: rare
    check: {do: look at its plunger, minutes: 15 min, open: [cover-joint], hands: 2}
signs:
  smoke:
    name: White smoke, will not catch
    mark: S1
    said: smokes and nearly goes
    where: case
    causes: {battery-weak: strong, pump-worn: medium, thrust-worn: weak}
  knock:
    name: Knock
    mark: S2
    where: pump
    causes: {thrust-worn: strong}
cautions:
  springs:
    name: Springs under load
    dangers: [spring]
    do: Let it down evenly.
    never: Never cut it.
    defer: somebody with the fixture
"""
PAGE = "/m/grey/faults/1/"


@pytest.fixture
def machine(db, settings):
    settings.SERVING = replace(settings.SERVING, who="Ann")
    acts.add_machine(slug="grey", name="The grey one", book_text=TEXT + FAULTS, who="Ann",
                     at=MONDAY)  # fmt: skip
    return see("grey").row


@pytest.fixture
def begun(machine):
    acts.begin_search(machine="grey", about="will not catch", who="Ann")


@pytest.fixture
def smoking(begun):
    acts.say_in_search(machine="grey", said={"sign:smoke": "seen"}, who="Ann")


@pytest.fixture
def send(client):
    """Send a form of a page with what it holds, filled in."""

    def send(address=PAGE, *, page=None, **typed):
        text = (page or client.get(address)).content.decode()
        form = re.search(r'name="form" value="([^"]+)"', text)
        seen = re.search(r'name="seen" value="(\d+)"', text)
        hidden = {"form": form[1]} | ({"seen": seen[1]} if seen else {})
        named = {name.replace("__", ":").replace("_", "-"): each for name, each in typed.items()}
        return client.post(address.partition("?")[0], hidden | named)

    return send


def text_of(answer):
    """What one reads, without the markup."""
    body = re.sub(r"(?s)<(style|script|svg)\b.*?</\1>", "", answer.content.decode())
    said = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", body))
    return said.replace("&#x27;", "'").replace("&#39;", "'").replace("&quot;", '"')


def read(client, address=PAGE):
    answer = client.get(address)
    assert answer.status_code == 200
    return text_of(answer)


def last_said():
    return see("grey").row.diary.last().says


def test_a_search_is_begun_in_ones_own_words_and_is_found_again(machine, send, client):
    answer = send("/m/grey/faults/", about="smokes white")

    assert answer.url == "/m/grey/faults/newest/?q=smokes+white#signs"
    assert client.get(answer.url).url == f"{PAGE}?q=smokes+white#signs"
    assert 'name="sign:smoke" value="seen"' in client.get(f"{PAGE}?q=smokes+white").content.decode()
    assert "Smokes white" in read(client)
    assert re.search(r"Goes on 1 smokes white", read(client, "/m/grey/faults/"))


def test_the_search_is_found_from_machine_shed_part_and_joint(machine, client):
    for page in ("/", "/m/grey/", "/m/grey/part/pump/", "/m/grey/joint/J2/"):
        assert 'href="/m/grey/faults/"' in client.get(page).content.decode(), page


def test_a_sign_on_a_part_of_the_drawing_begins_a_search_with_it(machine, send, client):
    assert 'href="/m/grey/faults/pick/knock/"' in client.get("/m/grey/part/pump/").content.decode()
    at = client.get("/m/grey/faults/pick/knock/").url
    assert at == "/m/grey/faults/?q=S2#signs"
    assert 'name="about" maxlength="200" autocomplete="off" value="Knock"' in (
        client.get(at).content.decode()
    )
    begun = send(at, about="Knock", q="S2")

    on = client.get(begun.url)
    assert on.url == f"{PAGE}?q=S2#signs"
    page = client.get(on.url).content.decode()
    assert 'name="sign:knock" value="seen"' in page
    assert 'name="sign:smoke" value="seen"' not in page


def test_a_sign_on_a_part_goes_into_the_search_that_goes_on(begun, client):
    assert client.get("/m/grey/faults/pick/knock/").url == f"{PAGE}?q=S2#signs"
    assert client.get("/m/grey/faults/pick/rattle/").status_code == 404


def test_a_book_without_signs_offers_no_search(pages):
    assert "Find a fault" not in text_of(pages.get("/m/grey/"))
    assert "lists no signs of faults" in text_of(pages.get("/m/grey/faults/"))


def test_every_sign_can_be_said_with_three_words_and_how_a_person_says_it(begun, client):
    page = client.get(PAGE).content.decode()

    assert "“smokes and nearly goes”" in page
    for word in ("seen", "not seen", "not looked"):
        assert f'type="radio" name="sign:smoke" value="{word}"' in page


def test_signs_are_found_by_a_word(begun, client):
    found = client.get(f"{PAGE}?q=nearly").content.decode()

    assert 'name="sign:smoke"' in found
    assert 'name="sign:knock"' not in found
    assert "No sign has “brass”" in read(client, f"{PAGE}?q=brass")


def test_several_signs_in_one_sending_and_only_what_changed(smoking, send):
    answer = send(do="say", was__sign__smoke="seen", sign__smoke="seen",
                  was__sign__knock="not looked", sign__knock="not seen")  # fmt: skip

    assert answer.status_code == 302
    assert last_said() == "Search 1: Knock (S2): not seen."


def test_what_another_said_meanwhile_stays_where_ones_own_form_was_not_touched(smoking, send):
    acts.say_in_search(machine="grey", said={"sign:knock": "seen"}, who="Bo")

    answer = send(do="say", was__sign__smoke="seen", sign__smoke="not seen",
                  was__sign__knock="not looked", sign__knock="not looked")  # fmt: skip

    assert answer.status_code == 302
    assert last_said() == "Search 1: White smoke, will not catch (S1): not seen."


def test_a_sending_that_says_nothing_new_is_refused(smoking, send):
    answer = send(do="say", was__sign__smoke="seen", sign__smoke="seen")

    assert answer.status_code == 422
    assert "says nothing new" in text_of(answer)


def test_chances_are_those_of_the_noisy_or_by_counting_out_every_case(smoking, client):
    """Noisy-OR, Pearl 1988: all eight cases added up by hand, with the book's numbers."""
    priors = {"C1": 0.10, "C2": 0.03, "C3": 0.01}  # common, occasional, rare
    weights, leak = {"C1": 0.8, "C2": 0.1, "C3": 0.4}, 0.02  # strong, weak, medium
    whole, share = 0.0, dict.fromkeys(priors, 0.0)
    for there in product((True, False), repeat=3):
        case = dict(zip(priors, there, strict=True))
        chance, quiet = 1.0, 1 - leak
        for cause, present in case.items():
            chance *= priors[cause] if present else 1 - priors[cause]
            quiet *= 1 - weights[cause] if present else 1
        whole += chance * (1 - quiet)
        for cause, present in case.items():
            share[cause] += chance * (1 - quiet) if present else 0

    shown = read(client)
    for mark, name in (("C1", "Battery weak"), ("C2", "Thrust worn"), ("C3", "Pump worn")):
        said = f"{100 * share[mark] / whole:.0f} %"
        assert re.search(rf"{mark} {name} stand-in {said} ", shown), (mark, said)


def test_a_bar_is_drawn_with_its_interval_and_the_numbers_beside_it(smoking, client):
    page = client.get(PAGE).content.decode()
    drawn = re.search(
        r'class="now" y="7" width="([\d.]+)%".*?class="span" x1="([\d.]+)%" x2="([\d.]+)%"', page
    )
    now, low, high = map(float, drawn.groups())

    assert low < now < high
    assert f"{now:.0f} %</strong>" in page
    assert f"{low:.0f} to {high:.0f} %" in page


def test_where_no_interval_is_known_none_is_drawn(smoking, client, monkeypatch):
    monkeypatch.setattr("shimstock.trade.faults.interval.intervals", lambda *_: {})
    page = client.get(PAGE)

    assert 'class="span"' not in page.content.decode()
    assert "no interval" in text_of(page)


def test_cautions_stand_before_the_action_and_first_what_never_to_do(smoking, client):
    shown = read(client, f"{PAGE}?check=cause:battery-weak")

    caution = "Springs under load Never cut it. Let it down evenly. Ask: somebody with the fixture"
    assert shown.index(caution) < shown.index("Measure it while cranking.")
    assert shown.index("go before everything said here") < shown.rindex("Next check")
    assert "It is this under 9 V It is not over 10 V" in shown
    assert "Needs voltmeter" in shown


def test_what_to_do_stands_before_what_it_is_worth(smoking, client):
    shown = read(client, f"{PAGE}?check=cause:battery-weak")

    assert shown.index("Measure it while cranking.") < shown.index("Finds it")


@pytest.fixture
def running_away(db, settings):
    settings.SERVING = replace(settings.SERVING, who="Ann")
    acts.add_machine(slug="grey", name="The grey one", who="Ann", at=MONDAY,
                     book_text=starter_text("two-cylinder-diesel"))  # fmt: skip
    acts.begin_search(machine="grey", about="will not stop", who="Ann")
    acts.say_in_search(machine="grey", said={"S10": "seen"}, who="Ann")


def test_what_must_not_be_run_is_said_above_the_check_which_is_done_standing(running_away, client):
    shown = read(client)

    must_not = "The engine must not turn or run while Engine will not stop, or runs away (S10)"
    assert shown.index("Runaway diesel") < shown.index(must_not) < shown.rindex("Next check")
    assert "Do The engine standing, look at the level of the bath" in shown


def test_a_free_sign_that_is_asked_has_its_caution_on_the_page(running_away, send, client):
    send(do="say", sign__hunts="seen", **{"sign__will-not-stop": "not looked"})
    asked = read(client).partition("Look first: it costs nothing")[2].partition("Told")[0]

    assert "Fast idle too high, or it overspeeds" in asked
    assert "Runaway diesel Never a hand or a rag on the inlet" in asked


def test_what_changes_the_order_says_what_would_be_most_likely(smoking, client):
    changes = read(client).partition("What would change the order")[2]

    assert "would be most likely" in changes and "would be first" not in changes


def test_a_search_like_one_that_goes_on_points_to_it(smoking, send, client):
    acts.begin_search(machine="grey", about="Will not catch", who="Bert")

    assert "One like it goes on: search 1" in read(client, "/m/grey/faults/2/")
    assert "One like it" not in read(client).partition("Who said what")[0]


def test_the_joints_to_be_opened_are_named_in_order_with_their_pages(begun, client):
    acts.say_in_search(machine="grey", said={"sign:smoke": "seen"}, who="Ann")
    acts.set_at_hand(machine="grey", people=2, who="Ann")
    page = client.get(f"{PAGE}?check=cause:pump-worn")

    assert re.search(r"in this order J1 hood to case 10 min J2 side cover to case 25 min",
                     text_of(page))  # fmt: skip
    assert '<a href="/m/grey/joint/cover-joint/">' in page.content.decode()
    assert "50 min = 15 min to check + 35 min to open" in text_of(page)
    assert "People 2" in text_of(page)


def test_stop_here_and_open_it_is_offered_where_it_finds_it_one_time_in_ten(smoking, send, client):
    """With the battery still in question the pump is it in 3 of 100, and not worth a line."""
    seldom = read(client)
    send(do="say", cause__battery_weak="cleared", cause__thrust_worn="cleared")
    pump = read(client)

    assert "Stop here and open it" not in seldom
    assert "Stop here and open it" in pump


def test_it_is_not_this_takes_the_cause_out(smoking, send, client):
    page = client.get(f"{PAGE}?check=cause:battery-weak").content.decode()
    assert re.search(r'name="cause:battery-weak" value="there".{,90}>It is this', page)
    assert re.search(r'name="cause:battery-weak" value="cleared".{,90}>It is not this', page)

    send(do="say", cause__battery_weak="cleared")

    assert not re.search(r"C1 Battery weak stand-in \d", read(client))
    assert "Battery weak: cleared Ann," in read(client)


def test_it_is_this_is_known_from_then_on(smoking, send, client):
    send(do="say", cause__battery_weak="there")

    assert re.search(r"Known to be there \(1\) C1 Battery weak", read(client))


def test_a_check_with_a_figure_leads_to_its_reading_and_back(smoking, client, send):
    page = client.get(f"{PAGE}?check=cause:thrust-worn").content.decode()
    reading = "/m/grey/reading/end-float/?search=1"
    assert f'href="{reading}"' in page
    assert f'href="{PAGE}">Back to the search' in client.get(reading).content.decode()

    sheet = client.get(reading).content.decode()
    assert 'href="?stage=as%20finished&amp;search=1"' in sheet
    action = re.search(r'method="post" action="([^"]+)" class="reading"', sheet)[1]
    form = re.search(r'class="reading"(?s:.*?)name="form" value="([^"]+)"', sheet)[1]
    sent = {"form": form, "stage": "as found", "value": "0.015"}
    taken = client.post(action.replace("&amp;", "&"), sent)
    assert "search=1" in taken.url
    assert f'href="{PAGE}">Back to the search' in client.get(taken.url).content.decode()

    back = read(client)
    assert re.search(r"Known to be there \(1\) C2 Thrust worn end float \(F3\): 0\.015", back)
    assert "From readings in the book (1) Thrust worn: there" in back


def test_a_helper_under_age_is_offered_nothing_dangerous(smoking, send, client):
    send(do="at-hand", people="1", young="on")

    page = client.get(f"{PAGE}?check=cause:battery-weak")
    assert "Never cut it" not in text_of(page)
    assert "Battery weak (C1): not for a helper under age" in text_of(page)


def test_what_is_not_at_hand_and_too_few_people_are_said(smoking, send, client):
    send(do="at-hand", people="1", missing="voltmeter")

    assert "Battery weak (C1): needs what is not at hand: voltmeter" in read(client)
    assert "Pump worn (C3): needs 2 people" in read(client)


def test_a_free_sign_worth_asking_comes_before_the_check(smoking, client):
    acts.say_in_search(machine="grey", said={"cause:battery-weak": "cleared"}, who="Ann")
    shown = read(client)

    assert shown.index("Look first") < shown.index("S2 Knock") < shown.rindex("Next check")


def test_why_says_what_speaks_for_a_cause(smoking, client):
    assert re.search(r"White smoke, will not catch \(S1\), seen: speaks (strongly )?for",
                     read(client))  # fmt: skip
    working = read(client, f"{PAGE}why/battery-weak/")
    assert "p = 0.1; the book's prior" in working
    assert "White smoke, will not catch (S1), seen: speaks" in working


def test_what_cannot_be_true_is_said_and_nothing_is_ranked(smoking, client):
    text = (TEXT + FAULTS).replace("{battery-weak: strong,", "{battery-weak: 1.0,")
    acts.change_book(machine="grey", book_text=text, who="Ann")
    acts.say_in_search(
        machine="grey", said={"sign:smoke": "not seen", "cause:battery-weak": "there"}, who="Ann"
    )

    shown = read(client)
    assert "It does not add up" in shown
    assert "Next check" not in shown


def test_before_it_is_found_the_page_says_what_that_counts_for(smoking, client):
    """Counts over the book's prior, worth 20 machines: (0.1·20 + 1)/(20 + 1) = 14 %."""
    assert "Battery weak (10 % → 14 %)" in read(client)


def test_found_and_put_right_ends_it_and_counts(smoking, send, client):
    send(do="found", cause="battery-weak", how="new battery")

    assert "Found and put right: Battery weak (C1), new battery." in last_said()
    assert "Take it up again" in read(client)
    assert re.search(r"Ended 1 will not catch Ann, .* Found : Battery weak",
                     read(client, "/m/grey/faults/"))  # fmt: skip
    assert re.search(r"Battery weak found 1 of 1 looked at held to be there in 14 % , by the "
                     r"book 10 %", read(client, "/faults/"))  # fmt: skip


def test_what_was_found_is_chosen_and_never_guessed(smoking, client):
    chosen = re.compile(r'<option value="([^"]*)" selected')
    assert chosen.findall(client.get(PAGE).content.decode()) == []

    led = client.get(f"{PAGE}?found=pump-worn").content.decode()

    assert chosen.findall(led) == ["pump-worn"]
    assert '<details class="card" id="found" open>' in led
    acts.say_in_search(machine="grey", said={"cause:battery-weak": "there"}, who="Ann")
    confirmed = client.get(PAGE).content.decode()
    assert chosen.findall(confirmed) == ["battery-weak"]
    assert 'href="?found=battery-weak#found"' in confirmed


def test_found_with_more_to_find_goes_on(smoking, send, client):
    send(do="found", cause="battery-weak", more="on")

    assert "Goes on" in read(client)
    assert "Battery weak: cleared" in read(client)


def test_given_up_and_taken_up_again(smoking, send, client):
    send(do="give-up")
    assert "Given up" in read(client)
    send(do="take-up")

    assert "Goes on" in read(client)
    assert "White smoke, will not catch: seen" in read(client)


def test_what_was_said_is_taken_back_by_a_tap_and_can_be_undone(smoking, send, client):
    entry = see("grey").row.diary.last().pk
    assert f'href="/m/grey/diary/{entry}/undo/"' in client.get(PAGE).content.decode()

    send(do="say", sign__smoke="not looked")

    assert "Nobody has said anything yet" in read(client)


def test_an_undone_entry_is_struck_out_and_offers_no_undo(smoking, client):
    entry = see("grey").row.diary.last().pk
    acts.undo(entry_id=entry, who="Ann")
    page = client.get(PAGE).content.decode()

    assert re.search(r"<s>Search 1: White smoke[^<]*</s> undone", page)
    assert f'href="/m/grey/diary/{entry}/undo/"' not in page


def test_a_form_that_comes_twice_is_done_once(smoking, send, client):
    page = client.get(PAGE)
    send(page=page, do="say", sign__knock="seen")
    before = see("grey").latest

    assert send(page=page, do="say", sign__knock="seen").status_code == 302
    assert see("grey").latest == before


def test_the_second_of_two_people_sees_what_changed_and_decides(smoking, send, client):
    page = client.get(PAGE)
    acts.say_in_search(machine="grey", said={"sign:knock": "not seen"}, who="Bo")

    answer = send(page=page, do="say", sign__knock="seen")
    assert answer.status_code == 422
    assert "Bo: Search 1: Knock (S2): not seen." in text_of(answer)
    chosen = r'name="sign:knock" value="seen" checked'
    assert re.search(chosen, answer.content.decode())

    send(page=answer, do="say", sign__knock="seen")
    assert last_said() == "Search 1: Knock (S2): seen."


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ({"do": "paint"}, "There is no work in a search 'paint'"),
        ({"do": "at-hand", "people": "two"}, "two is no number of people. Would do: 2"),
        ({"do": "at-hand", "people": "0"}, "0 people can check nothing"),
        ({"do": "at-hand", "people": "1", "missing": "anvil"}, "anvil"),
        ({"do": "say", "sign__smoke": "perhaps"}, "'perhaps' cannot be said of White smoke"),
        ({"do": "say", "sign__steam": "seen"}, "steam"),
        ({"do": "found", "cause": "ghosts"}, "ghosts"),
        ({"do": "take-up"}, "goes on still"),
    ],
)
def test_what_is_not_understood_is_said_and_nothing_is_written(smoking, send, typed, says):
    before = see("grey").latest

    answer = send(**typed)

    assert answer.status_code == 422
    assert says in text_of(answer)
    assert see("grey").latest == before


def test_what_speaks_for_and_against_has_a_shape_and_a_word_of_its_own(smoking, client):
    """Not the + and − of folds."""
    acts.say_in_search(machine="grey", said={"sign:knock": "not seen"}, who="Ann")

    assert "▲ For: White smoke, will not catch (S1), seen: speaks" in read(client)
    why = read(client, f"{PAGE}why/thrust-worn/")
    assert "▲ For: White smoke, will not catch (S1), seen: speaks" in why
    assert "▽ Against: Knock (S2), not seen: speaks" in why


def test_why_says_in_words_that_somebody_cleared_or_confirmed_it(smoking, client):
    said = {"cause:battery-weak": "cleared", "cause:pump-worn": "there"}
    acts.say_in_search(machine="grey", said=said, who="Ann")

    cleared = read(client, f"{PAGE}why/battery-weak/")
    assert "Cleared: it is not there (Ann, " in cleared
    assert "Battery weak (C1), cleared: that settles it" in cleared
    assert "Chance now" not in cleared
    assert "Confirmed: it is there (Ann, " in read(client, f"{PAGE}why/pump-worn/")


@pytest.mark.parametrize("people", ["0", "-2", "21", "999"])
def test_so_many_people_are_not_taken(begun, send, people):
    answer = send(do="at-hand", people=people)

    assert answer.status_code == 422
    assert see("grey").row.searches.get().people == 1


@pytest.mark.parametrize("address", ["/m/grey/faults/7/", f"{PAGE}why/ghosts/"])
def test_what_is_not_there(begun, client, address):
    assert client.get(address).status_code == 404


def test_what_was_worked_out_is_kept_until_something_is_said_or_counted(smoking):
    """The same machine as it stands: every entry in its diary makes another."""
    seen = see("grey")
    row = seen.row.searches.get()
    first = look_again(seen, row)
    assert look_again(seen, row) is first

    acts.import_counts(label="North", text=json.dumps(COUNTS), who="Ann")
    counted = look_again(seen, row)
    assert counted is not first
    assert counted.network.causes["battery-weak"] > first.network.causes["battery-weak"]

    acts.say_in_search(machine="grey", said={"sign:knock": "seen"}, who="Bo")
    assert "knock" in look_again(see("grey"), row).given.findings


COUNTS = {"form": "shimstock fault counts 1",
          "causes": {"battery-weak": {"confirmed": 3, "looked": 10}}}  # fmt: skip


@pytest.fixture
def taken_in(smoking, client, send):
    def taken_in(data, **typed):
        file = SimpleUploadedFile("counts.json", data if isinstance(data, bytes)
                                  else json.dumps(data).encode())  # fmt: skip
        return send("/faults/", do="take-in", label="North shed", file=file, **typed)

    return taken_in


def test_counts_of_another_workshop_move_the_priors_and_are_taken_back(taken_in, send, client):
    """(0.1·20 + 3)/(20 + 10) = 17 %, by hand."""
    before = read(client)
    assert taken_in(COUNTS).status_code == 302
    assert "found 3 of 10 looked at held to be there in 17 %" in read(client, "/faults/")
    assert read(client) != before

    send("/faults/", do="take-back", label="North shed")
    assert "Nothing was found and put right yet" in read(client, "/faults/")
    assert read(client) == before


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"not JSON", "The counts are no JSON"),
        (b"\xff\xfe", "counts.json is no text. Would do: a file of counts"),
        ({"form": "else"}, "The file says form 'else'"),
        ({**COUNTS, "causes": {"battery-weak": {"confirmed": 3, "looked": 1}}}, "found 3 times"),
    ],
)
def test_a_faulty_file_of_counts_is_said(taken_in, data, says, client):
    answer = taken_in(data)

    assert answer.status_code == 422
    assert says in text_of(answer)
    assert 'value="North shed"' in answer.content.decode()
    assert "North shed" not in read(client, "/faults/")


def test_a_newer_file_of_counts_needs_no_name_and_counts_nothing_twice(taken_in, send, client):
    taken_in({**COUNTS, "workshop": "a1", "written": "2026-03-01T12:00:00Z"})
    newer = {"form": COUNTS["form"], "workshop": "a1", "written": "2026-04-01T12:00:00Z",
             "causes": {"battery-weak": {"confirmed": 4, "looked": 11}}}  # fmt: skip
    file = SimpleUploadedFile("counts.json", json.dumps(newer).encode())

    assert send("/faults/", do="take-in", label="", file=file).status_code == 302
    assert "North shed 1 cause, found 4 of 11 looked at" in read(client, "/faults/")
    assert taken_in({**newer, "written": "2026-02-01T12:00:00Z"}).status_code == 422


def test_ones_own_counts_are_refused(smoking, taken_in, send, client):
    send(do="found", cause="battery-weak")
    answer = taken_in(client.get("/faults/counts.json").content)

    assert answer.status_code == 422
    assert "this workshop's own counts" in text_of(answer)


def test_counts_that_do_not_say_whose_they_are_are_asked_about(taken_in, send, client):
    taken_in(COUNTS)
    assert "did not say whose it is" in read(client, "/faults/")
    file = SimpleUploadedFile("counts.json", json.dumps(COUNTS).encode())
    asked = send("/faults/", do="take-in", label="South shed", file=file)
    assert asked.status_code == 422
    assert 'name="meant"' in asked.content.decode()

    file.seek(0)
    send("/faults/", do="take-in", label="South shed", file=file, meant="1")
    assert "South shed 1 cause" in read(client, "/faults/")


def test_counts_are_saved_as_a_file_without_what_came_from_others(taken_in, send, client):
    taken_in({**COUNTS, "causes": {"pump-worn": {"confirmed": 1, "looked": 1}}})
    send(do="found", cause="battery-weak")

    answer = client.get("/faults/counts.json")
    assert 'filename="fault-counts.json"' in answer.headers["Content-Disposition"]
    assert json.loads(answer.content)["causes"] == {"battery-weak": {"confirmed": 1, "looked": 1}}


def test_the_pages_ask_the_database_little(smoking, client, django_assert_max_num_queries):
    for address in (PAGE, "/m/grey/faults/", "/faults/", f"{PAGE}why/battery-weak/"):
        with django_assert_max_num_queries(12):
            client.get(address)
