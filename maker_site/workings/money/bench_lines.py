"""The lines of the bench: blank, electricity, labour.

Inner module of the money workings.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from maker_site.language import apart, say, say_n
from maker_site.records.quantities import Duration
from maker_site.workings.money.case import Case, Setting
from maker_site.workings.money.landed import Landed, landed
from maker_site.workings.money.line import CostLine, unknown
from maker_site.workings.money.power import kilowatt_hours
from maker_site.workings.money.words import Figures

_MINUTES_PER_HOUR = 60


def blank_line(case: Case) -> CostLine:
    """Return the line of the blanks, at their landed cost."""
    blank = case.workshop.whole_blank(case.blank.id)
    cost, name = landed(blank), say("Blank")
    if cost.each is None and blank.bought:
        return unknown(name, say("no price is written for any lot of {blank}", blank=case.blank.id))
    if cost.each is None:
        return unknown(name, say("nothing bought is written of {blank}", blank=case.blank.id))
    return CostLine(
        name,
        cost.each * case.pieces,
        case.times_pieces(_landed_words(cost, cost.each, case.figures)),
        _landed_assumed(cost),
        used_up=True,
    )


def _landed_words(cost: Landed, each: Fraction, figures: Figures) -> str:
    parts = [say("{amount} paid", amount=figures.typed(cost.paid))]
    if cost.delivery:
        parts.append(say("{amount} delivery", amount=figures.typed(cost.delivery)))
    if cost.import_charges:
        parts.append(say("{amount} import charges", amount=figures.typed(cost.import_charges)))
    over = str(cost.count)
    if cost.lots > 1:
        over = say_n("{count} in {n} lot", "{count} in {n} lots", cost.lots, count=cost.count)
    return say(
        "{each} landed ({sum}, ÷ {count})",
        each=figures.fine(each),
        sum=" + ".join(apart(part) for part in parts),
        count=over,
    )


def _landed_assumed(cost: Landed) -> tuple[str, ...]:
    words: list[str] = []
    if cost.without_price:
        words.append(
            say_n(
                "{n} lot without a price cost the same",
                "{n} lots without a price cost the same",
                cost.without_price,
            )
        )
    if cost.without_delivery:
        words.append(say_n("delivery of {n} lot was free", "delivery of {n} lots was free", cost.without_delivery))
    return tuple(words)


def power_lines(case: Case) -> Iterator[CostLine]:
    """Yield the lines of the power that pressing and warming up take."""
    setting = case.setting
    yield _pressing_power(case, setting)
    yield _warm_up(case, setting)


def _lacking(case: Case, setting: Setting) -> str | None:
    if case.workshop.shop.electricity is None:
        return say("the shop has no price of electricity")
    if setting.press is None:
        return say("no pressing says which press")
    if setting.press.watts is None:
        return say("{press} has no watts", press=setting.press.id)
    return None


def _pressing_power(case: Case, setting: Setting) -> CostLine:
    name, press, rate = say("Power, pressing"), setting.press, case.workshop.shop.electricity
    if (why := _lacking(case, setting)) or press is None or press.watts is None or rate is None:
        return unknown(name, why or "")
    if setting.time is None:
        return unknown(name, say("no pressing says how long"))
    if press.duty is None:
        return unknown(name, say("{press} has no duty (the share of the time that it heats)", press=press.id))
    price, duty = Fraction(rate.value), press.duty.of_one
    energy = kilowatt_hours(press.watts, setting.time.seconds, duty)
    words = say(
        "{watts} W × {duty} × {seconds} s ({source}) × {price} a kWh",
        watts=press.watts,
        duty=case.figures.percent(duty),
        seconds=case.figures.number(setting.time.seconds),
        source=setting.source,
        price=case.figures.typed(rate.value),
    )
    assumed = (say("the supplier's time"), say("the only press")) if setting.assumed else ()
    return CostLine(
        name,
        energy * price / case.at_once * case.pieces,
        case.times_pieces(case.over_at_once(words)),
        (*case.at_once_assumed, *assumed),
        used_up=True,
    )


def _warm_up(case: Case, setting: Setting) -> CostLine:
    name, press, rate = say("Power, warm-up"), setting.press, case.workshop.shop.electricity
    if (why := _lacking(case, setting)) or press is None or press.watts is None or rate is None:
        return unknown(name, why or "")
    if press.warm_up is None:
        return unknown(name, say("{press} has no warm-up time", press=press.id))
    energy = kilowatt_hours(press.watts, press.warm_up.seconds)
    words = say(
        "{watts} W × {minutes} min × {price} a kWh",
        watts=press.watts,
        minutes=case.figures.number(press.warm_up.minutes),
        price=case.figures.typed(rate.value),
    )
    return CostLine(
        name,
        energy * Fraction(rate.value) / case.batch,
        case.over_batch(words),
        (*case.batch_assumed, *((say("the only press"),) if setting.assumed else ())),
        shared=True,
    )


def labour_lines(case: Case) -> Iterator[CostLine]:
    """Yield design (shared over the batch), pressing (each time) and finishing (good pieces only)."""
    minutes = case.project.minutes
    yield _labour(case, say("Design"), minutes.design, shared=True)
    yield _labour(case, say("Press work"), minutes.press, used_up=True)
    yield _labour(case, say("Finishing"), minutes.finish)


def _labour(case: Case, name: str, time: Duration | None, *, shared: bool = False, used_up: bool = False) -> CostLine:
    written = case.workshop.shop.labour
    rate = case.what_if.labour
    if rate is None and written is not None:
        rate = Fraction(written.value)
    if rate is None:
        return unknown(name, say("the shop has no rate for labour"), labour=True)
    if time is None:
        return unknown(name, say("the project says no minutes; write 0 where it takes none"), labour=True)
    minutes = time.minutes / case.batch if shared else time.minutes * case.scale
    taken = say("{n} min", n=case.figures.number(time.minutes))
    if shared:
        taken = case.over_batch(taken)
    elif case.scale != 1:
        taken = case.times_pieces_instead(taken)
    return CostLine(
        name,
        minutes / _MINUTES_PER_HOUR * rate,
        say("{time} × {rate} an hour", time=taken, rate=case.figures.fine(rate)),
        case.batch_assumed if shared else (),
        used_up=used_up,
        shared=shared,
        labour=True,
    )
