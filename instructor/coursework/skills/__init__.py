"""Skills over all sets: who has got which, and the sheets to practise them again."""
