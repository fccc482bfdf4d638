"""What a movement detector notices."""
