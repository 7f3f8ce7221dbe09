"""What people type or take out of a program: lists of amounts, probe logs, tables."""
