"""Starting the command stays light: what only some commands need is imported when they run."""

import subprocess
import sys

HEAVY = ("PIL", "pydantic", "jinja2", "markdown", "babel", "yaml", "rich", "livereload", "segno", "typst", "rectpack")


def test_help_imports_nothing_heavy() -> None:
    code = (
        "import sys; from click.testing import CliRunner; from maker_site.cli import main; "
        "CliRunner().invoke(main, ['--help']); print(*sorted(set(m.partition('.')[0] for m in sys.modules)))"
    )
    loaded = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.split()

    assert not set(HEAVY) & set(loaded)
