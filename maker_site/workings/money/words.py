"""Money, figures and days in words, by ISO 4217 and CLDR; and the one rule of rounding.

**Rounding.** Nothing is rounded while it is worked out. Where an amount is shown it is rounded to the currency's
digits, halves away from zero; a price that is worked out is rounded *up* instead, so that it never misses what was
wanted of it (`pricing`).

**Digits.** How many a currency has is CLDR's say (Babel), which is what customers meet: it follows ISO 4217 save for a
few currencies whose small coins are gone (IQD has 3 in ISO 4217 and 0 in CLDR). A figure that the maker typed with
more digits keeps them: `digits` asks for more, never for fewer.
"""

from __future__ import annotations

import re
from datetime import date
from decimal import Context, Decimal
from fractions import Fraction
from functools import lru_cache
from typing import Final

from babel.dates import format_skeleton
from babel.numbers import format_currency, format_decimal, format_percent, get_currency_precision

from maker_site.frozen import frozen
from maker_site.language import spoken

_EXACT_ENOUGH: Final = Context(prec=28)
_SIGNIFICANT: Final = 3
_CODE_BESIDE_FIGURE: Final = re.compile(r"(?<=[^\W\d_])(?=\d)|(?<=\d)(?=[^\W\d_])")
"""Where a code such as KWD would touch the figure. CLDR's currency spacing sets a no-break space; Babel does not."""


def decimal_of(value: Fraction) -> Decimal:
    """Return a fraction as a decimal: exact where it ends within 28 digits, else to 28 digits."""
    return _EXACT_ENOUGH.divide(Decimal(value.numerator), Decimal(value.denominator))


def rounded(value: Decimal | Fraction, digits: int) -> Decimal:
    """Return `value` with so many digits after the point, halves away from zero."""
    above, below = value.as_integer_ratio()
    whole = (2 * abs(above) * 10**digits + below) // (2 * below)
    return Decimal(-whole if value < 0 else whole).scaleb(-digits, Context(prec=len(str(whole)) + 1))


def digits_of(currency: str) -> int:
    """Return the digits after the point that prices in a currency have, by CLDR."""
    return get_currency_precision(currency)


def minor_unit(currency: str) -> Decimal:
    """Return the smallest step of a price in a currency: 0.01 for GBP, 1 for JPY."""
    return Decimal(1).scaleb(-digits_of(currency))


@lru_cache(maxsize=8192)
def money(value: Decimal | Fraction, currency: str, locale: str, digits: int = 0) -> str:
    """Return an amount as it is written in a place: ``£12.50``, ``12,50 €``, ``￥1,250``.

    Rounded by the rule above to the currency's digits, or to `digits` where these are more.
    """
    digits = max(digits, digits_of(currency))
    return _written(rounded(value, digits), digits, currency, locale)


@lru_cache(maxsize=8192)  # many amounts come to the same when rounded, and formatting by CLDR is slow
def _written(shown: Decimal, _digits: int, currency: str, locale: str) -> str:
    """Write a rounded amount; 1.5 and 1.50 are the same key, so the digits tell them apart."""
    written = format_currency(shown, currency, locale=locale, decimal_quantization=False)
    return _CODE_BESIDE_FIGURE.sub("\u00a0", written)


@frozen
class Figures:
    """Writes the figures of one shop."""

    currency: str
    """By ISO 4217."""
    locale: str
    """By CLDR."""

    def money(self, value: Decimal | Fraction) -> str:
        """Return an amount with the currency's digits."""
        return money(value, self.currency, self.locale)

    def typed(self, value: Decimal) -> str:
        """Return a typed amount with all the digits that it was typed with."""
        return money(value, self.currency, self.locale, _places(value.normalize()))

    def fine(self, value: Fraction) -> str:
        """Return a small amount, such as the price of a millilitre, with three digits that tell something."""
        return _fine(value, self.currency, self.locale)

    def number(self, value: Fraction | int, digits: int = 2) -> str:
        """Return a plain figure with at most so many digits after the point."""
        return _number(Fraction(value), digits, self.locale)

    def percent(self, share: Fraction) -> str:
        """Return a share of one in percent, with at most one digit after the point."""
        return _percent(share, self.locale)

    def day(self, given: date) -> str:
        """Return a day within a sentence: by CLDR, the month as a word; in English ``2026-04-18``."""
        if spoken().tag == "en":
            return given.isoformat()
        return str(format_skeleton("yMMMd", given, locale=self.locale))


@lru_cache(maxsize=8192)
def _fine(value: Fraction, currency: str, locale: str) -> str:
    digits = digits_of(currency)
    while value and abs(value) * 10**digits < 10 ** (_SIGNIFICANT - 1):
        digits += 1
    trimmed = rounded(value, digits).normalize()
    return money(trimmed, currency, locale, _places(trimmed))


def _places(value: Decimal) -> int:
    exponent = value.as_tuple().exponent
    return max(-exponent, 0) if isinstance(exponent, int) else 0


@lru_cache(maxsize=8192)
def _number(value: Fraction, digits: int, locale: str) -> str:
    shown = rounded(value, digits)
    return format_decimal(shown, locale=locale, decimal_quantization=False, format=_pattern(digits))


@lru_cache(maxsize=8192)
def _percent(share: Fraction, locale: str) -> str:
    if locale.partition("_")[0] == "en":  # the site's own English sets its units apart: “6.5 %” as “200 °C”
        return f"{_number(share * 100, 1, locale)} %"
    return format_percent(rounded(share, 3), locale=locale, decimal_quantization=False)


def _pattern(digits: int) -> str:
    return f"#,##0.{'#' * digits}" if digits else "#,##0"
