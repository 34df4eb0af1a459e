"""The printed build book: not built yet."""
