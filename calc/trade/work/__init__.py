"""Work: tasks, labor, equipment, protection."""
