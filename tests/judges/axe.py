"""The accessibility checker axe-core, run in an open page."""

from collections.abc import Sequence
from typing import Any

from playwright.sync_api import Page

# What can differ between a page in light and the same page in dark.
COLOUR_RULES = ("color-contrast", "link-in-text-block")


def violations(page: Page, axe_source: str, rules: Sequence[str] | None = None) -> list[str]:
    """List what breaks one of the rules, by default all that are on by default, with the element that does.

    Run it as often as wanted in one page.
    """
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(axe_source)
    # What axe would load once more before it begins is for two rules alone: one is off by default
    # (css-orientation-lock), the other never tells a violation (no-autoplay-audio: `reviewOnFail`).
    report: dict[str, Any] = page.evaluate(
        "(rules) => axe.run(document, {resultTypes: ['violations'], preload: false, ...(rules && {runOnly: rules})})",
        None if rules is None else list(rules),
    )
    return [_told(rule, node) for rule in report["violations"] for node in rule["nodes"]]


def _told(rule: dict[str, Any], node: dict[str, Any]) -> str:
    why = node["failureSummary"].splitlines()[-1].strip()
    return f"{rule['id']} ({rule['impact']}): {node['target']}: {why}: {node['html'][:160]}"
