"""Write an invented workshop of any size.

    python -m tests.benchmarks.workshop --projects 1000 --seed 7 --out DIR

The same size and seed give the same files. Blanks, presses and supplies grow with the projects; the press log has
ten rows a project, failures among them; every third project has a write-up.
"""

import argparse
import csv
import random
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import yaml
from PIL import Image, ImageDraw

from .trade import MANNERS, NOTES, OCCASIONS, PIECES, SUBJECTS, SUPPLIERS, Piece

ROWS_A_PROJECT = 10
FIRST_DAY = date(2019, 1, 5)
DAYS = 2600
LOG_COLUMNS = (
    "date",
    "project",
    "blank",
    "lot",
    "press",
    "temperature",
    "time",
    "pressure",
    "face",
    "stack",
    "at once",
    "cool",
    "pressed",
    "good",
    "defects",
    "note",
)

Record = dict[str, Any]


def write_workshop(out: Path, projects: int, seed: int, *, photos: bool = False) -> None:
    """Write the records, and where wanted the photos, into the folder `out`, which must not be there yet."""
    die = random.Random(seed)
    out.mkdir(parents=True)
    write(out / "shop.yaml", shop())
    (out / "about.md").write_text("# About\n\nAn invented workshop, made by the roll of a die.\n", encoding="utf-8")
    presses = {f"press-{n}": press(n) for n in range(2 + projects // 250)}
    supplies = base_supplies() | {f"box-{n}": packaging(n) for n in range(2 + projects // 100)}
    blanks = {f"blank-{n}": blank(die, n) for n in range(max(len(PIECES), projects // 12))}
    for folder, records in (("presses", presses), ("supplies", supplies), ("blanks", blanks)):
        for name, record in records.items():
            write(out / folder / f"{name}.yaml", record)
    rows = []
    for number in range(projects):
        name, record, piece = project(die, number, blanks, sorted(supplies)[-1])
        if photos:
            record["photos"] = draw_photos(die, out / "projects" / name, str(record["title"]))
        write(out / "projects" / name / "project.yaml", record)
        if number % 3 == 0:
            (out / "projects" / name / "tutorial.md").write_text(tutorial(die, record), encoding="utf-8")
        rows += log_rows(die, name, record["blank"], piece, sorted(presses))
    write_log(out / "press-log", rows)
    for number in range(1 + projects // 50):
        write_article(die, out / "articles", number)


def write(path: Path, record: Record) -> None:
    """Write one record as YAML, every value as text."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(yaml.safe_dump(record, allow_unicode=True, sort_keys=False, width=110), encoding="utf-8")


def shop() -> Record:
    """Give the shop."""
    return {
        "name": "The Thousandfold Shed",
        "currency": "GBP",
        "locale": "en_GB",
        "units": {"temperature": "C", "length": "mm", "pressure": "bar"},
        "line": "An invented workshop for the stop-watch",
        "address": "https://thousandfold.example/",
        "menu sections": sorted({piece.section for piece in PIECES}),
        "labour": "14.00",
        "electricity": "0.28",
        "overhead": "6 %",
        "margin": "50 %",
        "fee": {"percent": "6.5 %", "fixed": "0.30"},
        "tax": {"rate": "20 %", "included": "yes"},
        "price ending": "0.50",
        "paper": "A4",
        "printer": {"margin": "5 mm", "gap": "4 mm", "ppi": "300"},
        "usual yield": "90 %",
        "low stock": "6",
    }


def press(number: int) -> Record:
    """Give a press whose readings fall a little further short with every press."""
    return {
        "name": f"Press {number + 1}",
        "kind": ("flat clamshell", "mug", "hand press")[number % 3],
        "platen": "380 x 380 mm",
        "watts": "1400",
        "duty": "35 %",
        "warm up": "12 min",
        "resolution": {"temperature": "1 C", "time": "1 s"},
        "readings": [
            {"date": "2025-01-10", "set": f"{set_to} C", "measured": f"{set_to - 2 - number} C"}
            for set_to in (150, 180, 200)
        ],
    }


def base_supplies() -> dict[str, Record]:
    """Give the supplies that every workshop has."""
    return {
        "dye-ink": {
            "name": "Dye ink set",
            "kind": "ink",
            "price": "42.00",
            "contents": "400 ml",
            "laydown": "11 ml/m2",
        },
        "transfer-a4": {
            "name": "Transfer paper A4",
            "kind": "transfer paper",
            "price": "9.00",
            "contents": "100 sheets",
            "size": "A4",
        },
        "tape": {
            "name": "Heat-resistant tape",
            "kind": "tape",
            "price": "4.00",
            "contents": "33 m",
            "use": "120 mm",
            "limit": "250 C",
        },
        "cover": {
            "name": "Cover sheet",
            "kind": "cover sheet",
            "material": "PTFE",
            "price": "8.00",
            "lasts": "200 pressings",
            "limit": "260 C",
        },
    }


def packaging(number: int) -> Record:
    """Give a box."""
    return {
        "name": f"Gift box {number + 1}",
        "kind": "packaging",
        "price": f"{12 + number}.50",
        "contents": "25 pieces",
        "use": "1 piece",
    }


def blank(die: random.Random, number: int) -> Record:
    """Give a blank; the first ones go once through all the kinds of piece."""
    piece = PIECES[number % len(PIECES)]
    low, high = piece.celsius
    short, long = piece.seconds
    record: Record = {
        "name": f"{piece.substrate.capitalize()} {die.choice(piece.nouns)} {number + 1}",
        "substrate": piece.substrate,
        "method": piece.method,
        "size": die.choice(piece.sizes),
        "thickness": f"{die.randint(1, 9)} mm",
        "bleed": "3 mm",
        "supplier": die.choice(SUPPLIERS),
        "code": f"{piece.substrate[:2].upper()}-{100 + number}",
        "coating": die.choice(("soft", "hard")),
        "bought": [
            {
                "date": str(FIRST_DAY + timedelta(days=die.randrange(DAYS))),
                "lot": f"{lot}{number}",
                "count": str(die.randint(6, 144)),
                "paid": f"{die.randint(500, 30000) / 100:.2f}",
                "delivery": f"{die.randint(0, 1200) / 100:.2f}",
            }
            for lot in "ABC"[: die.randint(1, 3)]
        ],
    }
    if die.random() < 0.8:
        record["sheet"] = {
            "temperature": f"{low} to {high} C",
            "time": f"{short} to {long} s",
            "pressure": "medium",
            "face": piece.faces[0],
            "cool": piece.cool,
        }
    return record


def project(die: random.Random, number: int, blanks: dict[str, Record], box: str) -> tuple[str, Record, Piece]:
    """Give a project's id, its record, and the kind of piece that it is."""
    chosen = die.choice(sorted(blanks))
    piece = next(kind for kind in PIECES if kind.substrate == blanks[chosen]["substrate"])
    subject, manner, noun = die.choice(SUBJECTS), die.choice(MANNERS), die.choice(piece.nouns)
    title = f"{subject} {noun}, {manner}"
    name = f"{subject}-{noun}-{number:05d}".lower().replace(" ", "-")
    made = FIRST_DAY + timedelta(days=die.randrange(DAYS))
    record: Record = {"title": title, "made": str(made), "blank": chosen}
    if die.random() < 0.1:
        return name, record, piece  # a sparse one: a title, a day and a blank
    record |= {
        "pieces": str(die.choice((1, 1, 1, 2, 4, 6))),
        "occasions": die.sample(OCCASIONS, die.randint(0, 3)),
        "summary": f"A {subject.lower()} on {piece.substrate}, drawn as {manner}.",
        "difficulty": die.choice(("easy", "medium", "hard")),
        "time needed": f"{die.choice((20, 30, 45, 60, 90))} min",
        "supplies": [{"supply": box, "use": "1"}],
        "minutes": {"design": str(die.randint(10, 240)), "press": "12", "finish": str(die.randint(2, 20))},
        "batch": str(die.choice((1, 6, 12, 24))),
    }
    if die.random() < 0.3:
        record["for"] = f"order {number}"
    if die.random() < 0.6:
        record["share"] = {
            "tutorial": "yes" if number % 3 == 0 else "no",
            "setting": die.choice(("yes", "no")),
            "published": str(made + timedelta(days=14)),
        }
        if die.random() < 0.5:
            price = f"{die.randint(6, 60)}.00"
            record["share"]["menu"] = {"section": piece.section, "name": title, "price": price}
    return name, record, piece


def tutorial(die: random.Random, record: Record) -> str:
    """Give a write-up of four to nine steps."""
    steps = (
        "Wipe the blank and peel off its film.",
        "Print the transfer mirrored and let it dry.",
        "Tape it, the tape clear of the picture.",
        "Build the stack with fresh paper on both sides.",
        "Close the press and stay beside it.",
        "Lift it out with gloves on: it is **hot**.",
        "Let it cool as the supplier's sheet says.",
        "Write down what came out, good or not.",
        "Change one thing only before the next.",
    )
    chosen = steps[: die.randint(4, len(steps))]
    parts = [f"{record['title']} in an afternoon.\n"]
    parts += [f"## {n}. {step}\n\n{' '.join(die.sample(steps, 3))}\n" for n, step in enumerate(chosen, 1)]
    return "\n".join(parts)


def log_rows(die: random.Random, name: str, blank_id: str, piece: Piece, presses: list[str]) -> list[dict[str, str]]:
    """Give a project's rows: a setting that mostly works, tried with a degree or a second more and less."""
    low, high = piece.celsius
    short, long = piece.seconds
    press_id = presses[1] if piece.faces == ("wrapped",) else presses[0]
    celsius, seconds = die.randrange(low, high + 1, 5), die.randrange(short, long + 1, 5)
    first = FIRST_DAY + timedelta(days=die.randrange(DAYS))
    rows = []
    for number in range(ROWS_A_PROJECT):
        pressed = die.choice((1, 1, 2, 4, 6))
        good = pressed if die.random() < 0.8 else die.randint(0, pressed - 1)
        rows.append(
            {
                "date": str(first + timedelta(days=number)),
                "project": name,
                "blank": blank_id,
                "press": press_id,
                "temperature": f"{celsius + die.choice((-5, 0, 0, 0, 5))} C",
                "time": f"{seconds + die.choice((-5, 0, 0, 0, 5))} s",
                "pressure": die.choice(("light", "medium", "firm")),
                "face": die.choice(piece.faces),
                "stack": "pad > protective paper > transfer > blank > cover sheet",
                "at once": "1",
                "cool": piece.cool,
                "pressed": str(pressed),
                "good": str(good),
                "defects": die.choice(piece.defects) if good < pressed else "",
                "note": die.choice(NOTES),
            }
        )
    return rows


def write_log(folder: Path, rows: list[dict[str, str]]) -> None:
    """Write the rows by date, a file a year."""
    folder.mkdir()
    ordered = sorted(rows, key=lambda row: (row["date"], row["project"]))
    for year in sorted({row["date"][:4] for row in ordered}):
        with (folder / f"{year}.csv").open("w", encoding="utf-8", newline="") as file:
            table = csv.DictWriter(file, LOG_COLUMNS, restval="")
            table.writeheader()
            table.writerows(row for row in ordered if row["date"][:4] == year)


def write_article(die: random.Random, folder: Path, number: int) -> None:
    """Write an article, every second one shared."""
    folder.mkdir(exist_ok=True)
    text = f"# What {die.choice(SUBJECTS).lower()} number {number + 1} taught\n\nOne thing at a time.\n"
    (folder / f"article-{number}.md").write_text(text, encoding="utf-8")
    shared = {
        "published": str(FIRST_DAY + timedelta(days=number)),
        "share": "yes" if number % 2 == 0 else "no",
    }
    write(folder / f"article-{number}.yaml", shared)


def draw_photos(die: random.Random, folder: Path, title: str) -> list[Record]:
    """Draw one to three photos of a phone's size, some stored turned, and give their list."""
    (folder / "photos").mkdir(parents=True)
    listed = []
    for number in range(die.randint(1, 3)):
        picture = Image.linear_gradient("L").resize((1600, 1200)).rotate(die.randrange(360)).convert("RGB")
        colour = tuple(die.randrange(256) for _ in range(3))
        edge = die.randint(80, 500)
        ImageDraw.Draw(picture).ellipse((edge, edge, 1600 - edge, 1200 - edge // 2), fill=colour)
        exif = Image.Exif()
        exif[0x0112] = die.choice((1, 1, 1, 3, 6, 8))  # Orientation, by the Exif standard (CIPA DC-008)
        picture.save(folder / "photos" / f"view-{number}.jpg", quality=82, exif=exif)
        listed.append({"file": f"photos/view-{number}.jpg", "text": f"{title}, view {number + 1}", "share": "yes"})
    return listed


def main() -> None:
    """Read the command line and write the workshop."""
    wanted = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    wanted.add_argument("--projects", type=int, default=1000)
    wanted.add_argument("--seed", type=int, default=7)
    wanted.add_argument("--out", type=Path, required=True, help="a folder that is not there yet")
    wanted.add_argument("--photos", action="store_true", help="draw photos too")
    asked = wanted.parse_args()
    write_workshop(asked.out, asked.projects, asked.seed, photos=asked.photos)


if __name__ == "__main__":
    main()
