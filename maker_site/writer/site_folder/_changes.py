"""What a commit did. Inner module."""

from maker_site.frozen import frozen


@frozen
class Changes:
    """What a commit did. Addresses are sorted."""

    written: tuple[str, ...]
    """Files that are new or have other bytes than before."""
    removed: tuple[str, ...]
    """Files made earlier that are no longer part of the site."""
    kept: int
    """How many files were left untouched."""
    unknown: tuple[str, ...] = ()
    """Where the manifest had been lost: files in the folder beside the site. Who made them isn't known."""
