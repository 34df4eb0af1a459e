"""Lets ``python -m boxwright`` do what ``boxwright`` does."""

import sys

from boxwright.cli import main

if __name__ == "__main__":
    sys.exit(main())
