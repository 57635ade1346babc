"""Whether the addresses that the records name answer. The only part that asks anything of the network, when told to."""

from __future__ import annotations

import http.client
from collections.abc import Callable, Iterable
from concurrent.futures import ThreadPoolExecutor
from typing import Final
from urllib.error import HTTPError, URLError
from urllib.request import Request, build_opener

from maker_site.records import Problem
from maker_site.records.outward_links import OutwardLink

SECONDS: Final = 10
"""How long one address is waited for."""
AT_ONCE: Final = 4
_AGENT: Final = "maker-site (a maker's own link check)"
_NO_HEAD: Final = {403, 404, 405, 501}
"""Answers that some hosts give to a question for the head alone; then the page itself is asked for."""


def cautions_about(
    links: Iterable[OutwardLink], told: Callable[[int, int], None], seconds: float = SECONDS
) -> list[Problem]:
    """Ask for each address once, few at a time, and return a caution for every place that names one without answer."""
    places: dict[str, list[OutwardLink]] = {}
    for link in links:
        places.setdefault(link.address.partition("#")[0], []).append(link)
    found: list[Problem] = []
    with ThreadPoolExecutor(max_workers=AT_ONCE) as pool:
        answers = pool.map(lambda address: trouble(address, seconds), places)
        for done, (address, said) in enumerate(zip(places, answers, strict=True), 1):
            told(done, len(places))
            if said:
                found += [link.caution(f"“{address}” {said}") for link in places[address]]
    return sorted(found)


def trouble(address: str, seconds: float = SECONDS) -> str | None:
    """Return what is wrong with an address, or None where it answers."""
    said = _ask(address, "HEAD", seconds)
    if isinstance(said, int) and said in _NO_HEAD:
        said = _ask(address, "GET", seconds)
    if isinstance(said, int):
        return f"answers {said} ({http.client.responses.get(said, 'unknown')}); look whether it has moved"
    return said


def _ask(address: str, method: str, seconds: float) -> int | str | None:
    """Return the number of an answer that is no success, a sentence where there is none, None where all is well."""
    try:
        request = Request(address, method=method, headers={"User-Agent": _AGENT})
        with build_opener().open(request, timeout=seconds):
            return None
    except HTTPError as error:
        error.close()
        return error.code
    except TimeoutError:
        return f"has not answered in {seconds:g} seconds"
    except URLError as error:
        if isinstance(error.reason, TimeoutError):
            return f"has not answered in {seconds:g} seconds"
        return f"can't be reached ({error.reason})"
    except (OSError, ValueError, http.client.HTTPException) as error:
        return f"can't be reached ({error})"
