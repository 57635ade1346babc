"""Generators of inputs: figures as people type them, awkward texts, whole workshops."""

from fractions import Fraction

from hypothesis import strategies as st

AWKWARD_TEXTS = {
    "digits": "1" * 100_000,
    "spaces": "1" + " " * 100_000 + "x",
    "no-break spaces": "1" + "\u00a0" * 100_000 + "x",
    "short of the limit": "1" + " " * 90 + "x",
    "turns": "1" + " t" * 50_000,
    "ranges": "1-" * 50_000,
    "clocks": "1:" * 50_000,
    "a fraction with a million digits": "1/3" + "3" * 1_000_000,
    "many times": "1" * 5_000 + " x 20 ml",
    "quotes": '"' * 100_000,
    "letters": "slate-" * 20_000,
    "noughts of the computer": "\0" * 100_000,
    "signs of another script": "٣" * 100_000,
    "brackets": "[" * 100_000,
    "web": "https://" + "a." * 50_000,
}
"""Texts that have slow or crashing answers in careless readers."""


@st.composite
def decimals(draw: st.DrawFn, *, above_nought: bool = False) -> str:
    """Return an unsigned decimal as typed, with a full stop and up to four decimals."""
    whole = draw(st.integers(1 if above_nought else 0, 99_999))
    places = draw(st.integers(0, 4))
    part = draw(st.integers(0, 10**places - 1)) if places else 0
    return f"{whole}.{part:0{places}}" if places else str(whole)


@st.composite
def fractions_as_typed(draw: st.DrawFn) -> tuple[str, Fraction]:
    """Return a fraction as on a ruler, and its value: ``11 3/4``."""
    whole, top = draw(st.integers(0, 999)), draw(st.integers(0, 99))
    bottom = draw(st.integers(1, 128))
    value = Fraction(whole) + Fraction(top, bottom)
    return (f"{whole} {top}/{bottom}" if whole else f"{top}/{bottom}"), value
