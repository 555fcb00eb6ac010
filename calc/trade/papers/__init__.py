"""Papers: what is handed to the client, the plant, the driver, the crew and the office."""
