"""How the pages are served: which hosts, what address, and what workers are told of it."""

import ipaddress
import socket

import pytest

from shimstock.site import network
from shimstock.site.serving import LOOPBACK, Serving, note_address, noted_address
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.refused import Refused


@pytest.fixture
def on_a_network(monkeypatch):
    monkeypatch.setattr(network, "addresses", lambda: ("192.0.2.20", "198.51.100.7"))
    monkeypatch.setattr(network, "local_name", lambda: "shed.local")


def test_workers_are_told_all_of_it(monkeypatch, on_a_network):
    serving = Serving.on_network(["the-shed.example"], 8140, encrypted=True)
    for name, value in serving.as_environment().items():
        monkeypatch.setenv(name, value)

    assert Serving.from_environment() == serving


def test_without_being_told_only_this_computer_is_answered(monkeypatch):
    monkeypatch.delenv("SHIMSTOCK_SERVING", raising=False)

    assert Serving.from_environment() == Serving(hosts=LOOPBACK, sign_in=False)


def test_phones_find_every_address_and_must_sign_in(on_a_network):
    serving = Serving.on_network([], 8140, encrypted=False)

    assert serving.hosts == (*LOOPBACK, "192.0.2.20", "198.51.100.7", "shed.local")
    assert serving.sign_in
    assert serving.who == ""
    assert serving.address == "http://192.0.2.20:8140"
    assert serving.other_addresses() == ["http://198.51.100.7:8140", "http://shed.local:8140"]


def test_a_name_that_people_use_is_shown_first(on_a_network):
    serving = Serving.on_network(["Shed.Example"], 8443, encrypted=True)

    assert serving.address == "https://shed.example:8443"
    assert "shed.example" in serving.hosts


@pytest.mark.parametrize("name", ["", "a b", "http://shed", "*", ".example", "shed:8140"])
def test_what_is_no_name_of_a_computer_is_not_taken(name, on_a_network):
    with pytest.raises(NotUnderstood, match="no name of a computer"):
        Serving.on_network([name], 8140, encrypted=False)


def test_without_a_network_there_is_nobody_to_serve(monkeypatch):
    monkeypatch.setattr(network, "addresses", lambda: ())
    with pytest.raises(Refused, match="on no network"):
        Serving.on_network([], 8140, encrypted=False)


def test_the_addresses_found_are_this_computers_own_and_others_reach_them():
    for address in network.addresses():
        assert not ipaddress.ip_address(address).is_loopback
        with socket.socket() as listening:
            listening.bind((address, 0))  # the system refuses an address that is another's


def test_the_name_on_a_network_is_one_word_and_local():
    name, _, ending = network.local_name().partition(".")

    assert name
    assert ending == "local"


def test_where_it_was_served_is_noted_for_the_commands(tmp_path):
    assert noted_address(tmp_path) == ""
    note_address(tmp_path, "http://192.0.2.20:8140")
    assert noted_address(tmp_path) == "http://192.0.2.20:8140"
