"""The term's mark book: what counts, and how, by the policy of the class."""
