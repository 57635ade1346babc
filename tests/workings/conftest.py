"""Properties are timed by the suite's own limit: a busy machine is no failure of one example."""

from hypothesis import settings

settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")
