//! From tape measure to litres: inside measures, water line, net volume.

use crate::base::units::{LITRES_PER_CUBIC_METRE, digits, everyday, quantity};
use crate::scenario::problem::Problem;
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
    let parts: Vec<&str> = text.split(['x', '×', 'X']).map(str::trim).collect();
    let place = &entry.node.place;
    let [length, width, height] = parts[..] else {
        section.desk.problem(
            Problem::at(
                place,
                format!("tank.inside needs three lengths; this has {}", parts.len()),
            )
            .label("length x width x height")
            .help("write it like \"60 x 30 x 36 cm\""),
        );
        return Read::Bad(place.clone());
    };
    let unit = quantity::split(height).map_or("", |split| split.unit);
    let mut lengths = [0.0; 3];
    for (at, part) in [length, width, height].iter().enumerate() {
        let bare = quantity::split(part).is_ok_and(|split| split.unit.is_empty());
        let whole = if bare {
            format!("{part} {unit}")
        } else {
            (*part).to_string()
        };
        match quantity::read(&whole, &everyday::LENGTH) {
            Ok(metres) if (0.05..=10.0).contains(&metres) => lengths[at] = metres,
            Ok(_) => {
                section.desk.problem(
                    Problem::at(place, format!("tank.inside has a side of {}", whole.trim()))
                        .label("allowed: 5 cm to 10 m"),
                );
                return Read::Bad(place.clone());
            }
            Err(refused) => {
                let kind = &everyday::LENGTH;
                let mut told = refusal::problem("tank.inside", &whole, kind, &refused, place);
                told.help = vec!["write it like \"60 x 30 x 36 cm\"".to_string()];
                section.desk.problem(told);
                return Read::Bad(place.clone());
            }
        }
    }
    section.given("inside", &entry.node);
    let [length_m, width_m, height_m] = lengths;
    Read::Given(
        Inside {
            length_m,
            width_m,
            height_m,
        },
        place.clone(),
    )
}
