"""Each of the trade's sums as a page: a field for each input, and the terminal's own answer."""

import json
import re
from html import escape
from html.parser import HTMLParser

import pytest

from shimstock.faces.cli.sum_lines import answer_of
from shimstock.trade.sums.find import all_sums
from shimstock.trade.sums.said import example_of, said_first, spoken

SUMS = [each for sums in all_sums().values() for each in sums]


class Form(HTMLParser):
    """The fields of the page's form, its labels, and what its answer says."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.fields: list[str] = []
        self.labels: list[str] = []
        self.described: set[str] = set()
        self.ids: list[str] = []
        self.inside = ""
        self.results: list[str] = []
        self.working = ""
        self.example = ""
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        told = dict(attrs)
        self.ids += [told["id"]] if "id" in told else []
        if tag in ("input", "select"):
            assert told["id"] == told["name"]
            self.fields.append(told["name"])
            self.described |= set(told.get("aria-describedby", "").split())
        elif tag == "label":
            self.labels.append(told.get("for", ""))
        elif tag == "a" and told.get("href", "").startswith("?"):
            self.example = told["href"].partition("#")[0]
        self.inside = told.get("class") or "" if tag in ("span", "pre") else ""
        if self.inside.startswith("result"):
            self.results.append("")

    def handle_endtag(self, tag):
        self.inside = ""

    def handle_data(self, data):
        if self.inside.startswith("result"):
            self.results[-1] += data
        elif self.inside == "working":
            self.working += data


@pytest.fixture
def asked(client, settings, db):
    from dataclasses import replace

    settings.SERVING = replace(settings.SERVING, who="Ann")
    return client


@pytest.mark.parametrize("sum_", SUMS, ids=lambda each: each.name)
def test_a_sum_has_a_labelled_field_for_each_input_and_answers_as_the_terminal(sum_, asked):
    empty = asked.get(f"/sums/{sum_.name}/")
    form = Form(empty.content.decode())
    ticks = [one.name for one in sum_.inputs if isinstance(one.default, bool)]
    answered = asked.get(f"/sums/{sum_.name}/{form.example}")
    shown = Form(answered.content.decode())
    terminal = json.loads(json.dumps(answer_of(example_of(sum_)).data))

    assert (empty.status_code, answered.status_code) == (200, 200)
    assert len(form.fields) == len(sum_.inputs) + 1  # the units for the result
    assert len(set(form.fields)) == len(form.fields)
    assert sorted(filter(None, form.labels)) == sorted(set(form.fields) - set(ticks))
    assert form.labels.count("") == len(ticks)  # a tick stands in its label
    assert form.described <= set(form.ids) and len(set(form.ids)) == len(form.ids)
    assert form.results == []
    assert shown.working.splitlines() == terminal["steps"]
    assert shown.results == [said_first(each) for each in example_of(sum_).results.values()]
    assert [spoken(name) for name in terminal["results"]] == re.findall(
        r"<dt>(.*?)</dt>", answered.content.decode()
    )
    for text in (terminal["source"], *terminal["cautions"]):
        assert escape(text) in answered.content.decode()
