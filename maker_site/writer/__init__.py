"""Writer: renders pages and puts files into place; knows nothing of the trade."""
