//! Colour and line of each curve of a lesson: those of the other charts.

use crate::analysis::lesson::trace::Trace;
use crate::output::chart::style::{
    AMMONIA, CHANGE, CO2, Colour, Dash, GAS, INK, NITRATE, NITRITE, OXYGEN, PLANTS, Pen, READY,
    SOIL,
};

/// The colour of a curve.
pub const fn colour(trace: Trace) -> Colour {
    match trace {
        Trace::Ammonia | Trace::FreeAmmonia | Trace::AmmoniaOxidisers | Trace::AmmoniaCapacity => {
            AMMONIA
        }
        Trace::Nitrite | Trace::NitriteCapacity => NITRITE,
        Trace::Oxygen => OXYGEN,
        Trace::Co2 => CO2,
        Trace::Ph | Trace::Kh => INK,
        Trace::Ready => READY,
        Trace::InSoil | Trace::InDetritus => SOIL,
        Trace::InPlants => PLANTS,
        Trace::InWater => NITRATE,
        Trace::CarriedOut => CHANGE,
        Trace::GoneAsGas => GAS,
    }
}

/// The line of a curve: the first of a panel solid, the second dashed.
pub const fn pen(colour: Colour, rank: usize) -> Pen {
    match rank {
        0 => Pen::curve(colour),
        _ => Pen::dashed(colour),
    }
}

/// A line of reference, in the colour of its curve where a panel has others.
pub fn level(of: Option<Trace>) -> Pen {
    let colour = of.map_or(Pen::LIMIT.colour, colour);
    Pen {
        colour,
        ..Pen::LIMIT
    }
}

/// The line of what a step is held against: thin and dotted.
pub const fn base(colour: Colour) -> Pen {
    Pen {
        width: 1.4,
        dash: Dash::Every(1.6, 3.4),
        ..Pen::curve(colour)
    }
}
