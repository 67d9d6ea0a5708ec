//! A colour per group of inputs; its word always stands beside it.

use crate::analysis::study::group::Group;
use crate::output::chart::style::{AMMONIA, Colour, NITRATE, NITRITE, OXYGEN, PLANTS, SOIL};

/// The colour of a group.
pub fn hue(group: Group) -> Colour {
    match group {
        Group::Soil => SOIL,
        Group::Microbes => NITRITE,
        Group::Gas => OXYGEN,
        Group::Plants => PLANTS,
        Group::Water => NITRATE,
        Group::Care => AMMONIA,
    }
}
