"""Writers of drawings: not built yet."""
