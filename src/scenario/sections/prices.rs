//! `[prices]`: what water, gas and a dechlorinator cost, by name.

use crate::analysis::cost::{DECHLORINATOR, GAS};
use crate::base::units::everyday;
use crate::scenario::problem::Problem;
use crate::scenario::reader::{Reader, quantity_of};
use crate::scenario::words::closest;

use super::water::Waters;

/// Reads `[prices]`: money per litre of a water, per gram of gas, or per litre that is dechlorinated.
pub fn read(file: &Reader<'_>, waters: &Waters) -> Vec<(String, f64)> {
    let section = file.section("prices");
    let mut prices = Vec::new();
    for entry in section.everything() {
        let path = section.path_of(&entry.key);
        let is_gas = entry.key == GAS;
        let is_known = is_gas || entry.key == DECHLORINATOR;
        if !is_known && waters.get(&entry.key).is_none() {
            let names: Vec<&str> = waters.names().chain([GAS, DECHLORINATOR]).collect();
            let problem = Problem::at(
                &entry.key_place,
                format!("{path} is neither gas, dechlorinator nor a water of this file"),
            )
            .label(format!("known: {}", names.join(", ")));
            section
                .desk
                .problem(match closest(&entry.key, names.iter().copied()) {
                    Some(near) => problem.help(format!("did you mean {near}?")),
                    None => problem,
                });
            continue;
        }
        let kind = if is_gas {
            &everyday::PRICE_PER_MASS
        } else {
            &everyday::PRICE_PER_VOLUME
        };
        if let Some(price) = quantity_of(section.desk, &path, &entry.node, kind, (0.0, 1e6)) {
            section.given(&entry.key, &entry.node);
            prices.push((entry.key.clone(), price));
        }
    }
    prices.sort_by(|a, b| a.0.cmp(&b.0));
    prices
}
