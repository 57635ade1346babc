"""The Nu HTML checker finds no error in any page of either copy."""

from pathlib import Path

import pytest

from tests.conftest import NOTE

from .fakes import write_page
from .nu import remarks

pytestmark = [pytest.mark.judge, pytest.mark.slow]


def test_the_checker_finds_a_stray_tag_passes_a_sound_page_and_says_which_it_could_not_judge(java_and_vnu, tmp_path):
    sound = write_page(tmp_path, "<p>Press face down.</p>", name="sound.html")
    spoilt = write_page(tmp_path, "<p>Press <b>face</p> down.", name="spoilt.html")
    found = remarks(java_and_vnu, [sound, spoilt, tmp_path / "missing.html"], tmp_path)
    told = {(remark.page, remark.kind) for remark in found if remark.kind != "warning"}
    assert told == {("spoilt.html", "error"), ("missing.html", "failed")}


def test_no_page_of_either_copy_has_an_error(java_and_vnu, demo_site: Path, record_property):
    pages = sorted(demo_site.rglob("*.html"))
    assert len(pages) > 40, "the demo has 16 projects with a page and a card each, and more"
    found = remarks(java_and_vnu, pages, demo_site)
    for remark in found:
        # On the disk the checker takes no file for the page's own; browsers do, and they judge it (test_published).
        if remark.kind == "warning" and "violates Content Security Policy" not in remark.message:
            record_property(NOTE, f"HTML checker: {remark}")
    assert [str(remark) for remark in found if remark.kind != "warning"] == []
