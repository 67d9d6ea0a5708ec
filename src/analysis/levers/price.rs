//! What stands beside the days: litres, grams of gas, the worst night, and how many are ready at all.

use crate::analysis::ensemble::member::{Member, Told};
use crate::base::moments::Moments;
use crate::base::quantiles::quantiles;

/// What a plan takes and brings, over its plausible tanks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Price {
    /// Water of the changes, L; mean.
    pub litres: f64,
    /// Gas from the cylinder, g; mean.
    pub gas_g: f64,
    /// Lowest oxygen of the run, mg/L; the middle one of all tanks.
    pub worst_night_mg_per_l: f64,
    /// Highest total ammonia of the run, mg N/L; the middle one of all tanks.
    pub ammonia_peak_mg_n_per_l: f64,
    /// Highest nitrite of the run, mg N/L; the middle one of all tanks.
    pub nitrite_peak_mg_n_per_l: f64,
    /// How many of 100 are ready by the last day.
    pub ready_of_100: f64,
}

impl Price {
    /// Over those members that did not fail.
    pub fn of(members: &[Member]) -> Price {
        let told: Vec<&Told> = members
            .iter()
            .filter_map(|member| member.told.as_ref().ok())
            .collect();
        let mean = |number: fn(&Told) -> f64| {
            let mut moments = Moments::default();
            told.iter().for_each(|told| moments.add(number(told)));
            moments.mean()
        };
        let middle = |number: fn(&Told) -> f64| {
            let mut all: Vec<f64> = told.iter().map(|told| number(told)).collect();
            match all.is_empty() {
                true => 0.0,
                false => quantiles(&mut all, &[0.5])[0],
            }
        };
        Price {
            litres: mean(|told| told.figures.litres_changed),
            gas_g: mean(|told| told.figures.gas_g),
            worst_night_mg_per_l: middle(|told| told.figures.oxygen_low.value),
            ammonia_peak_mg_n_per_l: middle(|told| told.figures.tan_peak.value),
            nitrite_peak_mg_n_per_l: middle(|told| told.figures.nitrite_peak.value),
            ready_of_100: mean(|told| if told.ready.day.is_some() { 100.0 } else { 0.0 }),
        }
    }
}
