//! What is said beside every result: cautions, and what the model leaves out.

/// Beside every result.
pub const CAUTIONS: [&str; 5] = [
    "A forecast of one model with wide error: real tanks cleared nitrite up to two weeks later.",
    "It never replaces a test before animals go in.",
    "CO2 cylinders upright, fixed, room aired; drip loops and residual-current protection;",
    "no hose left alone, an air gap at the tap; chemicals by their labels; release nothing.",
    "The animals come first. Local codes and licensed trades have the last word.",
];

/// What the model leaves out, for those who read a page and not the README.
pub const LIMITS_OF_THE_MODEL: [&str; 4] = [
    "Nobody has published how much ammonia and acid a bag of soil gives; real ones differ fivefold from the kinds used here.",
    "How many nitrifiers a new tank begins with is known to a factor of ten, which alone moves the ready day by more than a week.",
    "Soft water and low pH are the least certain corner: whether a tank finishes there hangs on two numbers of the soil that nobody has measured.",
    "Not simulated: blooms, melt that spreads, fish health, medicines, stone that dissolves, dead corners, bacteria in bottles that wash out.",
];
