"""A workshop that is crowded past the first page of each list, in words as long as a maker would write."""

from collections.abc import Iterator, Mapping
from datetime import date, timedelta

BLANKS = 210
PROJECTS = 150
PRESSES = 42
SETTINGS = 260
"""Of the one blank that everything is tried on, and of the one press and the one project that it is tried for."""
LONG = "A title as long as a maker would ever write it, with the names of both and the day that it was all made for"
OCCASIONS = ("wedding", "new home", "birthday", "harvest supper", "regatta", "retirement")
_LEFT_OUT: Mapping[str, None] = dict.fromkeys(
    (
        *("blanks/slate.yaml", "presses/clam.yaml", "projects/harbour/project.yaml"),
        *("projects/harbour/tutorial.md", "projects/harbour/photos/set.jpg"),
    )
)
"""What the small workshop has instead."""


def crowded_files() -> dict[str, str | bytes | None]:
    """Return what is to be written over the small workshop's files."""
    return {**_LEFT_OUT, **dict(crowded())}


def crowded() -> Iterator[tuple[str, str]]:
    """Yield the files of a workshop that is crowded everywhere."""
    yield "shop.yaml", f"name: Test Bench\nline: {LONG}\ncurrency: GBP\naddress: https://bench.example/\nlow stock: 6\n"
    for number in range(BLANKS):
        sheet = "sheet: {temperature: 190 to 200 C, time: 50 to 75 s, pressure: medium, face: print down}\n"
        bought = "bought: [{date: 2026-01-01, lot: A7, count: 5, paid: 38.40}]\n"
        words = f"name: {LONG} {number}\nsubstrate: slate\nsize: 100 x 100 mm\nsupplier: {LONG}\ncode: MP-{number}\n"
        yield f"blanks/b-{number:03}.yaml", words + sheet + bought
    for number in range(PRESSES):
        yield f"presses/clam-{number:02}.yaml", f"name: {LONG} {number}\nkind: flat clamshell\n"
    for number in range(110):
        yield (
            f"supplies/box-{number}.yaml",
            f"name: {LONG} {number}\nkind: packaging\nprice: 12.50\ncontents: 25 pieces\n",
        )
    for number in range(PROJECTS):
        occasions = ", ".join(OCCASIONS[number % 3 :])
        day = date(2016, 1, 15) + timedelta(days=number * 20)
        yield (
            f"projects/p-{number:03}/project.yaml",
            f"title: {LONG} {number}\nblank: b-{number:03}\nmade: {day}\nsummary: {LONG}. {LONG}.\n"
            f"occasions: [{occasions}]\nshare: {{tutorial: yes, published: {day}, menu: "
            f"{{section: Part {number % 2}, price: {number + 1}.00, line: {LONG}}}}}\n",
        )
        yield f"projects/p-{number:03}/tutorial.md", f"{LONG}.\n\n## Press\n\n{LONG}.\n"
    for number in range(BLANKS):
        yield f"articles/a-{number}.md", f"# {LONG} {number}\n\nOne thing at a time.\n"
        yield f"articles/a-{number}.yaml", f"summary: {LONG}\nshare: yes\npublished: 2026-01-02\n"
    rows = ["date,project,blank,press,temperature,time,pressure,face,pressed,good,defects,note"]
    for number in range(SETTINGS):
        day = date(2024, 1, 1) + timedelta(days=number)
        dial, seconds = 180 + number % 20, 45 + number
        said = f'p-000,b-000,clam-00,{dial} C,{seconds} s,medium,print up,20,11,blurred; pale all over,"{LONG}"'
        rows.append(f"{day},{said}")
    rows += [
        f"2026-02-03,,b-{number:03},clam-00,200 C,60 s,medium,print up,12,11,blurred," for number in range(1, BLANKS)
    ]
    yield "press-log/2026.csv", "\n".join(rows) + "\n"
