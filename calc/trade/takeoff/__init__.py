"""Takeoff: areas, thickness, digging, forms, dowels, joints."""
