"""Claim: another device comes in by a one-time code or by the passphrase, and in no other way."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pytest
from fastapi.responses import Response
from hypothesis import given
from hypothesis import strategies as st

from heatledger.web.pairing import LENGTH, LETTERS, SPELLED, TRIES, Pairing, PairingError, as_typed
from heatledger.web.passes import Passes
from heatledger.web.passphrase import FREE_TRIES, FREE_TRIES_OF_ALL, Passphrase, TooSoon
from tests.web.small_app import FROM_LAN, ORIGIN, PASSPHRASE, Small, small_app


class Clock:
    """A clock that a test sets."""

    def __init__(self) -> None:
        self.now = 1000.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture
def small() -> Small:
    return small_app(share=True)


def refusal(act: Callable[[], Any]) -> str:
    with pytest.raises(PairingError) as fault:
        act()
    return str(fault.value)


# The code


def test_a_code_is_eight_signs_that_can_be_read_aloud() -> None:
    assert len(set(LETTERS)) == len(LETTERS) >= 16 and not set(LETTERS) & set("0O1IL5S2Z8BUVQGN")
    assert set(SPELLED) == set(LETTERS)
    codes = [Pairing().new_code() for _ in range(300)]
    assert all(len(each.letters) == LENGTH and set(each.letters) <= set(LETTERS) for each in codes)
    assert len({each.letters for each in codes}) == 300
    assert all(len(each.spoken.split(", ")) == LENGTH for each in codes)


@given(
    st.text(alphabet=LETTERS, min_size=8, max_size=8), st.sampled_from(["", " ", "-", " - "]), st.booleans()
)
def test_a_code_may_be_typed_small_and_with_gaps(letters: str, gap: str, small_letters: bool) -> None:
    typed = gap.join([letters[:4], letters[4:]])
    assert as_typed(typed.lower() if small_letters else typed) == letters


def test_a_code_lets_in_once() -> None:
    pairing = Pairing()
    code = pairing.new_code("7")
    assert pairing.enter(code.shown.lower(), "192.168.1.77", Response()).job == "7"
    assert "no code in force" in refusal(lambda: pairing.enter(code.letters, "192.168.1.78", Response()))
    assert len(pairing.devices.holders()) == 1


def test_a_code_runs_out_after_ten_minutes() -> None:
    clock = Clock()
    pairing = Pairing(clock)
    code = pairing.new_code()
    clock.now += 599
    assert pairing.code() == code and pairing.minutes_left(code) == 1
    clock.now += 1
    assert pairing.code() is None
    assert "no code in force" in refusal(lambda: pairing.enter(code.letters, "192.168.1.77", Response()))


def test_wrong_tries_withdraw_the_code() -> None:
    pairing = Pairing()
    code = pairing.new_code()
    wrong = LETTERS[0] * LENGTH
    for left in range(TRIES - 1, 0, -1):
        assert f"{left} tr" in refusal(lambda: pairing.enter(wrong, "192.168.1.66", Response()))
    assert "withdrawn" in refusal(lambda: pairing.enter(wrong, "192.168.1.66", Response()))
    assert "no code in force" in refusal(lambda: pairing.enter(code.letters, "192.168.1.77", Response()))
    again = pairing.new_code()
    assert pairing.enter(again.letters, "192.168.1.77", Response()).number == 1


def test_a_new_code_takes_the_place_of_the_one_before() -> None:
    pairing = Pairing()
    first, second = pairing.new_code(), pairing.new_code()
    assert "not the code" in refusal(lambda: pairing.enter(first.letters, "192.168.1.77", Response()))
    assert pairing.enter(second.letters, "192.168.1.77", Response())


def test_passes_run_out_are_taken_back_and_are_never_more_than_fit() -> None:
    clock = Clock()
    passes: Passes[int] = Passes("pass", 60, 3, clock)

    def give(number: int) -> str:
        answer = Response()
        passes.give(number, answer)
        return answer.headers["set-cookie"].partition("=")[2].partition(";")[0]

    tokens = [give(number) for number in range(4)]
    assert [passes.holder(each) for each in tokens] == [None, 1, 2, 3]
    passes.change(lambda each: None if each == 2 else each)
    assert passes.holders() == [1, 3] and passes.holder(tokens[2]) is None
    assert passes.holder("") is None and passes.holder(tokens[1] + "x") is None
    clock.now += 60
    assert passes.holder(tokens[1]) is None and passes.holders() == []


# Letting a device in


def test_a_tablet_comes_in_by_the_code_and_goes_to_its_startup(small: Small) -> None:
    tablet = small.tablet()
    assert tablet.get("/").status_code == 403
    code = small.door.pairing.new_code("1")
    answer = tablet.post("/pair", data={"code": code.shown}, headers=FROM_LAN)
    assert answer.status_code == 303 and answer.headers["location"] == "/jobs/1/startup"
    said = answer.headers["set-cookie"]
    assert "HttpOnly" in said and "samesite=strict" in said.lower() and "Path=/" in said
    assert tablet.get("/jobs/1/startup").status_code == 200
    assert small.tablet("192.168.1.78").get("/jobs/1/startup").status_code == 403


def test_a_code_for_no_job_leads_to_the_one_that_the_device_chooses_once(small: Small) -> None:
    tablet = small.tablet()
    code = small.door.pairing.new_code()
    assert tablet.post("/pair", data={"code": code.letters}, headers=FROM_LAN).headers["location"] == "/pair"
    assert tablet.get("/jobs/1/startup").status_code == 403
    choice = tablet.get("/pair").text
    assert "Ferrow &lt;house&gt;" in choice and "Lerch cottage" in choice
    assert tablet.post("/pair/job", data={"job": "9"}, headers=FROM_LAN).status_code == 404
    assert tablet.post("/pair/job", data={"job": "2"}, headers=FROM_LAN).status_code == 303
    assert tablet.get("/pair").headers["location"] == "/jobs/2/startup"
    tablet.post("/pair/job", data={"job": "1"}, headers=FROM_LAN)
    assert tablet.get("/jobs/1/startup").status_code == 403
    assert tablet.get("/jobs/2/startup").status_code == 200


def test_this_computer_makes_codes_and_shuts_devices_out(small: Small) -> None:
    here = small.client()
    assert here.post("/pair/new", data={"job": "1"}, headers=ORIGIN).status_code == 303
    page = here.get("/pair").text
    code = small.door.pairing.code()
    assert code.shown in page and code.spoken in page and "Ferrow &lt;house&gt;" in page
    assert here.post("/pair/new", data={"job": "9"}, headers=ORIGIN).status_code == 404
    tablet = small.paired()
    (device,) = re.findall(r'name="device" value="(\d+)"', here.get("/pair").text)
    assert tablet.get("/jobs/1/startup").status_code == 200
    assert tablet.post("/pair/out", data={"device": device}, headers=FROM_LAN).status_code == 403
    assert here.post("/pair/out", data={"device": device}, headers=ORIGIN).status_code == 303
    assert tablet.get("/jobs/1/startup").status_code == 403


@pytest.mark.parametrize("way", ["stranger", "paired"])
def test_no_other_device_makes_a_code(small: Small, way: str) -> None:
    tablet = small.paired() if way == "paired" else small.tablet()
    assert tablet.post("/pair/new", data={"job": "1"}, headers=FROM_LAN).status_code == 403
    assert small.door.pairing.code() is None


def test_guessing_a_code_over_the_network_locks(small: Small) -> None:
    code = small.door.pairing.new_code("1")
    wrong = LETTERS[1] * LENGTH
    said = [small.tablet().post("/pair", data={"code": wrong}, headers=FROM_LAN) for _ in range(TRIES + 1)]
    assert {each.status_code for each in said} == {403}
    assert "withdrawn" in said[TRIES - 1].text and "no code in force" in said[TRIES].text
    assert small.tablet().post("/pair", data={"code": code.letters}, headers=FROM_LAN).status_code == 403


def test_without_sharing_no_device_can_be_paired() -> None:
    small = small_app(passphrase=PASSPHRASE)
    code = small.door.pairing.new_code("1")
    assert small.tablet().post("/pair", data={"code": code.letters}, headers=FROM_LAN).status_code == 409
    assert "not shared" in small.client().get("/pair").text


# The passphrase, and everybody else


@pytest.mark.parametrize(
    "address", ["192.168.1.66", "10.0.0.9", "203.0.113.9", "2001:db8::9", "testclient", ""]
)
def test_any_other_address_is_refused_without_a_passphrase(address: str) -> None:
    for settings_ in ({}, {"share": True}, {"passphrase": PASSPHRASE}):
        small = small_app(**settings_)
        for path in ("/", "/jobs/1/startup", "/jobs/1/house", "/api/openapi.json", "/pair/new", "/pair/out"):
            answer = small.client(address).get(path)
            assert answer.status_code == 403, (address, settings_, path)
            assert "has not been let in" in answer.text
        assert small.client(address).post("/form", headers=ORIGIN).status_code == 403
        assert small.came == []


@pytest.mark.parametrize("address", ["127.0.0.1", "127.0.0.9", "::1", "::ffff:127.0.0.1"])
def test_this_computer_needs_no_passphrase(address: str) -> None:
    assert small_app(passphrase=PASSPHRASE).client(address).get("/jobs").status_code == 200


def test_the_right_passphrase_opens_the_whole_book_on_that_device() -> None:
    small = small_app(passphrase=PASSPHRASE)
    tablet, other = small.tablet(), small.tablet("192.168.1.78")
    for wrong in ("", PASSPHRASE.upper(), PASSPHRASE + " ", PASSPHRASE[:-1]):
        answer = tablet.post("/passphrase", data={"passphrase": wrong}, headers=FROM_LAN)
        assert answer.status_code == 403 and "set-cookie" not in answer.headers
        assert "not the passphrase" in answer.text and PASSPHRASE not in answer.text
    answer = tablet.post("/passphrase", data={"passphrase": PASSPHRASE}, headers=FROM_LAN)
    assert answer.status_code == 303 and answer.headers["location"] == "/"
    assert "HttpOnly" in answer.headers["set-cookie"]
    assert "samesite=strict" in answer.headers["set-cookie"].lower()
    assert tablet.get("/jobs/1/house").status_code == 200
    assert other.get("/jobs/1/house").status_code == 403


def test_without_a_passphrase_nothing_typed_is_right() -> None:
    tablet = small_app(share=True).tablet()
    for typed in ("", "anything"):
        answer = tablet.post("/passphrase", data={"passphrase": typed}, headers=FROM_LAN)
        assert answer.status_code == 403 and "set-cookie" not in answer.headers


def test_guessing_the_passphrase_waits_longer_and_longer() -> None:
    clock = Clock()
    passphrase = Passphrase(PASSPHRASE, clock)
    assert not any(passphrase.is_right("guess", "a") for _ in range(FREE_TRIES))
    waits = []
    for _ in range(4):
        with pytest.raises(TooSoon) as fault:
            passphrase.is_right(PASSPHRASE, "a")
        waits.append(fault.value.seconds)
        clock.now += fault.value.seconds
        assert not passphrase.is_right("guess", "a")
    assert waits == [30, 60, 120, 240]
    assert passphrase.is_right(PASSPHRASE, "b"), "another device does not wait"
    clock.now += 900
    assert passphrase.is_right(PASSPHRASE, "a")
    assert not passphrase.is_right("guess", "a"), "after the right one the count begins anew"


def test_many_addresses_guessing_are_held_back_together() -> None:
    passphrase = Passphrase(PASSPHRASE, Clock())
    for number in range(FREE_TRIES_OF_ALL):
        assert not passphrase.is_right("guess", f"2001:db8::{number:x}")
    with pytest.raises(TooSoon):
        passphrase.is_right("guess", "2001:db8:1::1")


def test_too_many_tries_are_told_how_long_to_wait() -> None:
    tablet = small_app(passphrase=PASSPHRASE).tablet()
    said = [
        tablet.post("/passphrase", data={"passphrase": "x"}, headers=FROM_LAN) for _ in range(FREE_TRIES + 1)
    ]
    assert [each.status_code for each in said] == [403] * FREE_TRIES + [429]
    assert 0 < int(said[-1].headers["retry-after"]) <= 31
    assert "Wait" in said[-1].text


def test_an_accent_is_the_same_on_every_keyboard() -> None:
    assert Passphrase("fenêtre et radiateur").is_right("fene\u0302tre et radiateur", "a")
