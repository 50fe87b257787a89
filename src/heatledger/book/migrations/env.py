"""Runs the migrations on the connection that the book has open already, inside its transaction."""

from __future__ import annotations

from alembic import context

from heatledger.book.tables import VERSION_TABLE, metadata

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=metadata,
    version_table=VERSION_TABLE,
    render_as_batch=True,
)
context.run_migrations()
