"""Generators of inputs: figures as people type them, awkward texts, whole workshops."""

import csv
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from pathlib import Path
from typing import Any

import yaml
from hypothesis import strategies as st

Facts = dict[str, Any]
"""A record's fields as typed: text, or lists and groups of text."""

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


IDS = st.from_regex(r"[a-z][a-z0-9]{0,8}(-[a-z0-9]{1,4})?", fullmatch=True)
_SIGNS = st.characters(
    codec="utf-8", exclude_categories=("Cc", "Cs", "Co", "Cn", "Zl", "Zp"), exclude_characters="\ufeff"
)
TEXTS = st.text(_SIGNS, min_size=1, max_size=30).map(lambda text: " ".join(text.split())).filter(bool)
"""One line of anybody's writing, quotes, colons and other scripts included."""


def _one_of_each(values: st.SearchStrategy[Facts]) -> st.SearchStrategy[dict[str, Facts]]:
    return st.dictionaries(IDS, values, min_size=1, max_size=3)


@dataclass(frozen=True, slots=True)
class MadeWorkshop:
    """Records as plain text fields, by kind and id, and the rows of a press log."""

    shop: Facts
    blanks: dict[str, Facts]
    presses: dict[str, Facts]
    supplies: dict[str, Facts]
    projects: dict[str, Facts]
    rows: list[Facts]

    def write(self, root: Path, separator: str = ",") -> None:
        """Write the records with the libraries' own writers of YAML and CSV."""
        files = {"shop.yaml": self.shop}
        for kind in ("blanks", "presses", "supplies"):
            files |= {f"{kind}/{each}.yaml": fields for each, fields in getattr(self, kind).items()}
        files |= {f"projects/{each}/project.yaml": fields for each, fields in self.projects.items()}
        for name, fields in files.items():
            (root / name).parent.mkdir(parents=True, exist_ok=True)
            (root / name).write_text(yaml.safe_dump(fields, allow_unicode=True, sort_keys=False), encoding="utf-8")
        log = root / "press-log" / "made.csv"
        log.parent.mkdir()
        with log.open("w", encoding="utf-8", newline="") as file:
            table = csv.DictWriter(file, list(self.rows[0]), delimiter=separator)
            table.writeheader()
            table.writerows(self.rows)


@st.composite
def workshops(draw: st.DrawFn) -> MadeWorkshop:
    """Return a small workshop without a mistake in it, its texts as odd as texts can be."""
    money = st.integers(0, 99_999).map(lambda pence: f"{pence // 100}.{pence % 100:02}")
    counts = st.integers(1, 500)
    days = st.dates(date(2000, 1, 1), date(2100, 1, 1)).map(date.isoformat)
    blanks = draw(
        _one_of_each(
            st.fixed_dictionaries(
                {"name": TEXTS, "substrate": st.sampled_from(["slate", "ceramic", "jute"])},
                optional={
                    "note": TEXTS,
                    "thickness": decimals(above_nought=True).map(lambda figure: f"{figure} mm"),
                    "bought": st.lists(
                        st.fixed_dictionaries({"count": counts.map(str), "paid": money, "lot": TEXTS}),
                        min_size=1,
                        max_size=3,
                    ),
                },
            )
        )
    )
    presses = draw(_one_of_each(st.fixed_dictionaries({"name": TEXTS, "watts": counts.map(str)})))
    supplies = draw(_one_of_each(st.fixed_dictionaries({"name": TEXTS, "kind": st.just("tape"), "price": money})))
    projects = draw(
        _one_of_each(
            st.fixed_dictionaries(
                {"title": TEXTS, "blank": st.sampled_from(sorted(blanks))},
                optional={
                    "made": days,
                    "note": TEXTS,
                    "occasions": st.lists(TEXTS, min_size=1, max_size=3),
                    "supplies": st.lists(
                        st.fixed_dictionaries({"supply": st.sampled_from(sorted(supplies))}), min_size=1, max_size=2
                    ),
                },
            )
        )
    )
    row = st.fixed_dictionaries(
        {
            "date": days,
            "blank": st.sampled_from(sorted(blanks)),
            "press": st.sampled_from(sorted(presses)),
            "temperature": st.integers(0, 500).map(lambda degrees: f"{degrees} F"),
            "time": st.integers(1, 900).map(lambda seconds: f"{seconds} s"),
            "pressed": st.integers(5, 9).map(str),
            "good": st.integers(0, 5).map(str),
            "project": st.sampled_from(["", *sorted(projects)]),
            "note": st.one_of(st.just(""), TEXTS, st.tuples(TEXTS, TEXTS).map("\n".join)),
        }
    )
    return MadeWorkshop(
        shop={"name": draw(TEXTS), "currency": draw(st.sampled_from(["GBP", "JPY", "KWD"])), "labour": draw(money)},
        blanks=blanks,
        presses=presses,
        supplies=supplies,
        projects=projects,
        rows=draw(st.lists(row, min_size=1, max_size=5)),
    )
