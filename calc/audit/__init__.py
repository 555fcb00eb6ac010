"""Reading of workbooks that the program wrote: to bid them again, or to write their Proposal alone."""
