//! Colours, weights and sizes: one quantity, one colour, in every chart.
//!
//! The first seven colours stay apart for normal sight and for full loss of any one cone; each has
//! a contrast of at least 3 to 1 on white. Colour is never the only sign: lines are solid, dashed or
//! dotted and named at their ends.

/// A colour, red, green, blue.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Colour(pub u8, pub u8, pub u8);

/// Total and free ammonia, ammonia oxidisers.
pub const AMMONIA: Colour = Colour(0xC7, 0x50, 0x0F);
/// Nitrite, nitrite oxidisers.
pub const NITRITE: Colour = Colour(0x97, 0x31, 0x68);
/// Nitrate.
pub const NITRATE: Colour = Colour(0x23, 0x47, 0x97);
/// Oxygen, night air.
pub const OXYGEN: Colour = Colour(0x24, 0x92, 0xC9);
/// Carbon dioxide.
pub const CO2: Colour = Colour(0x7E, 0x0E, 0x25);
/// Plants.
pub const PLANTS: Colour = Colour(0x15, 0x87, 0x4F);
/// Light.
pub const LIGHT: Colour = Colour(0xB3, 0x91, 0x0A);
/// Text, pH, limits.
pub const INK: Colour = Colour(0x1F, 0x24, 0x2B);
/// Units, ticks, what is said in passing.
pub const MUTED: Colour = Colour(0x5C, 0x65, 0x70);
/// Grid lines.
pub const GRID: Colour = Colour(0xE3, 0xE6, 0xEA);
/// The base line of a panel.
pub const BASE: Colour = Colour(0x9A, 0xA2, 0xAB);
/// Water changes, and what they bring or take.
pub const CHANGE: Colour = Colour(0x2B, 0x6C, 0xA3);
/// Soil.
pub const SOIL: Colour = Colour(0xA8, 0x97, 0x7D);
/// Detritus and microbes.
pub const DETRITUS: Colour = Colour(0x6B, 0x5B, 0x45);
/// What is dissolved in the water.
pub const WATER: Colour = Colour(0x8F, 0xC3, 0xE2);
/// What left as gas.
pub const GAS: Colour = Colour(0xB9, 0xC1, 0xCA);
/// What was cut, siphoned or wiped away.
pub const CARE: Colour = Colour(0x9B, 0xB8, 0x6A);
/// Absence.
pub const AWAY: Colour = Colour(0xF1, 0xF3, 0xF5);
/// Lights off, in a strip of hours.
pub const DARK: Colour = Colour(0xE9, 0xEC, 0xF3);
/// Lights off, behind the curves of a day.
pub const DUSK: Colour = Colour(0xF0, 0xF3, 0xF8);
/// Tanks that are ready.
pub const READY: Colour = Colour(0x1D, 0x6B, 0x6E);
/// Paper.
pub const WHITE: Colour = Colour(0xFF, 0xFF, 0xFF);

/// Size of the title, pixels on a page 1200 wide.
pub const TITLE: f64 = 22.0;
/// Size of the sentence under it and of panel titles.
pub const SENTENCE: f64 = 14.0;
/// Size of units, names and words beside marks.
pub const NAME: f64 = 13.0;
/// Size of ticks and notes: the smallest.
pub const TICK: f64 = 12.5;
/// Least size that still is 2 mm on A5 landscape inside margins of 8 mm: 2 · 1200 / (210 − 16) mm.
pub const LEAST: f64 = 12.4;

/// How a line is broken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Dash {
    /// Not at all.
    Solid,
    /// This much drawn, this much left out, pixels.
    Every(f64, f64),
}

/// How a line is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pen {
    /// Its colour.
    pub colour: Colour,
    /// Its width, pixels.
    pub width: f64,
    /// Where it is broken.
    pub dash: Dash,
    /// How much it covers, 0 to 1.
    pub alpha: f64,
}

impl Pen {
    /// A solid curve of data.
    pub const fn curve(colour: Colour) -> Pen {
        Pen {
            colour,
            width: 1.9,
            dash: Dash::Solid,
            alpha: 1.0,
        }
    }
    /// The second curve of a panel.
    pub const fn dashed(colour: Colour) -> Pen {
        Pen {
            dash: Dash::Every(6.0, 3.0),
            ..Pen::curve(colour)
        }
    }
    /// The third curve of a panel.
    pub const fn dotted(colour: Colour) -> Pen {
        Pen {
            dash: Dash::Every(2.0, 3.0),
            ..Pen::curve(colour)
        }
    }
    /// A line one pixel wide.
    pub const fn hair(colour: Colour) -> Pen {
        Pen {
            width: 1.0,
            ..Pen::curve(colour)
        }
    }
    /// A limit.
    pub const LIMIT: Pen = Pen {
        dash: Dash::Every(6.0, 4.0),
        ..Pen::hair(INK)
    };
    /// A fine dotted line of reference.
    pub const fn reference(colour: Colour) -> Pen {
        Pen {
            width: 1.2,
            dash: Dash::Every(1.6, 4.0),
            ..Pen::curve(colour)
        }
    }
    /// The line through the panels at a water change.
    pub const CHANGE: Pen = Pen {
        alpha: 0.45,
        ..Pen::hair(CHANGE)
    };
    /// The same line with another width.
    pub const fn wide(self, width: f64) -> Pen {
        Pen { width, ..self }
    }
}
