"""Price age, wage rates and rental prices."""
