"""A campaign of seeded intrusions: how often intruders who differ are caught, and by what they get through."""
