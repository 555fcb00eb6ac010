"""Reading of workbooks: a file of unknown origin becomes cells with addresses."""
