"""The places in `OUT/.maker-site/`. Inner module."""

from pathlib import Path

from maker_site.writer.site_folder._address import STATE


class State:
    """Where an output folder keeps its lock, manifest, journal, staged files and mark."""

    __slots__ = ("folder", "journal", "lock", "manifest", "mark", "staging")

    def __init__(self, out: Path) -> None:
        self.folder = out / STATE
        self.lock = self.folder / "lock"
        self.manifest = self.folder / "manifest.json"
        self.journal = self.folder / "journal.json"
        self.mark = self.folder / "made-here.txt"
        self.staging = self.folder / "staging"
