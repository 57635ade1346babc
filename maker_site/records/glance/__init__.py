"""What an edit means, judged at a glance: whether the records are as right as they were, and what the edited says now.

A file that was right before and says the same in all but some fields is right where those fields are: each field is
read from its own text alone, by `meanings` and `quantities`, as the kinds of records read it. Whatever can't be told
at a glance raises Unsure, and all is read as ever. Imports nothing that is slow to import.
"""
