"""The manifest: what the tool has made in this folder, each address with its stamp. Inner module.

Compact JSON, sorted, with no time in it: the same site gives the same manifest, and a person can read it.
"""

import json
from collections.abc import Mapping
from pathlib import Path

from maker_site.writer.site_folder._durable import install

_VERSION = 1


def read_manifest(path: Path) -> dict[str, str] | None:
    """Give stamps by address, or None where there is no manifest or none that this version can read."""
    try:
        found = json.loads(path.read_bytes())
    except (FileNotFoundError, ValueError):
        return None
    if not isinstance(found, dict) or found.get("version") != _VERSION:
        return None
    files = found.get("files")
    return files if is_stamps(files) else None


def is_stamps(found: object) -> bool:
    """Whether something read from JSON maps texts to texts."""
    return isinstance(found, dict) and all(isinstance(stamp, str) for stamp in found.values())


def write_manifest(path: Path, files: Mapping[str, str]) -> None:
    """Put the manifest into place, whole or not at all."""
    whole = {"version": _VERSION, "files": dict(files)}
    install(path, json.dumps(whole, sort_keys=True, separators=(",", ":")).encode("ascii"))
