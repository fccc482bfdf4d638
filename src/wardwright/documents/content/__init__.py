"""What each paper says, as plain records."""
