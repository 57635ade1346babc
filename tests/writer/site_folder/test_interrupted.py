"""A make that dies leaves the whole old site or the whole new one, once the folder is opened again."""

import os
import shutil
import signal
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from maker_site.writer.site_folder import SiteFolder, SiteFolderProblem

from .trees import NEW, OLD, leftovers, make, make_in_a_process, reopen, tree

REPLACEMENTS = 6  # the journal, the four files of NEW that differ from OLD, the manifest


class FailingReplace:
    """Stands in for `os.replace`, and fails at one of its calls as a drive would."""

    def __init__(self, fails_at: int) -> None:
        self.fails_at = fails_at
        self.calls = 0
        self.real = os.replace

    def __call__(self, source: Path, target: Path | str) -> None:
        self.calls += 1
        if self.calls == self.fails_at:
            raise OSError(5, "Input/output error", str(source))
        self.real(source, target)


@pytest.mark.parametrize("fails_at", range(1, REPLACEMENTS + 1))
def test_a_failure_at_any_replacement_ends_in_the_old_or_the_new_site(tmp_path: Path, fails_at: int) -> None:
    make(tmp_path, OLD)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "replace", FailingReplace(fails_at))
        with pytest.raises(SiteFolderProblem, match="Input/output error"):
            make(tmp_path, NEW)
    reopen(tmp_path)
    assert tree(tmp_path) == (OLD if fails_at == 1 else NEW)
    assert leftovers(tmp_path) == set()
    make(tmp_path, NEW)
    assert tree(tmp_path) == NEW


def test_there_are_as_many_replacements_as_the_tests_count_on(tmp_path: Path) -> None:
    make(tmp_path, OLD)
    with pytest.MonkeyPatch.context() as patch:
        counting = FailingReplace(fails_at=0)
        patch.setattr(os, "replace", counting)
        make(tmp_path, NEW)
    assert counting.calls == REPLACEMENTS


names = st.sampled_from(["a", "b", "c.html"])
sites = st.dictionaries(
    st.lists(names, min_size=1, max_size=3).map(lambda parts: "/".join([*parts, "page.html"])),
    st.sampled_from([b"", b"one", b"two", b"three"]),
    max_size=8,
)


@settings(max_examples=60, deadline=None)
@given(old=sites, new=sites, first=st.integers(1, 10), second=st.integers(1, 10))
def test_any_site_survives_a_failure_and_a_failure_of_the_recovery(
    old: dict[str, bytes], new: dict[str, bytes], first: int, second: int
) -> None:
    out = Path(tempfile.mkdtemp())
    try:
        make(out, old)
        for work, fails_at in ((lambda: make(out, new), first), (lambda: reopen(out), second)):
            with pytest.MonkeyPatch.context() as patch:
                failing = FailingReplace(fails_at)
                patch.setattr(os, "replace", failing)
                try:
                    work()
                except SiteFolderProblem:
                    assert failing.calls == fails_at
        reopen(out)
        assert tree(out) in (old, new)
        assert tree(out) == new or first == 1
        make(out, new)
        assert tree(out) == new
        assert leftovers(out) == set()
    finally:
        shutil.rmtree(out)


@pytest.mark.parametrize("dies_at", range(1, REPLACEMENTS + 1))
def test_a_process_killed_at_any_replacement_ends_in_the_old_or_the_new_site(tmp_path: Path, dies_at: int) -> None:
    make(tmp_path, OLD)
    with make_in_a_process(tmp_path, trouble=f"number == {dies_at} and os.kill(os.getpid(), signal.SIGKILL)") as killed:
        _, errors = killed.communicate(timeout=30)
    assert killed.returncode == -signal.SIGKILL, errors
    assert leftovers(tmp_path)  # it died at work
    reopen(tmp_path)
    assert tree(tmp_path) == (OLD if dies_at == 1 else NEW)
    assert leftovers(tmp_path) == set()


def test_a_process_killed_in_its_first_commit_leaves_the_whole_site_too(tmp_path: Path) -> None:
    with make_in_a_process(tmp_path, trouble="number == 3 and os.kill(os.getpid(), signal.SIGKILL)") as killed:
        killed.communicate(timeout=30)
    assert 0 < len(tree(tmp_path)) < len(NEW)
    reopen(tmp_path)
    assert tree(tmp_path) == NEW


def test_a_half_written_journal_counts_for_nothing(tmp_path: Path) -> None:
    make(tmp_path, OLD)
    (tmp_path / ".maker-site/journal.json.new").write_bytes(b'{"version":1,"remove":["public/me')
    reopen(tmp_path)
    assert tree(tmp_path) == OLD
    assert leftovers(tmp_path) == set()


@pytest.mark.parametrize("journal", [b"", b"[]", b"{}", b'{"version":99}', b"\xff"])
def test_a_journal_that_cannot_be_read_loses_nothing_and_the_next_make_is_whole(tmp_path: Path, journal: bytes) -> None:
    make(tmp_path, OLD)
    (tmp_path / ".maker-site/journal.json").write_bytes(journal)
    reopen(tmp_path)
    assert tree(tmp_path) == OLD
    changes = make(tmp_path, NEW)
    assert tree(tmp_path) == {**OLD, **NEW}
    assert changes.unknown == ("workshop/projects/withdrawn/index.html",)


def test_an_error_while_staging_leaves_the_site_as_it_was(tmp_path: Path) -> None:
    make(tmp_path, OLD)

    def stop_half_way() -> None:
        with SiteFolder.open(tmp_path) as site:
            site.put("workshop/index.html", b"half made")
            raise KeyError("a fault in a template")

    with pytest.raises(KeyError, match="a fault in a template"):
        stop_half_way()
    assert tree(tmp_path) == OLD
    assert leftovers(tmp_path) == set()


@pytest.mark.skipif(os.name != "posix", reason="signals are sent as on Unix")
def test_ctrl_c_while_staging_leaves_the_site_as_it_was(tmp_path: Path) -> None:
    make(tmp_path, OLD)
    with make_in_a_process(tmp_path, staged="print('staged', flush=True); time.sleep(30)") as stopped:
        assert stopped.stdout is not None
        assert stopped.stdout.readline() == "staged\n"
        stopped.send_signal(signal.SIGINT)
        _, errors = stopped.communicate(timeout=10)
    assert "KeyboardInterrupt" in errors
    assert tree(tmp_path) == OLD
    assert leftovers(tmp_path) == set()


@pytest.mark.skipif(os.name != "posix", reason="signals are sent as on Unix")
@pytest.mark.parametrize(
    ("begun_before", "replacements"), [(False, REPLACEMENTS), (True, REPLACEMENTS - 1)], ids=["commit", "recovery"]
)
def test_ctrl_c_is_held_until_the_site_is_whole(tmp_path: Path, begun_before: bool, replacements: int) -> None:
    make(tmp_path, OLD)
    if begun_before:
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(os, "replace", FailingReplace(fails_at=2))
            with pytest.raises(SiteFolderProblem):
                make(tmp_path, NEW)
    # Before every replacement the process waits for a line, and so for the signal that was sent before the line.
    with make_in_a_process(tmp_path, trouble="print(number, flush=True); sys.stdin.readline()") as stopped:
        assert stopped.stdin is not None
        assert stopped.stdout is not None
        for number in range(1, replacements + 1):
            assert stopped.stdout.readline() == f"{number}\n"
            stopped.send_signal(signal.SIGINT)
            stopped.stdin.write("on\n")
            stopped.stdin.flush()
        _, errors = stopped.communicate(timeout=10)
    assert errors.rstrip().endswith("KeyboardInterrupt")
    assert tree(tmp_path) == NEW
    assert leftovers(tmp_path) == set()
