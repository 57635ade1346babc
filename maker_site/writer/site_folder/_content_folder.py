"""Whether an output folder keeps clear of the content folder. Inner module."""

from pathlib import Path


def check_out(out: Path, content: Path) -> str | None:
    """Give a sentence where `out` is, holds or lies in the content folder, and None where it is fit.

    Links are followed, and names that a drive takes for the same count as the same. Neither folder need be
    there yet.
    """
    real_out, real_content = out.resolve(), content.resolve()
    if _same(real_out, real_content):
        relation = "is the content folder"
    elif any(_same(above, real_content) for above in real_out.parents):
        relation = f"lies in the content folder “{content}”"
    elif any(_same(above, real_out) for above in real_content.parents):
        relation = f"holds the content folder “{content}”"
    else:
        return None
    return f"The output folder “{out}” {relation}. Choose one beside it, so that records and pages never mix."


def _same(one: Path, other: Path) -> bool:
    try:
        return one == other or one.samefile(other)
    except OSError:  # not there, or not to be looked at: then only the names can tell
        return False
