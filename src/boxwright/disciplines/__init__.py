"""The twelve disciplines, one folder each; none imports another (they talk through records of `boxwright.exchange`)."""
