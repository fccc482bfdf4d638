"""Rules about cameras: codes CAM."""
