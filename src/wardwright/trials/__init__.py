"""Play a situation on the model and report what happens when."""
