"""Pages of the workshop copy, which holds everything."""
