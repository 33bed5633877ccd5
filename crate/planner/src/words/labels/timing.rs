//! When the picture is wanted, how long food holds, and the running order.

/// Labels by id.
pub(super) const LABELS: &[(&str, &str)] = &[
    ("running-order", "Running order"),
    (
        "running-order-none",
        "No exposures yet. Set hands to an action, or add a clean exposure.",
    ),
    (
        "running-order-length",
        "{time} in all, from the first exposure on.",
    ),
    ("running-order-print", "Print it with the picture"),
    ("running-order-late", "too late for some of it"),
    ("running-order-food", "Food, and how long it holds"),
    ("holds-for", "Holds for"),
    ("holds-hours", "hours"),
    ("holds-minutes", "{minutes} min"),
    ("holds-usual", "{minutes} min, as usual"),
    ("holds-less", "{thing}: a shorter time"),
    ("holds-more", "{thing}: a longer time"),
    ("holds-as-usual", "As long as usual"),
    ("stand-in", "Stands in for it until it must be real"),
    ("on-set", "On the set {from} to {last}"),
    (
        "on-set-late",
        "On the set {from} to {last}, longer than it holds",
    ),
    ("wanted", "On sale or online"),
    ("wanted-in", "Published"),
    ("wanted-print", "in print"),
    ("wanted-web", "online"),
    ("shot-on", "Shot on"),
    ("shot-north", "the northern half"),
    ("shot-south", "the southern half"),
    ("done-dates", "when it is wanted"),
];
