"""Where the maker's own best setting and the supplier's sheet part."""

from __future__ import annotations

from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.records import Press, Sheet
from maker_site.records.words import FACES
from maker_site.workings.evidence import Evidence, temperature_step, time_step


@frozen
class Disagreement:
    """How far the maker's best is from the sheet; 0 or None where they agree or the sheet is silent."""

    kelvin: Fraction
    """Own less sheet, at the platen; from the nearer end where the sheet gives a range."""
    seconds: Fraction
    face: bool
    """The print looks the other way; False where one of the two does not clearly say which."""
    pressure: str | None
    """Own and sheet's words, said, where both have one and they differ."""


def disagreement(own: Evidence, sheet: Sheet, press: Press) -> Disagreement | None:
    """Return what differs by more than a step of the press, or None where nothing does."""
    setting = own.setting
    kelvin = seconds = Fraction(0)
    if sheet.temperature:
        kelvin = _outside(setting.true.celsius, sheet.temperature.low.celsius, sheet.temperature.high.celsius)
    if sheet.time:
        seconds = _outside(setting.time.seconds, sheet.time.low.seconds, sheet.time.high.seconds)
    kelvin = kelvin if abs(kelvin) > temperature_step(press) else Fraction(0)
    seconds = seconds if abs(seconds) > time_step(press) else Fraction(0)
    face = setting.face in FACES and sheet.face in FACES and setting.face != sheet.face
    words = None
    if setting.pressure and sheet.pressure and setting.pressure.word and sheet.pressure.word:
        differs = setting.pressure.word != sheet.pressure.word
        own_word, other = say(setting.pressure.word), say(sheet.pressure.word)
        words = say("{pressure}, not {other}", pressure=own_word, other=other) if differs else None
    found = Disagreement(kelvin, seconds, face, words)
    return found if kelvin or seconds or face or words else None


def _outside(value: Fraction, low: Fraction, high: Fraction) -> Fraction:
    """Return how far `value` is above `high` or below `low` (negative); 0 between them."""
    return value - high if value > high else min(Fraction(0), value - low)
