"""Design files made by hand for the tests."""

from pathlib import Path


def svg(inside: str = "", *, head: str = 'width="100mm" height="50mm" viewBox="0 0 100 50"') -> str:
    """An SVG with these attributes and this content."""
    return f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" {head}>{inside}</svg>'


def pdf(*pages: str, media: str = "0 0 200 100", extra: str = "") -> bytes:
    """A PDF (ISO 32000-1, by hand) with a page for each content stream, and EXTRA entries in every page."""
    kids = " ".join(f"{4 + 2 * index} 0 R" for index in range(len(pages)))
    bodies = [
        "<< /Type /Catalog /Pages 2 0 R >>",
        f"<< /Type /Pages /Kids [{kids}] /Count {len(pages)} >>",
        "<< >>",
    ]
    for index, stream in enumerate(pages):
        boxes = f"/MediaBox [{media}] {extra}"
        bodies.append(f"<< /Type /Page /Parent 2 0 R {boxes} /Resources 3 0 R /Contents {5 + 2 * index} 0 R >>")
        bodies.append(f"<< /Length {len(stream)} >>\nstream\n{stream}\nendstream")
    data, places = b"%PDF-1.7\n", []
    for number, body in enumerate(bodies, 1):
        places.append(len(data))
        data += f"{number} 0 obj\n{body}\nendobj\n".encode()
    table = "".join(f"{place:010} 00000 n \n" for place in places)
    size = len(bodies) + 1
    end = f"xref\n0 {size}\n0000000000 65535 f \n{table}trailer\n<< /Size {size} /Root 1 0 R >>\n"
    return data + f"{end}startxref\n{len(data)}\n%%EOF\n".encode()


def written(folder: Path, name: str, content: str | bytes) -> Path:
    """Write a file and return its path."""
    path = folder / name
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return path
