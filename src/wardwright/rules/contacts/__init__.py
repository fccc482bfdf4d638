"""Rules about opening contacts: codes CON."""
