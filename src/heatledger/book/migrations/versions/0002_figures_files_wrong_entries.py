"""Figures kept with a revision, the job file on disk, and entries that could not be taken."""

from __future__ import annotations

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

FILE_COLUMNS: dict[str, Any] = {
    "file": sa.Text,
    "file_digest": sa.String(64),
    "file_number": sa.Integer,
    "file_by": sa.Text,
    "file_at": sa.String(32),
}


def upgrade() -> None:
    """Make the tables and columns; no row that is there changes."""
    for name, kind in FILE_COLUMNS.items():
        op.add_column("job", sa.Column(name, kind))
    op.create_table(
        "figure_list",
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("content", sa.LargeBinary, nullable=False),
        sa.PrimaryKeyConstraint("digest", name="pk_figure_list"),
    )
    op.create_table(
        "kept",
        sa.Column("job_id", sa.String(80), nullable=False),
        sa.Column("number", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("version", sa.String(40), nullable=False),
        sa.Column("summary", sa.Text, nullable=False),
        sa.Column("list_digest", sa.String(64), nullable=False),
        sa.Column("si", sa.LargeBinary, nullable=False),
        sa.PrimaryKeyConstraint("job_id", "number", name="pk_kept"),
        sa.ForeignKeyConstraint(
            ["job_id", "number"], ["revision.job_id", "revision.number"], name="fk_kept_job_id"
        ),
        sa.ForeignKeyConstraint(["list_digest"], ["figure_list.digest"], name="fk_kept_list_digest"),
    )
    op.create_table(
        "wrong_entry",
        sa.Column("job_id", sa.String(80), nullable=False),
        sa.Column("path", sa.Text, nullable=False),
        sa.Column("typed", sa.Text, nullable=False),
        sa.Column("what", sa.Text, nullable=False),
        sa.Column("mend", sa.Text, nullable=False),
        sa.Column("by", sa.Text, nullable=False),
        sa.Column("at", sa.String(32), nullable=False),
        sa.PrimaryKeyConstraint("job_id", "path", name="pk_wrong_entry"),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name="fk_wrong_entry_job_id"),
    )


def downgrade() -> None:
    """Take them away again, with what they hold."""
    for name in ("wrong_entry", "kept", "figure_list"):
        op.drop_table(name)
    for name in FILE_COLUMNS:
        op.drop_column("job", name)
