"""One make at a time in one output folder."""

from pathlib import Path

import pytest

from maker_site.writer.site_folder import SiteFolder, SiteFolderProblem

from .trees import NEW, make, make_in_a_process, reopen, tree


def test_a_second_make_is_refused_at_once_and_the_first_goes_on(tmp_path: Path) -> None:
    with SiteFolder.open(tmp_path) as site:
        site.put("index.html", b"first")
        with pytest.raises(SiteFolderProblem) as refused:
            reopen(tmp_path)
        site.commit()
    assert str(refused.value) == (f"Another make is writing “{tmp_path}”. Wait until it has finished, then make again.")
    assert tree(tmp_path) == {"index.html": b"first"}


def test_a_make_in_another_process_holds_the_folder_and_lets_go_of_it_when_killed(tmp_path: Path) -> None:
    with make_in_a_process(tmp_path, staged="print('staged', flush=True); time.sleep(30)") as other:
        assert other.stdout is not None
        assert other.stdout.readline() == "staged\n"
        with pytest.raises(SiteFolderProblem, match="Another make is writing"):
            make(tmp_path, NEW)
        other.kill()
        other.wait(timeout=10)
        make(tmp_path, NEW)
    assert tree(tmp_path) == NEW
