"""A gate on a phone: its points lead on, a question is answered and signed in place."""


def test_from_the_gates_to_the_joint_that_stands_in_the_way(phone):
    phone.goto("/m/brackwater/gates/")
    phone.get_by_role("link", name="Paint", exact=True).click()
    phone.get_by_role("link", name="What stands against it").click()
    first = phone.locator("a.point").first
    first.click()

    phone.wait_for_url("**/m/brackwater/joint/*/")


def test_a_question_is_answered_with_a_thumb_and_signed(phone):
    phone.goto("/m/brackwater/gates/first-start/")
    before = phone.locator("#points-all").inner_text()
    point = phone.locator(".points > li", has=phone.locator("details")).first
    asked = point.locator("p.point strong").first.inner_text()
    point.get_by_text("Answer and sign").click()
    answer = point.get_by_role("radio").first
    assert answer.locator("xpath=..").bounding_box()["height"] >= 44
    answer.check()
    point.get_by_role("button", name="Sign as Ida").click()
    phone.locator(".said").wait_for()

    assert asked in phone.locator(".said").inner_text()
    signed = phone.locator(".signed > li", has_text=asked)
    assert "Ida" in signed.inner_text()
    assert phone.locator("#points-all").inner_text() != before


def test_a_refusal_opens_the_form_again_as_it_was_typed(phone):
    phone.goto("/m/brackwater/gates/first-start/")
    phone.get_by_text("Say that a point is not needed").click()
    phone.get_by_label("Point", exact=True).select_option(index=1)
    chosen = phone.get_by_label("Point", exact=True).input_value()
    phone.locator("details[open] button").click()
    phone.get_by_role("alert").wait_for()

    assert "say why it is not needed" in phone.get_by_role("alert").inner_text()
    assert phone.get_by_label("Point", exact=True).input_value() == chosen
