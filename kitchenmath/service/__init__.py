"""All on the plate at one moment: a plan of work backward from the serving time.

Give each task its length, its hands, what it waits for, and how long the result may wait; the
plan starts every task as late as the limits allow and names in words what does not fit. The
parts lie in modules of their own and can be had from here.
"""

from kitchenmath.service.plan import Plan, plan_back
from kitchenmath.service.plan_check import check_plan
from kitchenmath.service.task_table import read_tasks
from kitchenmath.service.tasks import Task

__all__ = ["Plan", "Task", "check_plan", "plan_back", "read_tasks"]
