"""Layout: what stands where on every sheet. Knows no file format and computes nothing."""
