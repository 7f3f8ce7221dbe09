"""Breaking lines of the kit one at a time, and running the tests that reach each."""
