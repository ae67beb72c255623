"""Signs, files, times and form marks, for templates."""

from __future__ import annotations

import re
import secrets
from datetime import date, datetime
from functools import lru_cache
from hashlib import sha256
from pathlib import Path

from django import template
from django.conf import settings
from django.contrib.staticfiles import finders
from django.utils.html import format_html
from django.utils.safestring import SafeString, mark_safe
from django.utils.timezone import localtime

from shimstock.faces.paper.drawing import sign_alone
from shimstock.faces.paper.signs import JOINT_SIGNS, PART_SIGNS, VERDICT_SIGNS
from shimstock.trade.machine.words import TOO_MUCH, JointWord, PartWord, Verdict

register = template.Library()


@register.simple_tag
def file(path: str) -> str:
    """The address of a file that pages load, with its digest, so that browsers may keep it."""
    return f"{settings.STATIC_URL}{path}?{_digest(path)}"


@register.simple_tag
def sign(word: object) -> SafeString:
    """The sign of a state: a shape, a colour and a letter; the word stands beside it in text."""
    return _sign(_typed(word))


@register.simple_tag
def state(word: object) -> SafeString:
    """A state as its sign and its word."""
    return format_html(
        '<span class="state state-{}">{}<span>{}</span></span>',
        str(word).replace(" ", "-"),
        _sign(_typed(word)),
        word,
    )


@register.simple_tag
def form_marks(seen: int | None = None) -> SafeString:
    """The hidden fields of a form that acts: its own key, and what its page had seen."""
    key = secrets.token_urlsafe(16)
    mark = format_html('<input type="hidden" name="form" value="{}">', key)
    if seen is None:
        return mark
    return format_html('{}<input type="hidden" name="seen" value="{}">', mark, seen)


@register.tag
def made_once(parser: template.base.Parser, token: template.base.Token) -> template.Node:
    """`{% made_once seen "name" %} … {% end_made_once %}`: made once while a machine stands so.

    For what is long and follows from the machine alone: no form, and nothing of who asks.
    """
    _, seen, name = token.split_contents()
    inside = parser.parse(("end_made_once",))
    parser.delete_first_token()
    return _MadeOnce(parser.compile_filter(seen), name.strip("\"'"), inside)


class _MadeOnce(template.Node):
    def __init__(
        self, seen: template.base.FilterExpression, name: str, inside: template.NodeList
    ) -> None:
        self.seen, self.name, self.inside = seen, name, inside

    def render(self, context: template.Context) -> SafeString:
        """What is inside, made anew only where the machine stands otherwise."""
        made: dict[str, SafeString] = self.seen.resolve(context).made
        if self.name not in made:
            made[self.name] = self.inside.render(context)
        return made[self.name]


@register.filter
def day(when: date | datetime | None) -> str:
    """A day as people write it: 3 Oct 2026."""
    if when is None:
        return ""
    local = localtime(when) if isinstance(when, datetime) else when
    return f"{local.day} {local:%b %Y}"


@register.filter
def moment(when: datetime | None) -> str:
    """A day and the time: 3 Oct 2026, 20:14."""
    return "" if when is None else f"{day(when)}, {localtime(when):%H:%M}"


def _typed(word: object) -> JointWord | PartWord | Verdict | None:
    """A trade word as such; of text that is one of several kinds, a verdict, joint, then part."""
    if isinstance(word, JointWord | PartWord | Verdict):
        return word
    if word == TOO_MUCH:
        return Verdict.BORDERLINE
    for words in (Verdict, JointWord, PartWord):
        if str(word) in set(words):
            return words(str(word))
    return None


@lru_cache(maxsize=128)
def _sign(word: JointWord | PartWord | Verdict | None) -> SafeString:
    if isinstance(word, Verdict):
        return format_html('<span class="sign" aria-hidden="true">{}</span>', VERDICT_SIGNS[word])
    if word is None:
        return mark_safe("")  # a state without a sign has its word
    drawn = JOINT_SIGNS[word] if isinstance(word, JointWord) else PART_SIGNS[word]
    svg = re.sub(
        r' width="[^"]*" height="[^"]*"',
        ' class="sign" aria-hidden="true"',
        sign_alone(drawn),
        count=1,
    )
    return mark_safe(svg.strip())


@lru_cache(maxsize=256)
def _digest(path: str) -> str:
    found = finders.find(path)
    if found is None:
        raise FileNotFoundError(f"no file {path} for pages")
    return sha256(Path(str(found)).read_bytes()).hexdigest()[:12]
