"""What is typed while the shed is out of reach: kept on the phone, sent once, nothing lost."""

import json
import re

import pytest
from playwright.sync_api import expect

from e2e.conftest import PATIENT, PHONE, shimstock

LINER = "/m/brackwater/reading/liner-bore/?piece=1&stage=as%20finished"
SIX = ["5.7703", "5.7702", "5.7701", "5.7702", "5.7701", "5.7700"]
SIX_OTHERS = ["5.7706", "5.7705", "5.7704", "5.7705", "5.7704", "5.7703"]


@pytest.fixture
def field(browser, served):
    """A phone that may lose the network; its console says so, and that is no fault."""
    context = browser.new_context(viewport=PHONE, has_touch=True, base_url=served.address)
    context.set_default_timeout(PATIENT)
    yield context
    context.close()


def type_six(page, values=SIX):
    for box, value in zip(page.locator("input[name=value]").all(), values, strict=True):
        box.fill(value)


def send(page):
    page.get_by_role("button", name="Into the book").click()


def with_one_kept(field):
    """A page that was sent out of reach: its reading is kept on the phone."""
    page = field.new_page()
    page.goto(LINER)
    field.set_offline(True)
    type_six(page)
    send(page)
    expect(page.locator("#kept")).to_contain_text("1 reading is kept")
    return page


def finished(shed):
    """Readings of the liner bore, as finished, that the diary holds."""
    told = json.loads(shimstock(shed, "diary", "brackwater", "--json"))
    return [
        entry["says"]
        for entry in told["entries"]
        if entry["says"].startswith("Read Liner bore (F001), 1, as finished")
    ]


def tried(page):
    """Until the page has given up for now: only then may another send what it keeps."""
    expect(page.locator("form[aria-busy]")).to_have_count(0)


def back_in_reach(context):
    context.set_offline(False)


def test_what_is_sent_out_of_reach_is_kept_and_sent_once_when_back(field, served):
    page = field.new_page()
    page.goto(LINER)
    field.set_offline(True)
    type_six(page)
    send(page)

    bar = page.locator("#kept")
    expect(bar).to_contain_text("1 reading is kept on this phone, not yet in the book")
    expect(bar).to_contain_text("Liner bore (F001), 1, as finished")
    assert finished(served.shed) == []

    back_in_reach(field)
    expect(page.locator(".verdict").filter(has_text="as finished")).to_contain_text("Good")
    expect(page.locator(".said")).to_contain_text("Read Liner bore (F001), 1, as finished")
    expect(bar).to_be_hidden()
    assert len(finished(served.shed)) == 1


def test_what_is_kept_outlives_the_page(field, served):
    page = with_one_kept(field)
    tried(page)
    page.close()
    back_in_reach(field)

    other = field.new_page()
    other.goto("/")

    expect(other.locator("#kept")).to_contain_text(re.compile("In the book now: .*good", re.S))
    expect(other.locator("#kept")).not_to_contain_text("not yet in the book")
    other.locator("#kept").get_by_role("link").click()
    expect(other.locator(".verdict").filter(has_text="as finished")).to_contain_text("Good")
    assert len(finished(served.shed)) == 1


def test_it_is_sent_even_while_the_browser_believes_there_is_no_network(field, served):
    """A laptop without any network still reaches the shed that it serves itself."""
    field.add_init_script("Object.defineProperty(navigator, 'onLine', { get: () => false })")
    page = with_one_kept(field)
    back_in_reach(field)

    expect(page.locator(".verdict").filter(has_text="as finished")).to_contain_text("Good")
    expect(page.locator("#kept")).to_be_hidden()
    assert len(finished(served.shed)) == 1


def test_a_page_that_died_while_sending_does_not_hold_the_others_up(field, served):
    page = with_one_kept(field)
    tried(page)
    page.evaluate(
        """() => localStorage.setItem("kept: sending",
           JSON.stringify({ by: "a page that is gone", until: Date.now() + 6000 }))"""
    )
    back_in_reach(field)

    expect(page.locator("#kept")).to_be_hidden()
    assert len(finished(served.shed)) == 1


def test_two_open_pages_send_it_once(field, served):
    first, second = field.new_page(), field.new_page()
    second.goto("/m/brackwater/readings/")
    first.goto(LINER)
    first.bring_to_front()
    field.set_offline(True)
    type_six(first)
    send(first)
    expect(first.locator("#kept")).to_contain_text("1 reading is kept")
    second.bring_to_front()
    expect(second.locator("#kept")).to_contain_text("1 reading is kept")
    posted: list[str] = []
    field.on("request", lambda asked: asked.method == "POST" and posted.append(asked.url))
    back_in_reach(field)

    expect(second.locator("#kept")).not_to_contain_text("not yet in the book")
    first.bring_to_front()
    expect(first.locator("#kept")).not_to_contain_text("not yet in the book")
    assert len([url for url in posted if "/understood/" not in url]) == 1
    assert len(finished(served.shed)) == 1


def test_an_answer_that_is_lost_does_no_harm(field, served):
    page = field.new_page()
    page.goto(LINER)
    type_six(page)
    lost = []

    def lose_the_first_answer(route):
        if route.request.method == "POST" and not lost:
            lost.append(route.fetch(max_redirects=0))
            route.abort()
        else:
            route.continue_()

    page.route("**/reading/liner-bore/?*", lose_the_first_answer)
    send(page)
    expect(page.locator("#kept")).to_contain_text("1 reading is kept")
    assert len(finished(served.shed)) == 1

    page.evaluate("dispatchEvent(new Event('online'))")

    expect(page.locator(".said")).to_contain_text("This was in the book already")
    assert len(finished(served.shed)) == 1


def test_one_form_with_other_numbers_shows_both_and_loses_neither(field, served):
    page = field.new_page()
    page.goto(LINER)
    key = page.locator("form.reading input[name=form]").input_value()
    type_six(page)
    send(page)
    expect(page.locator(".said")).to_contain_text("Read Liner bore")
    page.evaluate(
        "key => { document.querySelector('form.reading input[name=form]').value = key; }", key
    )
    type_six(page, SIX_OTHERS)
    send(page)

    wrong = page.locator(".wrong")
    expect(wrong).to_contain_text("In the book")
    expect(wrong).to_contain_text(" ".join(SIX))
    expect(wrong).to_contain_text(" ".join(SIX_OTHERS))
    boxes = page.locator("input[name=value]")
    assert [box.input_value() for box in boxes.all()] == SIX_OTHERS
    assert len(finished(served.shed)) == 1


def test_what_the_shed_refuses_stays_and_opens_again_as_typed(field, served):
    page = field.new_page()
    page.goto(LINER)
    field.set_offline(True)
    slipped = ["7.7703", *SIX[1:]]
    type_six(page, slipped)
    send(page)
    expect(page.locator("#kept")).to_contain_text("1 reading is kept")
    tried(page)
    page.close()
    back_in_reach(field)

    other = field.new_page()
    other.goto("/")
    expect(other.locator("#kept")).to_contain_text("a slipped digit?")
    other.get_by_role("button", name="Open it again").click()

    boxes = other.locator("input[name=value]")
    expect(boxes.first).to_have_value("7.7703")
    assert [box.input_value() for box in boxes.all()] == slipped
    boxes.first.fill(SIX[0])
    send(other)
    expect(other.locator(".said")).to_contain_text("Read Liner bore")
    expect(other.locator("#kept")).to_be_hidden()
    assert len(finished(served.shed)) == 1


def test_a_browser_that_keeps_nothing_says_so_before_one_leaves(field, served):
    field.add_init_script(
        "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError') }"
    )
    page = field.new_page()
    page.goto(LINER)
    expect(page.locator("#kept")).to_contain_text("This browser keeps nothing")
    field.set_offline(True)
    type_six(page)
    send(page)
    expect(page.locator("#kept")).to_contain_text("stay on this page until it is sent")

    back_in_reach(field)
    expect(page.locator("#kept")).not_to_contain_text("until it is sent")
    assert len(finished(served.shed)) == 1


def test_what_is_typed_comes_back_after_the_page_is_loaded_anew(field):
    page = field.new_page()
    page.goto(LINER)
    page.locator("input[name=value]").first.fill("5.7703")
    page.reload()

    expect(page.locator("input[name=value]").first).to_have_value("5.7703")


def test_whoever_is_not_signed_in_any_more_is_asked_to_and_loses_nothing(field, served):
    page = field.new_page()
    page.goto(LINER)
    # Any page at an address that ends so: the page to sign in on sends Ida, who is there, on.
    sign_in = "/people/?then=%2Fm%2Fbrackwater%2Freading%2Fliner-bore%2F"
    answer = {"status": 302, "headers": {"Location": sign_in}}
    page.route("**/reading/liner-bore/?*", lambda route: route.fulfill(**answer))
    type_six(page)
    send(page)

    bar = page.locator("#kept")
    expect(bar).to_contain_text("Somebody must sign in on this phone first.")
    expect(bar.get_by_role("link", name="Sign in")).to_have_attribute(
        "href", re.compile(re.escape(sign_in))
    )
    assert finished(served.shed) == []

    page.unroute("**/reading/liner-bore/?*")
    page.evaluate("dispatchEvent(new Event('online'))")
    expect(page.locator(".said")).to_contain_text("Read Liner bore (F001), 1, as finished")
    assert len(finished(served.shed)) == 1


def test_a_shed_that_is_starting_up_is_out_of_reach(field, served):
    page = field.new_page()
    page.goto(LINER)
    page.route("**/reading/liner-bore/?*", lambda route: route.fulfill(status=502))
    type_six(page)
    send(page)

    expect(page.locator("#kept")).to_contain_text("1 reading is kept on this phone")
    assert finished(served.shed) == []


def test_a_form_whose_mark_has_grown_old_is_sent_all_the_same(field, served):
    page = field.new_page()
    page.goto(LINER)
    field.clear_cookies()
    type_six(page)
    send(page)

    expect(page.locator(".said")).to_contain_text("Read Liner bore (F001), 1, as finished")
    assert len(finished(served.shed)) == 1


def test_what_one_person_typed_goes_in_under_no_other_name(field, served):
    """A phone that two share: the other is signed in when the shed is back in reach."""
    page = field.new_page()
    page.goto(LINER)
    field.set_offline(True)
    type_six(page)
    send(page)
    bar = page.locator("#kept")
    expect(bar).to_contain_text("1 reading is kept on this phone")
    page.evaluate("""() => {
      const name = Object.keys(localStorage).find((each) => each.startsWith("kept "));
      const item = JSON.parse(localStorage.getItem(name));
      localStorage.setItem(name, JSON.stringify({ ...item, who: "Bo" }));
    }""")
    back_in_reach(field)

    expect(bar).to_contain_text("Bo typed it, and Ida is signed in: Bo sends it.")
    assert finished(served.shed) == []


def test_answers_of_a_search_are_kept_too_and_sent_one_after_the_other(field, served):
    page = field.new_page()
    page.goto("/m/brackwater/faults/1/?q=S20")
    field.set_offline(True)
    page.locator("#check").get_by_role("button", name="It is not this").first.tap()
    expect(page.locator("#kept")).to_contain_text("1 answer is kept on this phone")
    jumps = page.get_by_role("group", name="S20")
    jumps.get_by_role("radio", name="not seen", exact=True).check()
    page.get_by_role("button", name="Write down what I saw").tap()
    expect(page.locator("#kept")).to_contain_text("2 answers are kept on this phone")
    assert said_in_search(served.shed) == {
        "sign:brake-pulls": "seen",
        "sign:steering-loose": "not seen",
    }

    back_in_reach(field)

    expect(page.locator("#kept")).not_to_contain_text("not yet in the book")
    said = said_in_search(served.shed)
    assert (len(said), said["sign:jumps-out-of-gear"]) == (4, "not seen")
    assert "cleared" in said.values()


def said_in_search(shed):
    """What was said in the search that goes on."""
    told = json.loads(shimstock(shed, "fault", "brackwater", "--json"))["told"]
    return {each["about"]: each["says"] for each in told if each["comes_from"] == "search"}


J04 = "/m/brackwater/joint/J04/"
OPEN_J04 = "Open J04"


def opened(shed):
    """How often the diary says that J04 was opened."""
    return shimstock(shed, "diary", "brackwater", "--last", "500").count("Opened Primary filter")


def test_a_form_that_is_not_kept_stays_as_typed_while_the_shed_is_out_of_reach(field, served):
    page = field.new_page()
    page.goto(J04)
    page.get_by_label("Bolts out").fill("1")
    field.set_offline(True)
    page.get_by_role("button", name=OPEN_J04).click()

    alert = page.get_by_role("alert")
    expect(alert).to_contain_text("The shed is out of reach. Nothing was sent; what you typed")
    expect(page.get_by_label("Bolts out")).to_have_value("1")
    assert opened(served.shed) == 0

    back_in_reach(field)
    page.get_by_role("button", name=OPEN_J04).click()
    expect(page.locator(".said")).to_contain_text("Opened Primary filter bowl")
    expect(page.locator(".out-of-reach")).to_have_count(0)
    assert opened(served.shed) == 1


def test_a_form_pressed_twice_while_the_shed_is_asked_is_sent_once(field, served):
    page = field.new_page()
    page.goto(J04)
    sent: list[str] = []
    page.on("request", lambda asked: asked.method != "GET" and sent.append(asked.method))
    page.get_by_role("button", name=OPEN_J04).evaluate("each => { each.click(); each.click(); }")

    expect(page.locator(".said")).to_contain_text("Opened Primary filter bowl")
    assert sent == ["HEAD", "POST"]


def test_which_button_was_pressed_is_sent_with_the_form(field):
    page = field.new_page()
    page.goto("/m/brackwater/joint/J17/")
    page.get_by_label("Torqued to the figure").check()
    page.get_by_role("button", name="Close J17").click()

    page.get_by_role("button", name="Weeping", exact=True).click()

    expect(page.locator(".joint-state")).to_contain_text("weeping")


def test_a_photo_form_with_no_picture_stays_too(field):
    page = field.new_page()
    page.goto("/m/brackwater/photos/")
    page.get_by_label("Note").fill("the nearside")
    field.set_offline(True)
    page.get_by_role("button", name="Keep the photos").click()

    expect(page.get_by_role("alert")).to_contain_text("Nothing was sent")
    expect(page.get_by_label("Note")).to_have_value("the nearside")


def test_a_link_leaves_the_page_only_where_the_shed_answers(field):
    page = field.new_page()
    page.goto(J04)
    field.set_offline(True)
    page.get_by_role("link", name="Diary").click()

    expect(page.get_by_role("alert")).to_contain_text("This page stays as it is")
    expect(page.get_by_role("button", name=OPEN_J04)).to_be_visible()

    back_in_reach(field)
    page.get_by_role("link", name="Diary").click()
    page.wait_for_url("**/diary/")


def test_an_answer_in_the_sheds_place_is_none(field, served):
    page = field.new_page()
    page.goto(J04)
    page.route(
        lambda _: True, lambda route: _only("HEAD", route, lambda it: it.fulfill(status=502))
    )
    page.get_by_label("Bolts out").fill("1")
    page.get_by_role("button", name=OPEN_J04).click()

    expect(page.get_by_role("alert")).to_contain_text("Nothing was sent")
    assert opened(served.shed) == 0


def test_a_page_taken_anew_meanwhile_says_that_nothing_was_sent(field, served):
    page = field.new_page()
    page.goto(J04)

    def taken_anew(route):
        page.evaluate(
            """() => {
                const page = document.getElementById("page");
                page.replaceWith(page.cloneNode(true));
            }"""
        )
        route.continue_()

    page.route(lambda _: True, lambda route: _only("HEAD", route, taken_anew))
    page.get_by_role("button", name=OPEN_J04).click()

    expect(page.get_by_role("alert")).to_contain_text("press again")
    assert opened(served.shed) == 0


def test_a_link_is_not_followed_over_what_was_typed_since(field):
    page = field.new_page()
    page.goto(J04)

    def typed_meanwhile(route):
        page.get_by_label("Bolts out").fill("1")
        route.continue_()

    page.route(lambda _: True, lambda route: _only("HEAD", route, typed_meanwhile))
    with page.expect_response(lambda answer: answer.request.method == "HEAD"):
        page.get_by_role("link", name="Diary").click()
    page.wait_for_timeout(500)

    assert "/joint/J04/" in page.url
    expect(page.get_by_label("Bolts out")).to_have_value("1")


def _only(method, route, act):
    """Do something with requests of one kind; the others go on."""
    if route.request.method == method:
        act(route)
    else:
        route.continue_()


def test_when_it_was_kept_is_told_as_the_shed_writes_it(field):
    page = field.new_page()
    page.goto(LINER)
    field.set_offline(True)
    type_six(page)
    send(page)

    moment = re.compile(r"\(\d{1,2} [A-Z][a-z]{2} \d{4}, \d\d:\d\d\)")
    expect(page.locator("#kept li")).to_contain_text(moment)
