"""One step of the form of the book each, in the order of their numbers."""
