"""Tiny pages made by hand, sound ones and spoilt ones, on which each judge shows that it can fail."""

import textwrap
from pathlib import Path

from PIL import Image

STYLE = """
    :root { color-scheme: light dark }
    body { margin: 8px; font: 17px/1.5 sans-serif; color: #1f1d1a; background: #faf7f0 }
    @media (prefers-color-scheme: dark) { body { color: #efeae0; background: #191714 } a { color: #8fc3e0 } }
    img { max-width: 100%; height: auto }
"""


def write_page(folder: Path, body: str, *, name: str = "page.html", head: str = "", language: str = "en-GB") -> Path:
    """Write a sound page around this body, with a picture of 300 x 200 points in the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    Image.new("RGB", (300, 200), "#8d8474").save(folder / "slate.png")
    page = folder / name
    page.parent.mkdir(parents=True, exist_ok=True)
    page.write_text(
        textwrap.dedent(
            f"""\
            <!DOCTYPE html>
            <html lang="{language}">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>Slate coasters</title>
            <style>{STYLE}</style>
            {head}
            </head>
            <body>
            <main>
            <h1>Slate coasters</h1>
            {body}
            </main>
            </body>
            </html>
            """
        ),
        encoding="utf-8",
    )
    return page
