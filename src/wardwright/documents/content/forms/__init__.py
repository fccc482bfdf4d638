"""The papers of a job from the first call to removal: what the program knows, and lines for the rest."""
