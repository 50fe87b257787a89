"""The book: jobs and every revision of them, in SQLite or PostgreSQL through the same code."""
