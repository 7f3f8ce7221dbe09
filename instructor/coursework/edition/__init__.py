"""The student edition: the kit as a folder of static pages, and as a zip."""
