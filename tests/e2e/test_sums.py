"""A sum on a phone: found by words, asked by a form, and sent as an address."""

from axe_playwright_python.sync_playwright import Axe


def test_a_sum_is_found_filled_with_its_example_and_worked_out(phone):
    phone.goto("/sums/")
    phone.get_by_label("Find a sum").fill("ring gap")
    with phone.expect_navigation():
        phone.get_by_role("button", name="Find").click()
    phone.get_by_role("link", name="ring gap Least").click()
    phone.get_by_role("link", name="Example").click()

    assert phone.locator(".result").first.inner_text() == "0.01225 in"
    assert phone.get_by_label("Bore").input_value() == "3 1/2 in"
    assert "bore=3+1%2F2+in" in phone.url
    result = phone.locator(".results").bounding_box()
    assert result["y"] + result["height"] < 844  # in sight without a finger


def test_the_list_is_narrowed_while_one_types(phone):
    phone.goto("/sums/")
    phone.get_by_label("Find a sum").press_sequentially("band brake")

    phone.get_by_text("All sums").wait_for()
    assert phone.locator("#found .sums a").count() == 1
    assert phone.get_by_label("Find a sum").input_value() == "band brake"


def test_the_answer_comes_while_one_types_and_the_address_keeps_it(phone):
    phone.goto("/sums/displacement/")
    phone.get_by_label("Bore").press_sequentially("4 1/4 in")
    phone.get_by_text("Not yet: displacement still needs “stroke”").wait_for()
    assert phone.get_by_role("alert").count() == 0
    phone.get_by_label("Stroke").press_sequentially("5 1/4 in")
    phone.locator(".result").wait_for()

    assert phone.locator(".result").inner_text() == "74.48 in3"
    assert phone.get_by_label("Stroke").evaluate("each => each === document.activeElement")
    assert phone.url.endswith("?bore=4%201%2F4%20in&stroke=5%201%2F4%20in")
    phone.reload()
    assert phone.locator(".result").inner_text() == "74.48 in3"
    assert phone.get_by_label("Bore").input_value() == "4 1/4 in"


def test_what_is_wrong_is_said_at_its_field_and_nothing_is_lost(phone):
    phone.goto("/sums/displacement/")
    phone.get_by_label("Bore").fill("88 psi")
    phone.get_by_label("Stroke").fill("5 1/4 in")
    phone.get_by_role("button", name="Work it out").click()
    phone.get_by_role("alert").wait_for()

    assert phone.get_by_label("Bore").input_value() == "88 psi"
    assert phone.get_by_label("Stroke").input_value() == "5 1/4 in"
    assert phone.get_by_label("Bore").get_attribute("aria-invalid") == "true"
    assert Axe().run(phone).violations_count == 0


def test_a_machine_fills_in_what_its_book_and_readings_hold(phone):
    phone.goto("/sums/displacement/")
    phone.get_by_text("Take values from a machine").click()
    phone.get_by_label("Machine").select_option("Brackwater 40")
    phone.get_by_role("button", name="Work it out").click()
    phone.locator(".result").wait_for()

    assert phone.get_by_role("cell", name="book, page 9").count() == 1
    assert phone.get_by_text("Found: 6 3/4 in, book, page 9.").count() == 1


def test_without_script_it_works_the_same(browser, served):
    context = browser.new_context(java_script_enabled=False, base_url=served.address)
    page = context.new_page()
    page.goto("/sums/displacement/")
    page.get_by_label("Bore").fill("4 1/4 in")
    page.get_by_label("Stroke").fill("5 1/4 in")
    page.get_by_role("button", name="Work it out").click()

    assert page.locator(".result").inner_text() == "74.48 in3"
    context.close()
