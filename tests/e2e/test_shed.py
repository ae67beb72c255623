def test_the_shed_shows_every_machine_and_leads_to_it(phone):
    phone.goto("/")
    phone.get_by_role("link", name="Brackwater 40", exact=True).click()

    phone.wait_for_url("**/m/brackwater/")
