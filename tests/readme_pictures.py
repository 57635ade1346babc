"""Take the README's pictures: ``python -m tests.readme_pictures``.

Makes the demo into a temporary folder, opens it in the machine's Chromium, and puts screenshots side by side into
`.readme/`. Run it after a change that shows.
"""

import shutil
import tempfile
from pathlib import Path

from PIL import Image
from playwright.sync_api import Browser, sync_playwright

from tests.conftest import CHROMIUM_FLAGS, CHROMIUM_NAMES, CONTENT, ROOT, make_site

FOLDER = ROOT / ".readme"
GROUND = (222, 214, 199)
GAP = 28
HEIGHT = 760
SHOTS = (
    # name, page, width of the window, width in the picture
    ("project", "workshop/projects/heron-river-plate.html", 1260, 790),
    ("card", "workshop/cards/heron-river-plate.html", 400, 330),
    ("menu", "public/menu.html", 1060, 640),
)


def shoot(browser: Browser, page: str, size: tuple[int, int], to: Path) -> None:
    """Take one screenshot, twice as fine as it is shown."""
    width, height = size
    view = browser.new_page(viewport={"width": width, "height": height}, device_scale_factor=2, color_scheme="light")
    view.goto(page)
    view.wait_for_load_state("networkidle")
    view.screenshot(path=to)
    view.close()


def main() -> None:
    """Make .readme/overview.png."""
    chromium = next((path for name in CHROMIUM_NAMES if (path := shutil.which(name))), None)
    if chromium is None:
        raise SystemExit(f"no Chromium on this machine ({', '.join(CHROMIUM_NAMES)})")
    with tempfile.TemporaryDirectory() as home, sync_playwright() as play:
        site = Path(home) / "site"
        made = make_site(CONTENT, site)
        if made.returncode:
            raise SystemExit(made.stderr)
        browser = play.chromium.launch(executable_path=chromium, args=list(CHROMIUM_FLAGS))
        pictures = []
        for name, page, window, width in SHOTS:
            file = Path(home) / f"{name}.png"
            shoot(browser, (site / page).as_uri(), (window, HEIGHT * window // width), file)
            with Image.open(file) as shot:
                pictures.append(shot.convert("RGB").resize((width, HEIGHT), Image.Resampling.LANCZOS))
        browser.close()
    total = sum(picture.width for picture in pictures) + GAP * (len(pictures) + 1)
    overview = Image.new("RGB", (total, HEIGHT + 2 * GAP), GROUND)
    left = GAP
    for picture in pictures:
        overview.paste(picture, (left, GAP))
        left += picture.width + GAP
    FOLDER.mkdir(exist_ok=True)
    overview.quantize(256, kmeans=4, dither=Image.Dither.NONE).save(FOLDER / "overview.png", optimize=True)
    print(f"{FOLDER / 'overview.png'}: {(FOLDER / 'overview.png').stat().st_size // 1024} kB")


if __name__ == "__main__":
    main()
