"""A heat-press maker's notebook as plain files, made into a workshop catalogue and a public copy."""
