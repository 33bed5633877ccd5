//! The plan back from the day on sale.

/// Labels by id.
pub(super) const LABELS: &[(&str, &str)] = &[
    ("dates", "Dates"),
    (
        "dates-none",
        "Say when it is on sale or online: from that day the plan counts back to the shoot, the food, the props, the approved layout and the brief.",
    ),
    ("plan", "From the brief to the day it is on sale"),
    ("step-days", "{step}: days"),
    ("step-fewer", "{step}: a day fewer"),
    ("step-more", "{step}: a day more"),
    ("step-usual", "As usual, and why"),
    ("step-told", "As you say; the usual figure"),
    ("step-as-usual", "As many days as usual"),
    ("seasons", "When its food is in season"),
    (
        "seasons-what",
        "Months are from memory and differ by place; who grows or lands it knows better.",
    ),
    ("season-from", "From"),
    ("season-to", "To"),
    ("season-always", "all the year round"),
    ("season-as-known", "Months from memory"),
    ("output-ics", "Calendar file"),
    ("done-step-days", "{step}: days changed"),
    ("done-months", "{thing}: months changed"),
];
