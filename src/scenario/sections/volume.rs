//! From tape measure to litres: inside measures, water line, net volume.

use crate::base::units::{LITRES_PER_CUBIC_METRE, digits, everyday, quantity};
use crate::scenario::problem::{Place, Problem};
use crate::scenario::reader::{Read, Reader};
use crate::scenario::refusal;
use crate::scenario::tree::Value;

/// Glass above the water that is assumed when only volume and surface are known, m.
const ASSUMED_RIM_M: f64 = 0.03;

/// Length, width and height inside, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Inside {
    /// Length, m.
    pub length_m: f64,
    /// Width, m.
    pub width_m: f64,
    /// Height, m.
    pub height_m: f64,
}

impl Inside {
    /// Water surface and bed, m².
    pub fn base_m2(&self) -> f64 {
        self.length_m * self.width_m
    }
    /// Glass that loses heat: four walls and the bottom, m².
    pub fn walls_m2(&self) -> f64 {
        2.0 * (self.length_m + self.width_m) * self.height_m + self.base_m2()
    }
    /// A tank twice as long as wide that holds these litres, with 3 cm of glass above the water.
    pub fn assumed(surface_m2: f64, litres: f64) -> Inside {
        let width_m = (surface_m2 / 2.0).sqrt();
        Inside {
            length_m: 2.0 * width_m,
            width_m,
            height_m: litres / LITRES_PER_CUBIC_METRE / surface_m2 + ASSUMED_RIM_M,
        }
    }
    /// As people say it.
    pub fn words(&self) -> String {
        let cm = |metres: f64| digits((1e4 * metres).round() / 100.0);
        format!(
            "{} x {} x {} cm inside",
            cm(self.length_m),
            cm(self.width_m),
            cm(self.height_m)
        )
    }
}

/// Reads `inside`: three lengths with `x` between them; the last unit serves those without one.
pub fn inside(section: &Reader<'_>) -> Read<Inside> {
    let Some(entry) = section.wanted("inside") else {
        return Read::Absent;
    };
    let Value::Text(text) = &entry.node.value else {
        return section.wrong_type("inside", &entry.node, "three lengths in quotes");
    };
    let place = &entry.node.place;
    match three_lengths(text, place) {
        Ok([length_m, width_m, height_m]) => {
            section.given("inside", &entry.node);
            let inside = Inside {
                length_m,
                width_m,
                height_m,
            };
            Read::Given(inside, place.clone())
        }
        Err(problem) => {
            let written = "write it like \"60 x 30 x 36 cm\"".to_string();
            section.desk.problem(Problem {
                help: vec![written],
                ..*problem
            });
            Read::Bad(place.clone())
        }
    }
}

/// Three lengths with `x` between them, m.
fn three_lengths(text: &str, place: &Place) -> Result<[f64; 3], Box<Problem>> {
    let parts: Vec<&str> = text.split(['x', '×', 'X']).map(str::trim).collect();
    let [length, width, height] = parts[..] else {
        let title = format!("tank.inside needs three lengths; this has {}", parts.len());
        return Err(Box::new(
            Problem::at(place, title).label("length x width x height"),
        ));
    };
    let unit = quantity::split(height).map_or("", |split| split.unit);
    Ok([
        side(length, unit, place)?,
        side(width, unit, place)?,
        side(height, unit, place)?,
    ])
}

/// One side, m; without a unit of its own it has that of the last.
fn side(part: &str, unit: &str, place: &Place) -> Result<f64, Box<Problem>> {
    let bare = quantity::split(part).is_ok_and(|split| split.unit.is_empty());
    let whole = format!("{part} {}", if bare { unit } else { "" });
    let whole = whole.trim();
    match quantity::read(whole, &everyday::LENGTH) {
        Ok(metres) if (0.05..=10.0).contains(&metres) => Ok(metres),
        Ok(_) => Err(Box::new(
            Problem::at(place, format!("tank.inside has a side of {whole}"))
                .label("allowed: 5 cm to 10 m"),
        )),
        Err(refused) => {
            let kind = &everyday::LENGTH;
            let told = refusal::problem("tank.inside", whole, kind, &refused, place);
            Err(Box::new(told))
        }
    }
}
