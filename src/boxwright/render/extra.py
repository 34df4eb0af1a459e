"""What is raised where a writer needs a package that the plain install does not bring."""

from __future__ import annotations


class MissingExtra(Exception):
    """A writer's package is not installed; ``extra`` is the one of ours that brings it."""

    def __init__(self, extra: str, package: str) -> None:
        """Take the extra to install and the package that was looked for."""
        super().__init__(f"{package} is not installed; boxwright[{extra}] brings it")
        self.extra = extra
        self.package = package
