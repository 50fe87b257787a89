"""How a book of an earlier version is brought to the form of this one."""
