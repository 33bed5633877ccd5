//! The guide inside the planner.

/// Labels by id.
#[rustfmt::skip]
pub(super) const LABELS: &[(&str, &str)] = &[
    ("guide", "Guide"),
    ("guide-close", "Close"),
    ("guide-what", "From a bare board to the papers of the shoot, in the order in which the work goes. The drawings are of Harbour supper, the table the planner opens with."),
    ("guide-lay", "Lay the table"),
    ("guide-lay-how", "Under Table, add dishes, food and cloth at their true size, or lay whole places at once. Drag a thing, or choose it and step it by a centimetre. Everything can be taken back, and what is locked stays where it is."),
    ("guide-read", "Read what it says"),
    ("guide-read-how", "Under the picture stand up to three sentences: what is lost against the board, what almost touches, what shines, what is cut. Tap one to see it marked, with the figure, the working and where the rule comes from. The strip of tape under it does what helps. What you mean to be so can be marked as intended."),
    ("guide-hands", "Set the hands"),
    ("guide-hands-how", "Under Hands, give each hand a person, a place at the table and something to do. Each pair belongs to one exposure that is combined later; step through them to see the table as it is in each, and where two of them want the same place."),
    ("guide-camera", "See whether it fits and stands"),
    ("guide-camera-how", "Under Camera & light, say which lens and which stand, how high the ceiling is and where the window. The planner works out the height, the sharp depth, the tipping margin and the bag that is missing. An arm over people is for qualified hands; local rules come first."),
    ("guide-crops", "Look at every crop"),
    ("guide-crops-how", "Under Crops, add each shape the client wants, slide it, and see what it cuts. Say what must be whole and where the type goes."),
    ("guide-client", "Let the client answer"),
    ("guide-client-how", "Under Papers, make a link. It holds the whole picture and nothing else; who opens it sees the picture, the crops and the list, and can answer with yes, changes or no. Nothing goes through a server."),
    ("guide-papers", "Print the papers"),
    ("guide-papers-how", "The set sheet says to the centimetre where everything stands; the lists say what is pulled, bought, shot and sent back, and what of it is on your own shelf. Change a list and the picture changes with it. From the day it is on sale the dates count back to the brief. Every paper can be printed, or saved as a file."),
    ("guide-day", "Shoot"),
    ("guide-day-how", "The shoot-day steps lead through the day one thing at a time, with timers for food that does not keep and a log of what was shot. Lay the plan over a test photo to see what has drifted before the real food comes."),
    ("guide-touch", "Fingers and keys"),
    ("guide-touch-how", "Pinch to enlarge, tap twice to see all, tap again to reach a thing inside its place. By keys: arrows move by a centimetre, with Shift by a millimetre, [ and ] turn, Delete removes, Enter goes inside, Escape lets go, Ctrl or Cmd with Z takes back."),
    ("guide-kept", "Where it is kept"),
    ("guide-kept-how", "Everything stays in this browser on this device and works without a network. Some browsers clear what lies unused for long: save all layouts in one file from time to time, under Papers."),
    ("guide-caution", "The planner calculates; it does not certify. Rigs, mains, heat, glass and food are for people who are trained and licensed for them, by the rules of the place."),
];
