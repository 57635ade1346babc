"""What the judges share: each page is looked at once by each parallel worker."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.conftest import AXE

from .looks import Lookout


@pytest.fixture(scope="session")
def lookout(browser: Browser, demo_site: Path) -> Lookout:
    """Look at the demo's pages; without the accessibility checker too, whose tests then skip."""
    return Lookout(browser, demo_site, AXE.read_text(encoding="utf-8") if AXE.is_file() else None)
