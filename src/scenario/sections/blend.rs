//! `[refill]` and `[fill]`: how the waters are blended and made ready.

use crate::base::units::everyday;
use crate::model::composition::Composition;
use crate::scenario::keys;
use crate::scenario::problem::Problem;
use crate::scenario::reader::{Read, Reader, quantity_of};
use crate::scenario::tree::Value;

use super::water::Waters;

/// A blend of waters, ready to use.
#[derive(Debug, Clone)]
pub struct Blend {
    /// Parts: share and name.
    pub parts: Vec<(f64, String)>,
    /// Whether a dechlorinator is used.
    pub dechlorinated: bool,
    /// Temperature it is brought to, °C.
    pub temperature_c: Option<f64>,
}

impl Blend {
    /// Tap water, dechlorinated.
    pub fn tap() -> Blend {
        Blend {
            parts: vec![(1.0, "tap".to_string())],
            dechlorinated: true,
            temperature_c: None,
        }
    }
    /// In words, for example `70 % tap, 30 % ro`.
    pub fn words(&self) -> String {
        let parts: Vec<String> = self
            .parts
            .iter()
            .map(|(share, name)| format!("{} % {name}", crate::base::units::digits(100.0 * share)))
            .collect();
        let treated = if self.dechlorinated {
            ""
        } else {
            ", not dechlorinated"
        };
        format!("{}{treated}", parts.join(", "))
    }
}

impl Waters {
    /// Reads `[refill]` or `[fill]`; `base` holds where nothing is said.
    pub fn blend(&self, section: &Reader<'_>, base: &Blend) -> Blend {
        let shares = self.shares(section);
        let rest = self.rest(section);
        let dechlorinated = section.truth("dechlorinator");
        let temperature = section.quantity("temperature", &everyday::TEMPERATURE, (1.0, 45.0));
        if section.pattern == "refill" && dechlorinated.is_absent() {
            section.note_default("dechlorinator");
        }
        section.close();
        let says_what = shares.is_some() || rest.is_some();
        Blend {
            parts: if says_what {
                parts(shares.unwrap_or_default(), rest.as_deref().unwrap_or("tap"))
            } else {
                base.parts.clone()
            },
            dechlorinated: dechlorinated.or(base.dechlorinated),
            temperature_c: temperature.value().or(base.temperature_c),
        }
    }
    fn rest(&self, section: &Reader<'_>) -> Option<String> {
        let Read::Given(name, place) = section.text("rest") else {
            return None;
        };
        self.check(section, &section.path_of("rest"), &name, &place);
        Some(name)
    }
    fn shares(&self, section: &Reader<'_>) -> Option<Vec<(f64, String)>> {
        let entry = section.wanted("blend")?;
        let Value::Table(table) = &entry.node.value else {
            let _: Read<()> = section.wrong_type("blend", &entry.node, "shares of named waters");
            return None;
        };
        let mut shares = Vec::new();
        for part in &table.entries {
            let path = format!("{}.{}", section.path_of("blend"), part.key);
            self.check(
                section,
                &section.path_of("blend"),
                &part.key,
                &part.key_place,
            );
            let share = quantity_of(
                section.desk,
                &path,
                &part.node,
                &everyday::SHARE,
                (0.0, 1.0),
            );
            shares.push((share?, part.key.clone()));
        }
        let sum: f64 = shares.iter().map(|(share, _)| share).sum();
        if sum > 1.0 + 1e-9 {
            section.desk.problem(
                Problem::at(
                    &entry.node.place,
                    format!(
                        "the shares of {} add up to {:.0} %",
                        section.path_of("blend"),
                        100.0 * sum
                    ),
                )
                .label("at most 100 %; what is left is tap")
                .help(format!(
                    "write it like blend = {}",
                    keys::example("refill.blend")
                )),
            );
            return None;
        }
        section.given("blend", &entry.node);
        Some(shares)
    }
    /// The water of a blend as it goes into the tank.
    pub fn prepare(&self, blend: &Blend) -> Composition {
        let parts: Vec<(f64, Composition)> = blend
            .parts
            .iter()
            .filter_map(|(share, name)| Some((*share, *self.get(name)?)))
            .collect();
        let mut water = Composition::blend(&parts);
        if blend.dechlorinated {
            water = water.dechlorinated();
        }
        if let Some(t_c) = blend.temperature_c {
            water.temperature_c = t_c;
        }
        water
    }
}

/// The shares and the rest, in order of name so that the order in the file does not matter.
fn parts(mut shares: Vec<(f64, String)>, rest: &str) -> Vec<(f64, String)> {
    let sum: f64 = shares.iter().map(|(share, _)| share).sum();
    if sum < 1.0 - 1e-12 {
        match shares.iter_mut().find(|(_, name)| name == rest) {
            Some(part) => part.0 += 1.0 - sum,
            None => shares.push((1.0 - sum, rest.to_string())),
        }
    }
    shares.sort_by(|a, b| a.1.cmp(&b.1));
    shares
}
