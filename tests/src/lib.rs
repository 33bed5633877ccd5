//! Outside checks; the tests stand beside their reference data in `tests/`.
