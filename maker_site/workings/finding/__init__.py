"""Finding settings by words, in any order and loosely spelt.

`rows` and `index` read records and are wanted once for each change of the maker's files; `folding`, `query` and
`matching` answer a question, and import nothing that is slow to import.
"""
