"""The rules of the trade, a file a subject, each to be read like a page of a handbook."""
