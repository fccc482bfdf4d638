"""What is to be done on site, as data: the order of fitting, and how each device is fixed."""
