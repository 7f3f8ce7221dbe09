"""The one writer of what marking found: many hand-ins in one transaction, only what differs.

It reads a set's whole state once. A hand-in that stands in the gradebook as its record says costs
nothing, so running again after a stop enters exactly what is missing. Points and words that a
human gave are never touched.
"""

from collections import defaultdict
from datetime import datetime
from uuid import uuid4

from sqlalchemy import bindparam, select

from coursework.errors import CourseError
from coursework.gradebook.points import connected, names
from coursework.gradebook.tables import (
    ASSIGNMENT,
    CELL,
    COMMENT,
    GRADE,
    NOTEBOOK,
    STUDENT,
    SUBMITTED,
    SUBMITTED_NOTEBOOK,
    analyze,
    make_indexes,
)

BATCH = 100


class GradeWriter:
    """Enters records in batches: `put` each, and `flush` at the end.

    Parameters
    ----------
    course : Course
    set_id : str

    Raises
    ------
    CourseError
        When the gradebook does not know the set.
    """

    def __init__(self, course, set_id):
        self.course, self.set_id = course, set_id
        self._waiting = []
        with connected(course) as connection:
            make_indexes(connection)
            self._read(connection)

    def put(self, record):
        """Take one record; it stands in the gradebook after the batch is full, or `flush`."""
        self._waiting.append(record)
        if len(self._waiting) >= BATCH:
            self.flush()

    def flush(self):
        """Enter all that waits, in one transaction."""
        rows = defaultdict(list)
        for record in self._waiting:
            self._differences(record, rows)
        if rows:
            with connected(self.course) as connection:
                for table in (STUDENT, SUBMITTED, SUBMITTED_NOTEBOOK, GRADE, COMMENT):
                    if rows[table]:
                        connection.execute(table.insert(), rows[table])
                for table, column in ((SUBMITTED, "timestamp"), (COMMENT, "auto_comment")):
                    self._update(connection, table, [column], rows[table.name])
                self._update(connection, GRADE, ["auto_score", "needs_manual_grade"], rows["grade"])
        self._waiting.clear()

    def close(self):
        """Enter the rest, and let the database count its rows."""
        self.flush()
        with connected(self.course) as connection:
            analyze(connection)

    def _update(self, connection, table, columns, rows):
        if rows:
            values = {column: bindparam(f"new_{column}") for column in columns}
            statement = table.update().where(table.c.id == bindparam("which")).values(values)
            connection.execute(statement, rows)

    def _read(self, connection):
        """The set's cells and everything that stands there for it."""
        found = connection.execute(
            select(NOTEBOOK.c.id, NOTEBOOK.c.assignment_id)
            .join(ASSIGNMENT, ASSIGNMENT.c.id == NOTEBOOK.c.assignment_id)
            .where(ASSIGNMENT.c.name == self.set_id, NOTEBOOK.c.name == self.set_id)
        ).first()
        if found is None:
            raise CourseError(f"the gradebook has no set {self.set_id}: hand it out first.")
        self._notebook, self._assignment = found
        cells = connection.execute(
            select(CELL.c.name, CELL.c.type, CELL.c.id).where(CELL.c.notebook_id == self._notebook)
        ).all()
        self._graded = {name: cell for name, kind, cell in cells if kind == "GradeCell"}
        self._solutions = {name: cell for name, kind, cell in cells if kind == "SolutionCell"}
        self._students = set(connection.execute(select(STUDENT.c.id)).scalars())
        of_notebook = self._read_handed_in(connection)
        self._grades = self._standing(
            connection, GRADE, of_notebook, GRADE.c.auto_score, GRADE.c.manual_score,
            GRADE.c.needs_manual_grade,
        )  # fmt: skip
        self._comments = self._standing(connection, COMMENT, of_notebook, COMMENT.c.auto_comment)

    def _read_handed_in(self, connection):
        """Who handed in; gives back whose each notebook is."""
        self._handed_in, of_notebook = {}, {}
        for student, submitted, stamp, notebook in connection.execute(
            select(
                SUBMITTED.c.student_id,
                SUBMITTED.c.id,
                SUBMITTED.c.timestamp,
                SUBMITTED_NOTEBOOK.c.id,
            )
            .join(SUBMITTED_NOTEBOOK, SUBMITTED_NOTEBOOK.c.assignment_id == SUBMITTED.c.id)
            .where(SUBMITTED.c.assignment_id == self._assignment)
        ):
            self._handed_in[student] = submitted, stamp, notebook
            of_notebook[notebook] = student
        return of_notebook

    def _standing(self, connection, table, of_notebook, *columns):
        """By student and cell: the row's id and these columns."""
        here = select(SUBMITTED_NOTEBOOK.c.id).where(
            SUBMITTED_NOTEBOOK.c.notebook_id == self._notebook
        )
        rows = connection.execute(
            select(table.c.notebook_id, table.c.cell_id, table.c.id, *columns).where(
                table.c.notebook_id.in_(here)
            )
        )
        return {(of_notebook.get(row[0]), row[1]): tuple(row[2:]) for row in rows}

    def _differences(self, record, rows):
        """The rows to insert (by table) and to update (by its name) for one record."""
        student = record.student
        stamp = datetime.fromisoformat(record.handed_in)
        if student not in self._students:
            name = names(self.course.roster.get(student, student))
            rows[STUDENT].append({"id": student, **name})
            self._students.add(student)
        if student not in self._handed_in:
            self._new(student, stamp, rows)
        submitted, stood, _ = self._handed_in[student]
        if stood != stamp:
            rows[SUBMITTED.name].append({"which": submitted, "new_timestamp": stamp})
        for answered in record.answered:
            cell = self._graded.get(f"{answered.question}-check")
            self._grade(student, cell, answered.points, rows)
        for written in record.written:
            name = f"{written.question}-answer"
            nothing = 0.0 if not written.answer else None  # nothing is there to read
            self._grade(student, self._graded.get(name), nothing, rows)
            self._comment(student, self._solutions.get(name), nothing, rows)
        self._handed_in[student] = submitted, stamp, self._handed_in[student][2]

    def _new(self, student, stamp, rows):
        """A first hand-in: nbgrader wants a row for every cell at once."""
        submitted, notebook = uuid4().hex, uuid4().hex
        rows[SUBMITTED].append(
            {"id": submitted, "assignment_id": self._assignment, "student_id": student,
             "timestamp": stamp}
        )  # fmt: skip
        rows[SUBMITTED_NOTEBOOK].append(
            {"id": notebook, "assignment_id": submitted, "notebook_id": self._notebook,
             "flagged": False}
        )  # fmt: skip
        self._handed_in[student] = submitted, stamp, notebook
        for cell in self._graded.values():
            row = {"id": uuid4().hex, "notebook_id": notebook, "cell_id": cell,
                   "auto_score": None, "needs_manual_grade": True}  # fmt: skip
            rows[GRADE].append(row)
            self._grades[student, cell] = row["id"], None, None, True
        for cell in self._solutions.values():
            row = {"id": uuid4().hex, "notebook_id": notebook, "cell_id": cell,
                   "auto_comment": None}  # fmt: skip
            rows[COMMENT].append(row)
            self._comments[student, cell] = row["id"], None

    def _grade(self, student, cell, points, rows):
        """The machine's points, or None for a cell that waits for a human."""
        key, auto, manual, waits = self._grades[student, cell]
        waiting = points is None and manual is None
        if (auto, bool(waits)) != (points, waiting):
            rows[GRADE.name].append(
                {"which": key, "new_auto_score": points, "new_needs_manual_grade": waiting}
            )
            self._grades[student, cell] = key, points, manual, waiting

    def _comment(self, student, cell, points, rows):
        key, stood = self._comments[student, cell]
        words = None if points is None else "No response."
        if stood != words:
            rows[COMMENT.name].append({"which": key, "new_auto_comment": words})
            self._comments[student, cell] = key, words
