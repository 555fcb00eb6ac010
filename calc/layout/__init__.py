"""Layout: the cells of every sheet. Knows no file format and computes nothing."""
