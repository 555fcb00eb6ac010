"""Papers for the client, the plant, the driver, the crew and the office."""
