"""Rules about sounders: codes SND."""
