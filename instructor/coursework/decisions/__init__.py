"""What a person decided, line by line, and what follows from it. Nothing is ever overwritten."""
