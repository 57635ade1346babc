"""Pages of the public copy. Its views are types of their own, without a private field to leak."""
