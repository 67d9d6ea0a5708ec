//! The tanks of a study: one scenario for every combination of settings, and in each of them what is free to vary.

use crate::analysis::case::Case;
use crate::analysis::uncertain::{Uncertain, Varied};
use crate::engine::input::ModelInput;

use super::input::{Input, Reach, Spread, setting};

/// The tanks of a study.
#[derive(Debug, Clone)]
pub struct Family {
    variants: Vec<Variant>,
    /// Input and number of settings, the last running fastest.
    settings: Vec<(usize, usize)>,
}

/// The tanks that share all settings.
#[derive(Debug, Clone)]
pub struct Variant {
    case: Case,
    uncertain: Uncertain,
    /// Of each varied row of the case: the input it is, and how it is spread.
    spreads: Vec<(usize, Spread)>,
}

/// How many settings each input has, in order, with its number; none for those without.
pub fn settings_of(inputs: &[Input]) -> Vec<(usize, usize)> {
    let all = inputs.iter().enumerate();
    all.filter_map(|(at, input)| match &input.spread {
        Spread::Settings(settings) => Some((at, settings.len())),
        _ => None,
    })
    .collect()
}

impl Family {
    /// The tanks of the scenarios of all combinations of settings, the last input running fastest.
    ///
    /// # Panics
    /// When there are not as many cases as combinations.
    pub fn of(cases: Vec<Case>, inputs: &[Input]) -> Family {
        let settings = settings_of(inputs);
        let combinations: usize = settings.iter().map(|(_, count)| count).product();
        assert_eq!(
            cases.len(),
            combinations,
            "a case for every combination of settings"
        );
        let variants = cases.into_iter().map(|case| Variant::of(case, inputs));
        Family {
            variants: variants.collect(),
            settings,
        }
    }
    /// The tanks of each combination of settings.
    pub fn variants(&self) -> &[Variant] {
        &self.variants
    }
    /// The number of the variant in which inputs stand at these places.
    pub fn variant_at(&self, places: &[f64]) -> usize {
        let numbers = self.settings.iter();
        numbers.fold(0, |number, &(input, count)| {
            number * count + setting(places[input], count)
        })
    }
}

impl Variant {
    fn of(case: Case, inputs: &[Input]) -> Variant {
        let is_free = |input: &Input| !matches!(input.spread, Spread::Settings(_));
        let is_it = |input: &Input, row: &Varied| input.name == row.name && is_free(input);
        let number = |row: &Varied| inputs.iter().position(|input| is_it(input, row));
        let uncertain = Uncertain::of(&case).only(|row| number(row).is_some());
        let spreads = uncertain.rows().iter().filter_map(|row| {
            let input = number(row)?;
            Some((input, spread_here(&inputs[input], row)))
        });
        Variant {
            spreads: spreads.collect(),
            uncertain,
            case,
        }
    }
    /// The scenario.
    pub fn case(&self) -> &Case {
        &self.case
    }
    /// What varies in it.
    pub fn uncertain(&self) -> &Uncertain {
        &self.uncertain
    }
    /// Value of every input at these places: of settings the number, none for what does not vary in these tanks.
    pub fn values(&self, inputs: &[Input], places: &[f64], reach: Reach) -> Vec<Option<f64>> {
        let of_setting = |(input, &place): (&Input, &f64)| match &input.spread {
            Spread::Settings(_) => Some(input.at(place)),
            _ => None,
        };
        let mut values: Vec<Option<f64>> = inputs.iter().zip(places).map(of_setting).collect();
        for (input, spread) in &self.spreads {
            values[*input] = Some(spread.at(places[*input], reach));
        }
        values
    }
    /// The tank in which inputs have these values.
    pub fn input(&self, values: &[Option<f64>]) -> ModelInput {
        let of_row = |(input, _): &(usize, Spread)| values[*input].unwrap_or_default();
        let drawn: Vec<f64> = self.spreads.iter().map(of_row).collect();
        self.uncertain.input(&self.case, &drawn)
    }
}

/// How an input is spread in this scenario, where its middle may be another than elsewhere.
fn spread_here(input: &Input, row: &Varied) -> Spread {
    let (low, high) = row.ends();
    match &input.spread {
        Spread::Even { .. } => Spread::Even { low, high },
        _ => Spread::Shape(row.shape),
    }
}
