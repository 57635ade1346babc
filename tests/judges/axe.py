"""The accessibility checker axe-core, run in an open page with all the rules that it has on by default."""

from typing import Any

from playwright.sync_api import Page


def violations(page: Page, axe_source: str) -> list[str]:
    """List what breaks a rule, with the element that does. Run it as often as wanted in one page."""
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(axe_source)
    report: dict[str, Any] = page.evaluate("() => axe.run(document, {resultTypes: ['violations']})")
    return [_told(rule, node) for rule in report["violations"] for node in rule["nodes"]]


def _told(rule: dict[str, Any], node: dict[str, Any]) -> str:
    why = node["failureSummary"].splitlines()[-1].strip()
    return f"{rule['id']} ({rule['impact']}): {node['target']}: {why}: {node['html'][:160]}"
