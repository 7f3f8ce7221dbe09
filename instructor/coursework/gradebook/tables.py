"""The tables of nbgrader's gradebook that the kit reads and writes, and what they lack.

nbgrader 0.9 makes them and its own pages read them. Talking to them directly spares the second
that its package takes to load, and a query for each cell of each student.
"""

from sqlalchemy import (
    Boolean,
    Column,
    DateTime,
    Float,
    Integer,
    MetaData,
    String,
    Table,
    Text,
    text,
)

TABLES = MetaData()


def _table(name, *columns):
    return Table(name, TABLES, Column("id", String, primary_key=True), *columns)


ASSIGNMENT = _table("assignment", Column("name", String))
NOTEBOOK = _table("notebook", Column("name", String), Column("assignment_id", String))
CELL = _table(
    "base_cell", Column("name", String), Column("notebook_id", String), Column("type", String)
)
GRADE_CELL = _table("grade_cells", Column("max_score", Float))
STUDENT = _table("student", Column("first_name", String), Column("last_name", String))
SUBMITTED = _table(
    "submitted_assignment",
    Column("assignment_id", String),
    Column("student_id", String),
    Column("timestamp", DateTime),
)
SUBMITTED_NOTEBOOK = _table(
    "submitted_notebook",
    Column("assignment_id", String),
    Column("notebook_id", String),
    Column("flagged", Boolean),
)
GRADE = _table(
    "grade",
    Column("notebook_id", String),
    Column("cell_id", String),
    Column("auto_score", Float),
    Column("manual_score", Float),
    Column("extra_credit", Float),
    Column("needs_manual_grade", Boolean),
)
COMMENT = _table(
    "comment",
    Column("notebook_id", String),
    Column("cell_id", String),
    Column("auto_comment", Text),
    Column("manual_comment", Text),
)

# The kit's own table: what a person decided. Lines are added to it and never changed.
OWN = MetaData()
DECISION = Table(
    "kit_decision",
    OWN,
    Column("number", Integer, primary_key=True, autoincrement=True),
    *(
        Column(name, String, nullable=False, default="")
        for name in ("kind", "who", "when", "set_id", "student", "question", "file", "answer")
    ),
    *(Column(name, Text, nullable=False, default="") for name in ("why", "accepted", "step")),
    *(Column(name, Float) for name in ("points", "out_of", "seconds")),
    Column("line", Integer),
)

# Without these, finding one student's marks reads through everybody's.
INDEXES = {
    "kit_grade_notebook": "grade(notebook_id)",
    "kit_comment_notebook": "comment(notebook_id)",
    "kit_submitted_notebook_assignment": "submitted_notebook(assignment_id)",
    "kit_submitted_assignment_student": "submitted_assignment(student_id)",
}


def make_indexes(connection):
    """Make the four indexes where they are missing; SQLite and PostgreSQL take the same words."""
    for name, columns in INDEXES.items():
        connection.execute(text(f"CREATE INDEX IF NOT EXISTS {name} ON {columns}"))


def analyze(connection):
    """Let the database count its rows, so that it uses the indexes."""
    connection.execute(text("ANALYZE"))
