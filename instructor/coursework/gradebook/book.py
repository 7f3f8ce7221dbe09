"""An open gradebook: what is asked of nbgrader's tables, and what a person's points change there.

It loads the database's library, so only `points.connected` makes one.
"""

from dataclasses import asdict, fields, replace

from sqlalchemy import inspect, select

from coursework.decisions.kinds import Decision
from coursework.errors import CourseError
from coursework.gradebook.tables import (
    ASSIGNMENT,
    CELL,
    COMMENT,
    DECISION,
    GRADE,
    GRADE_CELL,
    STUDENT,
    SUBMITTED,
    SUBMITTED_NOTEBOOK,
    make_indexes,
)

__all__ = ["Book"]


class Book:
    """The gradebook inside one transaction.

    Parameters
    ----------
    connection : sqlalchemy.Connection
    """

    def __init__(self, connection):
        self.connection = connection
        self.execute = connection.execute

    def make_indexes(self):
        """Make the kit's indexes where they are missing."""
        make_indexes(self)

    def marks(self, set_id=None):
        """Every mark as it stands, by one query: of one set, or of all."""
        columns = (GRADE.c.auto_score, GRADE.c.manual_score, GRADE.c.extra_credit)
        return [tuple(row) for row in self.execute(_of_students(GRADE, columns, set_id))]

    def marks_and_most(self, set_id):
        """The same of one set, with the points that each cell can give."""
        columns = (GRADE.c.auto_score, GRADE.c.manual_score, GRADE.c.extra_credit,
                   GRADE_CELL.c.max_score)  # fmt: skip
        query = _of_students(GRADE, columns, set_id).join(GRADE_CELL, GRADE_CELL.c.id == CELL.c.id)
        return [tuple(row) for row in self.execute(query)]

    def remarks(self, set_id):
        """Student, cell and remark, wherever a person wrote one."""
        found = self.execute(_of_students(COMMENT, (COMMENT.c.manual_comment,), set_id))
        return [(student, cell, text) for _, student, cell, text in found if text]

    def give(self, set_id, student, question, points, remark):
        """Enter a person's points, and the remark beside them.

        Raises
        ------
        CourseError
            When there is nothing to mark there, or the points are not between 0 and all of them.
        """
        one = SUBMITTED.c.student_id == student
        columns = (GRADE.c.id, GRADE_CELL.c.max_score)
        grades = _of_students(GRADE, columns, set_id).join(GRADE_CELL, GRADE_CELL.c.id == CELL.c.id)
        cells = CELL.c.name.in_([f"{question}-answer", f"{question}-check"])
        found = self.execute(grades.where(one, cells)).first()
        if found is None:
            raise CourseError(f"{student} has no answer to {question} of {set_id}.")
        if not 0 <= points <= found.max_score:
            raise CourseError(f"points: 0 to {found.max_score:g} are possible, and {points} came.")
        self.execute(
            GRADE.update()
            .where(GRADE.c.id == found.id)
            .values(manual_score=float(points), needs_manual_grade=False)
        )
        remarks = _of_students(COMMENT, (COMMENT.c.id,), set_id)
        place = self.execute(remarks.where(one, CELL.c.name == f"{question}-answer")).first()
        words = {"manual_comment": remark or None}
        self.execute(COMMENT.update().where(COMMENT.c.id == place.id).values(words))

    def forget(self, student):
        """Delete a student and everything that hangs on them; how many marks and remarks went."""
        submitted = select(SUBMITTED.c.id).where(SUBMITTED.c.student_id == student)
        notebooks = select(SUBMITTED_NOTEBOOK.c.id).where(
            SUBMITTED_NOTEBOOK.c.assignment_id.in_(submitted)
        )
        count = 0
        for table in (GRADE, COMMENT):
            gone = self.execute(table.delete().where(table.c.notebook_id.in_(notebooks)))
            count += gone.rowcount
        of_set = SUBMITTED_NOTEBOOK.c.assignment_id.in_(submitted)
        self.execute(SUBMITTED_NOTEBOOK.delete().where(of_set))
        self.execute(SUBMITTED.delete().where(SUBMITTED.c.student_id == student))
        self.execute(STUDENT.delete().where(STUDENT.c.id == student))
        if inspect(self.connection).has_table(DECISION.name):  # the one way a line ever goes
            self.execute(DECISION.delete().where(DECISION.c.student == student))
        return count

    def decisions(self):
        """All lines of the list of decisions, in order."""
        if not inspect(self.connection).has_table(DECISION.name):
            return []
        names = [one.name for one in fields(Decision)]
        rows = self.execute(select(DECISION).order_by(DECISION.c.number)).mappings()
        return [Decision(**{name: row[name] for name in names}) for row in rows]

    def add_decision(self, decision):
        """Add one line; with the number that the database gave it."""
        DECISION.create(self.connection, checkfirst=True)
        row = {name: value for name, value in asdict(decision).items() if name != "number"}
        made = self.execute(DECISION.insert().values(row))
        return replace(decision, number=made.inserted_primary_key[0])


def _of_students(table, columns, set_id):
    """Set, student, cell and these columns of grades or comments."""
    query = (
        select(ASSIGNMENT.c.name, SUBMITTED.c.student_id, CELL.c.name.label("cell"), *columns)
        .select_from(table)
        .join(SUBMITTED_NOTEBOOK, SUBMITTED_NOTEBOOK.c.id == table.c.notebook_id)
        .join(SUBMITTED, SUBMITTED.c.id == SUBMITTED_NOTEBOOK.c.assignment_id)
        .join(ASSIGNMENT, ASSIGNMENT.c.id == SUBMITTED.c.assignment_id)
        .join(CELL, CELL.c.id == table.c.cell_id)
    )
    return query if set_id is None else query.where(ASSIGNMENT.c.name == set_id)
