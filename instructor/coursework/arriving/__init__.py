"""What students hand in: unpacked, read as data, settled, and put where marking looks."""
