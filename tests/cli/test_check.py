"""`maker-site check`: every problem at once, in a sentence, and an exit code that a script can use."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from maker_site.cli import main
from tests.small_workshop import write_workshop


def check(content: Path, *options: str) -> Result:
    return CliRunner().invoke(main, ["check", "--content", str(content), *options])


def test_a_sound_workshop_has_no_problems(tmp_path: Path) -> None:
    result = check(write_workshop(tmp_path))

    assert result.exit_code == 0
    assert "No problems" in result.output


def test_all_problems_are_told_at_once_with_file_line_and_the_nearest_word(tmp_path: Path) -> None:
    content = write_workshop(
        tmp_path,
        {
            "blanks/slate.yaml": "name: Slate coaster\nsubstrte: slate\n",
            "press-log/2026.csv": "date,blank,press,temperature,time,pressed,good\n2026-04-18,slat,clam,hot,5:00,4,3\n",
        },
    )

    problems = json.loads(check(content, "--json").output)["problems"]

    assert {(each["file"], each["line"], each["field"]) for each in problems} >= {
        ("blanks/slate.yaml", 2, "substrte"),
        ("press-log/2026.csv", 2, "temperature"),
    }
    assert any("did you mean “substrate”" in each["message"] for each in problems)


def test_json_has_the_five_keys_and_exits_one_on_an_error(tmp_path: Path) -> None:
    result = check(write_workshop(tmp_path, {"shop.yaml": None}), "--json")

    assert result.exit_code == 1
    (problem,) = json.loads(result.output)["problems"]
    assert set(problem) == {"file", "line", "field", "message", "severity"}
    assert problem["severity"] == "error"
    assert "there is no shop.yaml" in problem["message"]


def test_a_caution_alone_exits_nought(tmp_path: Path) -> None:
    log = "date,blank,press,temperature,time,pressed,good,face\n2026-04-18,slate,clam,200 C,5:00,4,3,down\n"
    result = check(write_workshop(tmp_path, {"press-log/2026.csv": log}), "--json")

    assert result.exit_code == 0
    (problem,) = json.loads(result.output)["problems"]
    assert (problem["severity"], problem["field"]) == ("caution", "face")


def test_a_shared_photo_without_words_is_asked_for_them(tmp_path: Path) -> None:
    record = "title: Harbour\nblank: slate\nphotos: [{file: photos/set.jpg, share: yes}]\n"
    result = check(write_workshop(tmp_path, {"projects/harbour/project.yaml": record}), "--json")

    messages = [each["message"] for each in json.loads(result.output)["problems"]]
    assert any("has no “text”" in message for message in messages)


@pytest.mark.parametrize(
    ("content_of_photo", "said"),
    [(b"", "empty"), (b"not a picture at all", "not a picture")],
)
def test_a_broken_picture_is_an_error_with_its_name(tmp_path: Path, content_of_photo: bytes, said: str) -> None:
    content = write_workshop(tmp_path, {"projects/harbour/photos/set.jpg": content_of_photo})

    result = check(content, "--plain")

    assert result.exit_code == 1
    assert "projects/harbour/photos/set.jpg" in result.output
    assert said in result.output


def test_a_photo_cut_short_is_found_by_check(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)
    photo = content / "projects/harbour/photos/set.jpg"
    photo.write_bytes(photo.read_bytes()[: photo.stat().st_size // 2])

    assert check(content).exit_code == 1


def test_a_setting_above_the_stacks_limit_is_a_caution(tmp_path: Path) -> None:
    content = write_workshop(tmp_path, {"blanks/slate.yaml": "name: Slate coaster\nsubstrate: slate\nlimit: 190 C\n"})

    (problem,) = json.loads(check(content, "--json").output)["problems"]

    assert problem["severity"] == "caution"
    assert "above what Slate coaster bears" in problem["message"]


def test_a_folder_that_is_not_there_is_wrong_use(tmp_path: Path) -> None:
    assert check(tmp_path / "nowhere").exit_code == 2
