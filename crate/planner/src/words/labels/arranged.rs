//! Starting arrangements.

/// Labels by id.
pub(super) const LABELS: &[(&str, &str)] = &[
    ("arrangement", "Arrangement"),
    ("arrange-anew", "Arrange anew"),
    ("arranged-as", "arranged: {arrangement}"),
    ("arranged-no-room", "{arrangement}: no room for all of it"),
];
