"""A workshop of a few lines, written where a test wants it."""

from collections.abc import Mapping
from pathlib import Path

from PIL import Image

SHOP = "name: Test Bench\ncurrency: GBP\n"
FILES: Mapping[str, str] = {
    "shop.yaml": SHOP,
    "blanks/slate.yaml": "name: Slate coaster\nsubstrate: slate\nsize: 100 x 100 mm\nthickness: 5 mm\n",
    "presses/clam.yaml": "name: Clam\nkind: flat clamshell\n",
    "projects/harbour/project.yaml": (
        "title: Harbour coasters\nblank: slate\nmade: 2026-04-18\n"
        "photos: [{file: photos/set.jpg, text: Four coasters, share: yes}]\n"
        "share: {tutorial: yes, published: 2026-05-01, menu: {section: Home, price: 24.00}}\n"
    ),
    "projects/harbour/tutorial.md": "Four coasters.\n\n## Press\n\n![The set](photos/set.jpg)\n",
    "press-log/2026.csv": (
        "date,project,blank,press,temperature,time,pressure,face,pressed,good,defects\n"
        "2026-04-18,harbour,slate,clam,200 C,5:00,medium,print up,4,3,blurred\n"
    ),
}


def write_workshop(folder: Path, changed: Mapping[str, str | bytes | None] | None = None) -> Path:
    """Write the workshop into `folder`, with files added, changed, or (None) left out; return the folder."""
    for name, text in {**FILES, **(changed or {})}.items():
        if text is None:
            continue
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
    photo = folder / "projects/harbour/photos/set.jpg"
    if not photo.exists() and (changed or {}).get("projects/harbour/photos/set.jpg", "") is not None:
        photo.parent.mkdir(parents=True, exist_ok=True)
        Image.linear_gradient("L").resize((640, 480)).convert("RGB").save(photo)
    return folder
