//! Silhouettes of single pieces, in hundredths of half length and breadth.
//! Mirrored ones hold the upper side from the left end to the right.

/// A shoot with its tip to the right: asparagus.
pub(super) const SPEAR: &[[i8; 2]] = &[
    [-100, 0], [-98, -62], [-30, -60], [30, -66], [56, -98], [80, -84], [95, -40], [100, 0],
];
/// A pod, bent a little.
pub(super) const POD: &[[i8; 2]] = &[
    [-100, 40], [-70, -30], [-20, -70], [30, -74], [76, -40], [100, 20], [70, 30], [26, -4],
    [-20, 4], [-66, 60], [-94, 70],
];
/// A crescent, its horns down.
pub(super) const CRESCENT: &[[i8; 2]] = &[
    [-100, 72], [-92, 10], [-66, -52], [-30, -92], [0, -100], [30, -92], [66, -52], [92, 10],
    [100, 72], [76, 92], [58, 44], [32, 14], [0, 4], [-32, 14], [-58, 44], [-76, 92],
];
/// A curled prawn, its tail to the right.
pub(super) const PRAWN: &[[i8; 2]] = &[
    [-30, 62], [-74, 40], [-98, -6], [-84, -62], [-40, -96], [14, -100], [60, -74], [84, -30],
    [98, 22], [100, 66], [84, 90], [70, 62], [60, 92], [44, 66], [52, 26], [34, -8], [2, -26],
    [-26, -16], [-32, 12], [-10, 30],
];
/// A half-round with a flat side below.
pub(super) const MOON: &[[i8; 2]] = &[
    [-100, 74], [-94, 6], [-70, -52], [-34, -88], [0, -98], [34, -88], [70, -52], [94, 6],
    [100, 74], [60, 96], [0, 100], [-60, 96],
];
/// A slice of melon or apple: the peel above, the flesh hollow below.
pub(super) const SLICE: &[[i8; 2]] = &[
    [-100, 50], [-78, -30], [-42, -80], [0, -98], [42, -80], [78, -30], [100, 50], [66, 96],
    [36, 60], [0, 48], [-36, 60], [-66, 96],
];
/// A pear, an avocado: the narrow end to the left.
pub(super) const PEAR: &[[i8; 2]] = &[
    [-100, 0], [-94, -34], [-62, -52], [-22, -68], [18, -94], [56, -98], [86, -64], [100, 0],
];
/// A drop with a point to the left: fig, garlic, strawberry.
pub(super) const DROP: &[[i8; 2]] = &[
    [-100, 0], [-84, -16], [-54, -42], [-12, -84], [38, -100], [80, -68], [100, 0],
];
/// A shell with its hinge to the left.
pub(super) const FAN: &[[i8; 2]] = &[
    [-100, 0], [-90, -24], [-44, -66], [8, -96], [58, -92], [90, -50], [100, 0],
];
/// A slice of something round, its point to the left.
pub(super) const WEDGE: &[[i8; 2]] = &[
    [-100, 0], [-96, -8], [-20, -50], [78, -98], [92, -62], [100, 0],
];
/// A piece of fillet.
pub(super) const FILLET: &[[i8; 2]] = &[
    [-100, -34], [-62, -84], [18, -100], [88, -72], [100, 4], [86, 78], [8, 100], [-70, 84],
    [-98, 32],
];
/// A mushroom cut through, its foot to the left.
pub(super) const MUSHROOM: &[[i8; 2]] = &[
    [-100, 0], [-96, -30], [-40, -24], [-8, -28], [-26, -72], [6, -100], [56, -92], [92, -52],
    [100, 0],
];
/// A roast bird, its legs to the right.
pub(super) const BIRD: &[[i8; 2]] = &[
    [-96, 0], [-92, -40], [-66, -76], [-44, -100], [-18, -88], [8, -80], [34, -94], [62, -84],
    [84, -54], [98, -40], [100, -26], [86, -18], [72, 0],
];
/// A broad leaf, its tip to the right.
pub(super) const LEAF: &[[i8; 2]] = &[
    [-100, 0], [-72, -50], [-26, -90], [26, -88], [70, -48], [100, 0],
];
/// A thin slice of meat, folded loosely.
pub(super) const FOLD: &[[i8; 2]] = &[
    [-100, -20], [-76, -82], [-34, -66], [4, -100], [48, -78], [84, -88], [100, -30], [88, 30],
    [96, 72], [44, 84], [10, 100], [-36, 78], [-80, 92], [-94, 34],
];
/// A wheel with a wedge cut out of it.
pub(super) const WHEEL: &[[i8; 2]] = &[
    [8, 0], [97, -26], [80, -60], [44, -90], [0, -100], [-44, -90], [-80, -60], [-99, -12],
    [-92, 40], [-62, 78], [-16, 98], [34, 94], [72, 69],
];
/// A board with a handle to the right.
pub(super) const PADDLE: &[[i8; 2]] = &[
    [-100, 0], [-98, -80], [-90, -98], [40, -100], [56, -92], [64, -44], [70, -22], [92, -20],
    [100, -10], [100, 0],
];
/// A boat with a lip to the left and a handle to the right.
pub(super) const BOAT: &[[i8; 2]] = &[
    [-100, -8], [-82, -34], [-58, -70], [-20, -94], [24, -92], [54, -64], [66, -42], [90, -34],
    [100, 0], [92, 38], [66, 46], [52, 68], [22, 94], [-20, 96], [-58, 72], [-82, 36], [-100, 10],
];
/// A pot with a spout to the left and a handle to the right.
pub(super) const TEAPOT: &[[i8; 2]] = &[
    [-100, -12], [-78, -24], [-62, -46], [-44, -80], [-8, -98], [32, -92], [58, -62], [66, -36],
    [90, -32], [100, -10], [98, 14], [86, 30], [66, 34], [56, 64], [30, 92], [-8, 98], [-44, 82],
    [-62, 48], [-78, 26], [-100, 10],
];
