"""What a person types: the company, the job, its areas, and everything else that is asked."""
