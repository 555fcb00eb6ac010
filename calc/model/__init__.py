"""Results: the rules evaluated over jobs, sensitivity, shared trucks, outliers."""
