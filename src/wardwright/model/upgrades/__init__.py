"""One small function per version that turns an older site document into the next."""
