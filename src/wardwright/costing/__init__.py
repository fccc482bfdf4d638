"""What the work takes and costs: tasks and their times, prices, tax, the return visit to be expected, upkeep."""
