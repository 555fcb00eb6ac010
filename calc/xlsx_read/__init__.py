"""Reading of .xlsx workbooks from unknown sources: files become cells with addresses."""
