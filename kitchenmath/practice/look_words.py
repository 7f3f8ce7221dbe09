"""What a student is told of an answer as it is typed, before it is marked; never if it is right.

Each text is filled in by the kind of answer that knows the fact; none of them decides anything.
"""

READ_AS = "read as {value}."
LOOK_AGAIN = "Look again: {value} is hard to believe {where}."
IS_ASKED_FOR = '{asked} is asked for, such as "{example}".'
NOTHING_YET = "nothing is typed yet: {asked}"
STOPPED = "the answer cell stopped, so there is no answer. Mend it, and run it again."
CELL_READ_AS = "The cell was read as {code}"
# An amount.
AS_IT_SHOULD_BE = "read as {value}. It is {asked}, as it should be."
BELIEVABLE = " Something from {low} to {high} is."
# Names out of a list.
TYPE_SUCH_AS = 'type {asked}, such as "{example}".'
NOT_AMONG = " Look again: {odd} is not among {there}."
# Readings, and a probe's log.
NO_UNIT = "No unit stands there, so they are taken for millimetres: type it."
ALIKE = "All are alike: measure each piece by itself."
TENFOLD = "Look again at {far}: the others lie about a factor of ten away."
NO_SCALE = "No scale stands there, so it is taken for °C: type °C or °F."
OUT_OF_ORDER = "The readings are not in the order of time: is a time mistyped?"
DOUBLED = "Two readings share a time."
NO_PROBE_SHOWS = "{core} is nothing that a kitchen's probe shows"
LOG_EXAMPLE = "0 min 5 °C; 5 min 6.5 °C; 10 min 11 °C"
# A service plan.
A_PLAN = "a service plan with a line for each task"
NO_START = "no start was read."
MISSING_START = "Look again: no start yet for {tasks}."
ALL_STARTS = "Every task has a start."
NO_LINE = "no line has a task and a clock time."
NO_CLOCK, SEVERAL_CLOCKS = "has no clock time", "has more than one time: its start is wanted"
TYPE_IT_AS = '{shown} {what}; type it as "{example}".'
NO_TASK = "has a time and no task"
IS_NO_CLOCK = '{shown} {time}, is no clock time; type it as "19:20".'
TWICE = "“{name}” stands twice, at {first} and at {last}: the last one counts."
MAY_BE = "“{name}” may be {tasks}: type more of its name."
UNKNOWN_TASK = "“{name}” is no task of this service."
IN_THE_EVENING = (
    "Where the kitchen opens later this is the evening: {early}. For the morning, type am."
)
# The student's number, and the set.
UNLIKE = "{number} is not written like the numbers of your class, such as {example}."
OTHER_NUMBERS = " Another number draws other numbers."
STOP_HERE = "Stop here: {trouble} Then run this cell again."
WHOSE_SET = "Set {set_id}, term {term}, student {student}.{again}"
NUMBERS_LATER = "Your numbers show here once your student number is in."
FROM_YOUR_OWN = "The next questions start from your own: {own!r}."
FROM_A_SAMPLE = "The next questions start from the sample drawn for you: {sample!r}.{why}"
# The saved file of a set, looked at without running it.
BETWEEN_QUOTES = 'Type it between two quotes: {question} = "{example}".'
WRITE = "click twice into the cell below the question, and write a few sentences."
ADD_A_CELL = "Add a cell in its place. {how}"
CHECK_GONE_EMPTY = 'nothing is typed yet: type the answer with its unit, as in "4.2 kg".'
CHECK_GONE = "something is there; its check cell is gone, so no more can be said."
CHECK_GONE_READ = "read as {value}; its check cell is gone."
CELL_GONE = "the answer cell is gone. {how}"
NOT_WRITTEN = "nothing is written yet: {write}"
QUOTE_MISSING = "the cell cannot be read: is a quote missing? {how}"
GIVES_NONE = "the cell gives no {question}. {how}"
COMPUTED = "computed. Run the notebook from the top; its last cell says what comes out."
# What was drawn, as it is shown; and an answer beside the right one.
TWO_TRAYS = "tray A: {first} mm; tray B: {second} mm"
COOLING = "{letter}: after 2 h {two}, after 6 h {six}, {weight}"
READ_BESIDE = "Read as {value}; it is {right}."
