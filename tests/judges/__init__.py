"""Outside judges: programs and readers that are not ours look at what was made.

Every judge is shown able to fail, on a small page spoilt by hand.
"""
