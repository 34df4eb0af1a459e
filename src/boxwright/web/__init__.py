"""The workbench in the browser: not built yet."""
