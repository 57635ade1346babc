"""The media room: photos to web pictures."""
