"""Workshops of any size made by the roll of a seeded die, and the clock that is held to the command line."""
