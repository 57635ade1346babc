"""Finish or discard what an interrupted make left. Inner module."""

from pathlib import Path

from maker_site.writer.site_folder._carry_out import carry_out, discard_staging
from maker_site.writer.site_folder._interrupts import interrupts_held
from maker_site.writer.site_folder._journal import read_journal
from maker_site.writer.site_folder._state import State


def recover(out: Path) -> None:
    """Leave the folder with a whole site: the new one where a journal was whole, otherwise the old one."""
    state = State(out)
    try:
        journal = read_journal(state.journal)
    except FileNotFoundError:
        discard_staging(out)
        return
    with interrupts_held():
        if journal is not None:
            carry_out(out, journal)
            return
        # Put in place whole, and yet not to be read: damaged, or of another version. Which files had moved is
        # not known, so the manifest is not to be believed either.
        state.manifest.unlink(missing_ok=True)
        state.journal.unlink()
        discard_staging(out)
