//! How parameters are spread: from the low and high end of their declaration, by one rule.
//!
//! ```text
//! a free number                     split log-normal: median = central value, 5 % and 95 % points = low and high
//! a pK, a temperature in °C         split normal with the same points: a pK is a logarithm already, and the
//!                                   zero of °C means nothing
//! a share, or a number whose        triangular on [low, high], mode = central value: there is an end by
//! default is an end of its range    nature, beyond which nothing is believed
//! a soil's store                    the same, scaled by class/medium and by age as the central value is
//! first films XA0, XN0, XK0         log-normal, ×0.3 to ×3 each; for all three seed.level, ×0.1 to ×10 in a new
//!                                   tank, ×0.3 to ×3 in a seeded one
//! a word for the light              log-normal, ± 35 %
//! ```

use crate::base::sources::{Evidence, Source};
use crate::model::parameter::ParameterSpec;

use super::revised;
use super::shape::{Measure, Shape};

/// Logarithms, and temperatures in °C.
const WITHOUT_ZERO: [&str; 5] = ["pK1_A", "pK1_N", "pK1_K", "pK2", "T_hold"];
/// First films of each guild.
const FIRST_FILMS: [&str; 3] = ["XA0", "XN0", "XK0"];
/// Words for the light.
const LIGHT_WORDS: [&str; 3] = ["I_low", "I_medium", "I_high"];

/// 5 % and 95 % point of the first films of one guild, as multiples.
const EACH_GUILD: (f64, f64) = (0.3, 3.0);
/// 5 % and 95 % point of all first films together, as multiples, where nothing is brought in.
const BY_CHANCE: (f64, f64) = (0.1, 10.0);
/// Where that is known from.
pub const SEED_LEVEL_SOURCE: &str = "judgement: known to an order of magnitude at best; where the first films are `a little` or \
    `live medium`, to ×0.3 to ×3 (narrowed from ×0.1 to ×10: first nitrite would come after day 5 in most of them)";
/// The same where something is.
const BROUGHT_IN: (f64, f64) = (0.3, 3.0);
/// What a word for the light is off by, either way.
const LIGHT_WORD: (f64, f64) = (0.65, 1.35);
/// 5 % and 95 % point of the pore water of a medium soil, mg N/L.
pub const PORE_WATER_MG_N_PER_L: (f64, f64) = (4.0, 18.0);

/// The spread of a parameter about its central value in this tank.
pub fn of(spec: &ParameterSpec, central: f64) -> Shape {
    let multiples = |(low, high): (f64, f64)| Shape::log_normal(low, 1.0, high).times(central);
    if FIRST_FILMS.contains(&spec.id) {
        multiples(EACH_GUILD)
    } else if LIGHT_WORDS.contains(&spec.id) {
        multiples(LIGHT_WORD)
    } else {
        declared(spec).times(scale(spec, central))
    }
}

/// How much larger the central value is than the default.
fn scale(spec: &ParameterSpec, central: f64) -> f64 {
    if central == spec.default {
        1.0
    } else {
        central / spec.default
    }
}

/// What the numbers of a parameter are: amounts, of which zero is as far as they go, shares or levels.
pub fn measure_of(spec: &ParameterSpec) -> Measure {
    match WITHOUT_ZERO.contains(&spec.id) {
        true => Measure::Level,
        false if spec.is_share() => Measure::Share,
        false => Measure::Amount,
    }
}

fn declared(spec: &ParameterSpec) -> Shape {
    let middle = spec.default;
    let (low, high) = revised::points(spec.id).unwrap_or((spec.low, spec.high));
    if WITHOUT_ZERO.contains(&spec.id) {
        Shape::normal(low, middle, high)
    } else if spec.is_share() || middle == low || middle == high {
        Shape::triangular(low, middle, high)
    } else {
        Shape::log_normal(low, middle, high)
    }
}

/// How all first films together are spread about a level: what is brought in outweighs chance, as far as
/// the ranges of the words `a little` and `live medium` have it.
pub fn all_guilds(level: f64) -> Shape {
    let (low, high) = if level > 1.0 { BROUGHT_IN } else { BY_CHANCE };
    Shape::log_normal(low, 1.0, high).times(level)
}

/// Source of a spread: a publication, or a judgement and why.
pub fn source(id: &str, source: &Source) -> String {
    if FIRST_FILMS.contains(&id) {
        return "judgement: guilds come in unlike numbers; nobody has counted them".into();
    }
    if LIGHT_WORDS.contains(&id) {
        return "judgement: a word for a reading, ± 35 %".into();
    }
    let line = source.line();
    if let Some(why) = revised::why(id) {
        return format!("judgement: {why}; {line}");
    }
    match source.evidence {
        Evidence::Published | Evidence::Definition => line,
        _ => format!("judgement: {line}"),
    }
}
