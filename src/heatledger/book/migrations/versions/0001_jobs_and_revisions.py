"""Jobs, and every revision of them with the whole text.

The form of a step is written out here and never taken from today's tables, which move on.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the two tables."""
    op.create_table(
        "job",
        sa.Column("id", sa.String(80), nullable=False),
        sa.Column("head", sa.Integer, nullable=False),
        sa.Column("latest", sa.Integer, nullable=False),
        sa.Column("begun", sa.String(32), nullable=False),
        sa.Column("touched", sa.String(32), nullable=False),
        sa.Column("put_away", sa.Boolean, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_job"),
    )
    op.create_table(
        "revision",
        sa.Column("job_id", sa.String(80), nullable=False),
        sa.Column("number", sa.Integer, autoincrement=False, nullable=False),
        sa.Column("parent", sa.Integer),
        sa.Column("left_to", sa.Integer),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("address", sa.Text, nullable=False),
        sa.Column("text", sa.LargeBinary, nullable=False),
        sa.Column("digest", sa.String(64), nullable=False),
        sa.Column("said", sa.Text, nullable=False),
        sa.Column("by", sa.Text, nullable=False),
        sa.Column("at", sa.String(32), nullable=False),
        sa.Column("version", sa.String(40), nullable=False),
        sa.PrimaryKeyConstraint("job_id", "number", name="pk_revision"),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name="fk_revision_job_id"),
    )


def downgrade() -> None:
    """Take them away again."""
    op.drop_table("revision")
    op.drop_table("job")
