"""Rules about where the control unit is: codes CTL."""
