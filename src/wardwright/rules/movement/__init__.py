"""Rules about movement detectors: codes MOV."""
