"""Reading drawn marks back with an XML parser."""

import re
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"


def read(mark: str) -> ElementTree.Element:
    """The drawing as a tree; fails where it is not well-formed."""
    return ElementTree.fromstring(mark)


def of_class(drawing: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    """Every element that carries the class NAME."""
    return [element for element in drawing.iter() if name in element.get("class", "").split()]


def numbers(path: str) -> list[float]:
    """The figures of a path, in order."""
    return [float(figure) for figure in re.findall(r"-?(?:\d+\.?\d*|\.\d+)", path)]
