"""Weight: what the trailer weighs, where its weight sits, and what coupling, axles and wheels carry."""
