"""A catalogue that has everything, by which a sentence that goes past all catalogues is found."""

from gettext import NullTranslations


class Everything(NullTranslations):
    """A catalogue that has every sentence: between brackets."""

    def gettext(self, message: str) -> str:
        return f"[{message}]"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return f"[{msgid1 if n == 1 else msgid2}]"

    def pgettext(self, context: str, message: str) -> str:
        return f"[{message}]"


def outside(words: str) -> str:
    """Return what stands outside all brackets."""
    depth, outside = 0, ""
    for letter in words:
        depth += (letter == "[") - (letter == "]")
        outside += letter if not depth else ""
    return outside
