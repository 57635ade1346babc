"""The lines of the bench: blank, electricity, labour.

Inner module of the money workings.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from maker_site.records.quantities import Duration
from maker_site.workings.money.case import Case, Setting
from maker_site.workings.money.landed import Landed, landed
from maker_site.workings.money.line import CostLine, unknown
from maker_site.workings.money.power import kilowatt_hours
from maker_site.workings.money.words import Figures

_MINUTES_PER_HOUR = 60


def blank_line(case: Case) -> CostLine:
    """Return the line of the blanks, at their landed cost."""
    cost = landed(case.blank)
    if cost.each is None:
        bought = "no price is written for any lot" if case.blank.bought else "nothing bought is written"
        return unknown("Blank", f"{bought} of {case.blank.id}")
    return CostLine(
        "Blank",
        cost.each * case.pieces,
        f"{case.figures.fine(cost.each)} landed ({_landed_words(cost, case.figures)}){case.times_pieces}",
        _landed_assumed(cost),
        used_up=True,
    )


def _landed_words(cost: Landed, figures: Figures) -> str:
    parts = [f"{figures.typed(cost.paid)} paid"]
    if cost.delivery:
        parts.append(f"{figures.typed(cost.delivery)} delivery")
    if cost.import_charges:
        parts.append(f"{figures.typed(cost.import_charges)} import charges")
    over = f"{cost.count} in {cost.lots} lots" if cost.lots > 1 else f"{cost.count}"
    return f"{' + '.join(parts)}, ÷ {over}"


def _landed_assumed(cost: Landed) -> tuple[str, ...]:
    words: list[str] = []
    if cost.without_price:
        words.append(f"{_lots(cost.without_price)} without a price cost the same")
    if cost.without_delivery:
        words.append(f"delivery of {_lots(cost.without_delivery)} was free")
    return tuple(words)


def _lots(count: int) -> str:
    return "1 lot" if count == 1 else f"{count} lots"


def power_lines(case: Case) -> Iterator[CostLine]:
    """Yield the lines of the power that pressing and warming up take."""
    setting = case.setting
    yield _pressing_power(case, setting)
    yield _warm_up(case, setting)


def _lacking(case: Case, setting: Setting) -> str | None:
    if case.workshop.shop.electricity is None:
        return "the shop has no price of electricity"
    if setting.press is None:
        return "no pressing says which press"
    if setting.press.watts is None:
        return f"{setting.press.id} has no watts"
    return None


def _pressing_power(case: Case, setting: Setting) -> CostLine:
    name, press, rate = "Power, pressing", setting.press, case.workshop.shop.electricity
    if (why := _lacking(case, setting)) or press is None or press.watts is None or rate is None:
        return unknown(name, why or "")
    if setting.time is None:
        return unknown(name, "no pressing says how long")
    if press.duty is None:
        return unknown(name, f"{press.id} has no duty (the share of the time that it heats)")
    price, duty = Fraction(rate.value), press.duty.of_one
    energy = kilowatt_hours(press.watts, setting.time.seconds, duty)
    return CostLine(
        name,
        energy * price / case.at_once * case.pieces,
        f"{press.watts} W × {case.figures.percent(duty)} × {case.figures.number(setting.time.seconds)} s"
        f" ({setting.source}) × {case.figures.typed(rate.value)} a kWh{case.over_at_once}{case.times_pieces}",
        (*case.at_once_assumed, *(("the supplier's time", "the only press") if setting.assumed else ())),
        used_up=True,
    )


def _warm_up(case: Case, setting: Setting) -> CostLine:
    name, press, rate = "Power, warm-up", setting.press, case.workshop.shop.electricity
    if (why := _lacking(case, setting)) or press is None or press.watts is None or rate is None:
        return unknown(name, why or "")
    if press.warm_up is None:
        return unknown(name, f"{press.id} has no warm-up time")
    energy = kilowatt_hours(press.watts, press.warm_up.seconds)
    return CostLine(
        name,
        energy * Fraction(rate.value) / case.batch,
        f"{press.watts} W × {case.figures.number(press.warm_up.minutes)} min"
        f" × {case.figures.typed(rate.value)} a kWh ÷ batch of {case.batch}",
        (*case.batch_assumed, *(("the only press",) if setting.assumed else ())),
        shared=True,
    )


def labour_lines(case: Case) -> Iterator[CostLine]:
    """Yield design (shared over the batch), pressing (each time) and finishing (good pieces only)."""
    minutes = case.project.minutes
    yield _labour(case, "Design", minutes.design, shared=True)
    yield _labour(case, "Press work", minutes.press, used_up=True)
    yield _labour(case, "Finishing", minutes.finish)


def _labour(case: Case, name: str, time: Duration | None, *, shared: bool = False, used_up: bool = False) -> CostLine:
    written = case.workshop.shop.labour
    rate = case.what_if.labour
    if rate is None and written is not None:
        rate = Fraction(written.value)
    if rate is None:
        return unknown(name, "the shop has no rate for labour", labour=True)
    if time is None:
        return unknown(name, "the project says no minutes; write 0 where it takes none", labour=True)
    minutes = time.minutes / case.batch if shared else time.minutes * case.scale
    how = f" ÷ batch of {case.batch}" if shared else ""
    if case.scale != 1 and not shared:
        how = f" × {case.pieces} pieces instead of {case.project.pieces}"
    return CostLine(
        name,
        minutes / _MINUTES_PER_HOUR * rate,
        f"{case.figures.number(time.minutes)} min{how} × {case.figures.fine(rate)} an hour",
        case.batch_assumed if shared else (),
        used_up=used_up,
        shared=shared,
        labour=True,
    )
