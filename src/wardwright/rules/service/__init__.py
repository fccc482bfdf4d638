"""Rules about room to open and serve devices: codes SRV."""
