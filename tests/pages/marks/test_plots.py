"""Plots: where things stand, worked by hand, and that both units say the same."""

import re
from xml.etree import ElementTree as ET

import pytest

from maker_site.pages.marks._frame import Scale, clock_ticks, nice_ticks
from maker_site.pages.marks.plots import Spot, Unit, YieldPoint, calibration_plot, radius, setting_plot, yield_plot

SVG = "{http://www.w3.org/2000/svg}"


def texts(drawn: str) -> list[str]:
    return [each.text or "" for each in ET.fromstring(drawn).iter(f"{SVG}text")]


def test_a_scale_puts_the_middle_in_the_middle() -> None:
    assert Scale(180, 200, 100, 300).at(190) == 200


@pytest.mark.parametrize(
    ("low", "high", "ticks"),
    [
        (183, 206, [185, 190, 195, 200, 205]),  # by hand: a step of 5 gives five
        (0, 1, [0, 0.2, 0.4, 0.6, 0.8, 1]),
        (140, 207, [140, 160, 180, 200]),
    ],
)
def test_ticks_are_round(low: float, high: float, ticks: list[float]) -> None:
    assert nice_ticks(low, high) == ticks


def test_times_have_steps_that_a_clock_has() -> None:
    assert clock_ticks(220, 500) == [240, 300, 360, 420, 480]


def test_the_upper_side_says_the_same_temperature_in_the_other_unit() -> None:
    drawn = setting_plot(
        [Spot(200, 300, 4, 4, "")], title="x", unit=Unit("°C", "°F"), clock=lambda value: f"{value:.0f}"
    )
    root = ET.fromstring(drawn)
    at = {each.text: float(each.get("x") or 0) for each in root.iter(f"{SVG}text")}

    # 200 °C is 392 °F and 195 °C is 383 °F (exact): 390 °F stands 2/9 of the way from 200 to 195.
    assert at["390 °F"] == pytest.approx(at["200 °C"] - (at["200 °C"] - at["195 °C"]) * 2 / 9, abs=0.05)


def test_a_spot_with_nothing_good_is_crossed_and_not_filled() -> None:
    drawn = setting_plot([Spot(200, 300, 0, 4, "0 of 4 good")], title="x", unit=Unit("°C", "°F"), clock=str)

    assert "m-good" not in drawn
    assert "0 of 4 good" in drawn


def test_a_spots_area_grows_with_its_pieces_up_to_forty() -> None:
    assert radius(1) == 5
    assert radius(40) == radius(400) == 15
    # Area is linear in the pieces: the middle of 1 and 40 pieces has the mean of the two areas, (25 + 225)/2 = 125.
    assert radius(20) ** 2 + radius(21) ** 2 == pytest.approx(250, abs=0.01)


def test_words_of_a_spot_are_escaped() -> None:
    drawn = setting_plot([Spot(200, 300, 1, 1, "<b> & co")], title="a < b", unit=Unit("°F", "°C"), clock=str)

    ET.fromstring(drawn)
    assert "&lt;b&gt; &amp; co" in drawn


def test_yield_shows_each_day_and_the_dates_given() -> None:
    points = [YieldPoint(0, 1, 2, 0.5, 0.1, 0.9), YieldPoint(10, 2, 2, 0.75, 0.3, 0.95)]
    drawn = yield_plot(points, title="x", dates=[(0, "1 Jan"), (10, "11 Jan")])

    assert {"1 Jan", "11 Jan", "50 %"} <= set(texts(drawn))


def test_beyond_its_readings_a_curve_goes_on_dashed_at_the_same_offset() -> None:
    drawn = calibration_plot([(180, 174), (200, 193)], [(180, 174), (200, 193)], title="x", unit=Unit("°C", "°F"))
    dashed = re.findall(r'm-line m-dashed" d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)"', drawn)

    assert len(dashed) == 2
    for x1, y1, x2, y2 in dashed:  # both scales have as many pixels a degree or fewer upwards: a straight slope
        across, up = float(x2) - float(x1), float(y1) - float(y2)
        assert up / across == pytest.approx((284 - 46) / (464 - 64), abs=0.01)
