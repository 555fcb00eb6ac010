"""Writing of workbooks: a layout and the values of a job become the bytes of a file."""
