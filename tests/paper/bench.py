"""A small workshop with artwork that looks different from every side, for papers."""

from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType

from PIL import Image, ImageCms, ImageDraw

SHOP = """name: Half Door Shed
currency: GBP
paper: A4
printer: {margin: 5 mm, gap: 4 mm, ppi: 300}
"""
SLATE = "name: Slate coaster\nsubstrate: slate\nsize: 90 x 60 mm\nbleed: 3 mm\nlimit: 210 C\n"
LOG = (
    "date,project,blank,press,temperature,time,pressure,face,pressed,good\n"
    "2026-04-18,harbour,slate,clam,200 C,5:00,medium,print up,4,4\n"
)


def asymmetric(size: tuple[int, int] = (960, 660)) -> Image.Image:
    """A picture that no turning or mirroring brings back to itself."""
    picture = Image.new("RGB", size, (250, 245, 230))
    draw = ImageDraw.Draw(picture)
    width, height = size
    draw.rectangle((0, 0, width // 3, height // 4), fill=(200, 30, 30))
    draw.rectangle((width * 5 // 6, height * 3 // 4, width, height), fill=(30, 60, 200))
    draw.polygon([(40, height - 40), (width // 3, height - 40), (40, height // 2)], fill=(20, 140, 40))
    return picture


def srgb() -> bytes:
    return ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()


def workshop(folder: Path, files: Mapping[str, str] = MappingProxyType({})) -> Path:
    """Write the workshop; `files` replace or add texts by path."""
    texts = {
        "shop.yaml": SHOP,
        "blanks/slate.yaml": SLATE,
        "blanks/tag.yaml": "name: Key tag\nsubstrate: aluminium\nsize: 54 x 25 mm\nbleed: 3 mm\n",
        "blanks/tote.yaml": "name: Tote\nsubstrate: cotton\nmethod: film transfer\nsize: 100 x 80 mm\n",
        "presses/clam.yaml": "name: Clamshell\nkind: flat clamshell\n",
        "press-log/2026.csv": LOG,
        "projects/harbour/project.yaml": (
            "title: Harbour wall\nblank: slate\npieces: 3\nartwork: [{file: artwork/wall.png}]\n"
            "photos: [{file: photos/set.png, text: Three coasters, share: yes}]\n"
            "share: {menu: {section: Home, name: Harbour coasters, price: 24.00}}\n"
        ),
        "projects/tags/project.yaml": "title: Boat tags\nblank: tag\nartwork: [{file: artwork/wall.png}]\n",
        "projects/bag/project.yaml": "title: Film bag\nblank: tote\nartwork: [{file: artwork/wall.png}]\n",
        **files,
    }
    for name, text in texts.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    for project in ("harbour", "tags", "bag"):
        home = folder / "projects" / project
        (home / "artwork").mkdir(exist_ok=True)
        asymmetric().save(home / "artwork" / "wall.png", icc_profile=srgb())
    photos = folder / "projects" / "harbour" / "photos"
    photos.mkdir(exist_ok=True)
    asymmetric((400, 300)).save(photos / "set.png")
    return folder
