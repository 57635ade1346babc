"""Setting a paper in a process of its own, begun before anything is read.

So the typesetter's memory is not added to that of the records, which a large document has much of.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from maker_site.paper.typesetting import Document, Paper, PaperProblem
from maker_site.writer.crew import cores, crew
from maker_site.writer.printing import setter
from maker_site.writer.site_folder import SiteFolderProblem
from maker_site.writer.themes import Theme


@contextmanager
def setting_apart(used: Theme, content: Path) -> Iterator[Callable[[Document], Paper]]:
    """Give what sets one document after the other; it raises `PaperProblem` as a typesetter does.

    Where no process can be forked they are set in this one.
    """

    @contextmanager
    def begin(_: int) -> Iterator[Callable[[Document], Paper]]:
        with setter(used, content) as setting:
            yield setting.set

    with crew(min(1, cores()), begin) as apart:
        if apart is None:
            with begin(0) as set_here:
                yield set_here
            return

        def ask(document: Document) -> Paper:
            apart.ask(document)
            (answer,) = apart.ready()
            try:
                return apart.take(answer)
            except SiteFolderProblem as ended:
                sentence = f"{document.title}: setting it ended before it was done; was the memory full?"
                raise PaperProblem(sentence) from ended

        yield ask
