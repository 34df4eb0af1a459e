"""The command line: one word for each chapter and a few more; plain text out, an exit code that is an answer."""

from boxwright.cli.run import main

__all__ = ["main"]
