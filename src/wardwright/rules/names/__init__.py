"""Rules about names as programmed, printed and spoken: codes NAM."""
