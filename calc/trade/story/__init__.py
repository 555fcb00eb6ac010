"""What the sheets of a job workbook tell, in the order of their reader."""
