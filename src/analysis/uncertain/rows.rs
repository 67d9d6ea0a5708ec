//! The list of varied inputs of a case, and of what is not varied.

use crate::analysis::case::{Case, SetBy};
use crate::model::parameter::ParameterSpec;
use crate::model::parameter_set::Origin;
use crate::model::parameters;

use super::moves::{Move, Place};
use super::shape::Shape;
use super::unsure::{Known, Written};
use super::{Kept, Lot, Varied, in_use, spread, told_apart};

/// Ids of sampled inputs that are no parameters.
const SEED_LEVEL: &str = "seed.level";
const PORE_WATER: &str = "C_p0";
/// What a soil holds in store: scaled by its class and age.
const STORES: [&str; 4] = ["q0", "N_o0", "P0", "E_H0"];
/// Films of mature medium, by guild.
const MEDIA: [&str; 3] = ["seed_XA", "seed_XN", "seed_XK"];

/// What levers may bring into a tank that has none of it: an air stone, mature medium.
const BROUGHT: [&str; 5] = ["a_air", "r_air", "seed_XA", "seed_XN", "seed_XK"];

/// A list in the making.
struct List<'a> {
    case: &'a Case,
    /// Ids that count as in use, though the plan has nothing of theirs.
    may_come: &'static [&'static str],
    rows: Vec<Varied>,
    kept: Vec<Kept>,
}

/// What is varied and what is kept in a case: what the scenario is not sure of first.
pub fn of(case: &Case) -> (Vec<Varied>, Vec<Kept>) {
    listed(case, &[])
}

/// The same where levers may bring in what is not planned: that is as little known as what is.
pub fn with_what_levers_bring(case: &Case) -> (Vec<Varied>, Vec<Kept>) {
    listed(case, &BROUGHT)
}

fn listed(case: &Case, may_come: &'static [&'static str]) -> (Vec<Varied>, Vec<Kept>) {
    let mut list = List {
        case,
        may_come,
        rows: Vec::new(),
        kept: Vec::new(),
    };
    list.ranges();
    list.first_films();
    list.pore_water();
    for spec in parameters::all() {
        list.parameter(spec);
    }
    told_apart::fill(&mut list.rows);
    (list.rows, list.kept)
}

impl List<'_> {
    fn keep(&mut self, name: &str, why: &'static str) {
        self.kept.push(Kept {
            name: name.to_string(),
            why,
        });
    }
    /// Whether something else moves a parameter: a word that is not known, or a range of the scenario.
    fn is_moved(&self, id: &str) -> bool {
        let number = parameters::index(id);
        let is_it = |to: &Move| matches!(to.place, Place::Parameter(at) if Some(at) == number);
        (self.case.unsure.iter())
            .filter(|unsure| unsure.parameter() != Some(id))
            .filter(|unsure| !unsure.parameter().is_some_and(|id| self.is_set(id)))
            .any(|unsure| unsure.moves.iter().any(is_it))
    }
    /// Whether the user gave a parameter a plain value.
    fn is_set(&self, id: &str) -> bool {
        let origin = self.case.input.parameters.origin(id);
        matches!(origin, Origin::Given { .. }) && self.range_of(id).is_none()
    }
    /// The range in `[parameters]` of a parameter, as it was meant and as it is written.
    fn range_of(&self, id: &str) -> Option<(Shape, Written)> {
        self.case
            .unsure
            .iter()
            .find_map(|unsure| match &unsure.known {
                Known::Range { shape, written, .. } if unsure.parameter() == Some(id) => {
                    Some((*shape, written.clone()))
                }
                _ => None,
            })
    }
    /// Ranges of the scenario outside `[parameters]`.
    fn ranges(&mut self) {
        for unsure in &self.case.unsure {
            if let (
                None,
                Known::Range {
                    shape,
                    unit,
                    written,
                },
            ) = (unsure.parameter(), &unsure.known)
            {
                self.rows.push(Varied {
                    name: unsure.path.clone(),
                    words: "as you wrote it".into(),
                    unit: (*unit).to_string(),
                    shape: *shape,
                    source: given(written),
                    written: Some(written.clone()),
                    told_apart: String::new(),
                    lot: Lot::OfPath,
                    moves: unsure.moves.clone(),
                });
            }
        }
    }
    fn first_films(&mut self) {
        let level = self.case.input.seed_level;
        if level <= 0.0 {
            return self.keep(SEED_LEVEL, "no first films");
        }
        self.own(
            SEED_LEVEL,
            "first films of all guilds together, as a multiple of level 1",
            "1",
            spread::all_guilds(level),
            spread::SEED_LEVEL_SOURCE,
            Place::SeedLevel,
        );
    }
    /// Pore water, of which `Kd` is the other face; known where `Kd` is given.
    fn pore_water(&mut self) {
        let set = &self.case.input.parameters;
        if let Some(why) = in_use::misses(&self.case.input, PORE_WATER) {
            return self.keep(PORE_WATER, why);
        }
        if matches!(set.origin("Kd"), Origin::Given { .. }) {
            return self.keep(PORE_WATER, "follows from Kd and q0, as you gave Kd");
        }
        let value = |id: &str| set.get(id);
        let central = value("q0") / (value("Kd") + value("por") / value("rho_soil"));
        let default = |id: &str| parameters::spec(id).map_or(1.0, |spec| spec.default);
        let medium = default("q0") / (default("Kd") + default("por") / default("rho_soil"));
        let (low, high) = spread::PORE_WATER_MG_N_PER_L;
        let shape = Shape::log_normal(low, medium, high).times(central / medium);
        self.own(
            PORE_WATER,
            "ammonium in the pore water of the soil at filling",
            "mg N/L",
            shape,
            "judgement: back-calculated from readings of common practice; with q0 it sets Kd",
            Place::PoreWater,
        );
    }
    fn own(&mut self, id: &str, words: &str, unit: &str, shape: Shape, source: &str, place: Place) {
        self.rows.push(Varied {
            name: id.to_string(),
            words: words.to_string(),
            unit: unit.to_string(),
            shape,
            source: source.to_string(),
            written: None,
            told_apart: String::new(),
            lot: Lot::of(id),
            moves: vec![Move::to(place)],
        });
    }
    fn parameter(&mut self, spec: &'static ParameterSpec) {
        if self.is_moved(spec.id) {
            return;
        }
        let case = self.case;
        let range = self.range_of(spec.id);
        if range.is_none()
            && let Some(why) = self.known(spec)
        {
            return self.keep(spec.id, why);
        }
        let moves = self.moves(spec);
        if moves.is_empty() {
            return self.keep(spec.id, "a word this scenario does not use");
        }
        let central = case.input.parameters.get(spec.id);
        let (shape, written) = match range {
            Some((shape, written)) => (shape, Some(written)),
            None => (spread::of(spec, central), None),
        };
        let usual = || spread::source(spec.id, &spec.source);
        let source = written.as_ref().map_or_else(usual, given);
        self.rows.push(Varied {
            name: spec.id.to_string(),
            words: spec.meaning.to_string(),
            unit: spec.unit.to_string(),
            shape,
            source,
            written,
            told_apart: String::new(),
            lot: Lot::of(spec.id),
            moves,
        });
    }
    /// Why a parameter is taken as known in this case; none when it is not.
    fn known(&self, spec: &ParameterSpec) -> Option<&'static str> {
        let (input, id) = (&self.case.input, spec.id);
        if matches!(input.parameters.origin(id), Origin::Given { .. }) {
            return Some("set by you, so taken as known");
        }
        if self.is_given(id) {
            return Some("given in the scenario, so taken as known");
        }
        if id == "Kd" && in_use::misses(input, id).is_none() {
            return Some("follows from C_p0 and q0, of which only ratio and total are known");
        }
        if input.seed_level <= 0.0 && ["XA0", "XN0", "XK0"].contains(&id) {
            return Some("no first films");
        }
        in_use::why_not(input, spec).filter(|_| !self.may_come.contains(&id))
    }
    /// Whether a plain value of the scenario, or one a word stands for, took the place of the parameter.
    fn is_given(&self, id: &str) -> bool {
        let by_word = matches!(self.case.input.parameters.origin(id), Origin::Word(_));
        let is_open = id == "lid"
            && self
                .case
                .resolved
                .iter()
                .any(|value| value.path == "tank.lid" && value.set_by == SetBy::Given);
        is_open || (by_word && !STORES.contains(&id))
    }
    /// Where the value of a parameter goes: into the parameter itself, or for a word where it is used.
    fn moves(&self, spec: &ParameterSpec) -> Vec<Move> {
        let unsure = self.case.unsure.iter();
        let of_it = unsure.filter(|unsure| unsure.parameter() == Some(spec.id));
        let mut moves: Vec<Move> = of_it.flat_map(|unsure| unsure.moves.clone()).collect();
        let medium = MEDIA.iter().position(|id| *id == spec.id);
        // what is brought in by a lever reads the parameter itself
        let medium = medium.filter(|_| in_use::misses(&self.case.input, spec.id).is_none());
        if let Some(guild) = medium {
            moves.push(Move {
                place: Place::Medium(guild),
                factor: 1.0 / self.case.input.parameters.get(spec.id),
            });
        } else if let Some(number) = parameters::index(spec.id).filter(|_| !is_word(spec.id)) {
            let own = Move::to(Place::Parameter(number));
            if !moves.contains(&own) {
                moves.push(own);
            }
        }
        moves
    }
}

/// Where a range of the scenario is from.
fn given(written: &Written) -> String {
    format!("given: {}", written.text)
}

/// Whether a parameter is what a word of the scenario stands for, and matters only where it is used.
fn is_word(id: &str) -> bool {
    const STEMS: [&str; 5] = ["I_", "k_600_", "w_", "melt_", "film_"];
    STEMS.iter().any(|stem| id.starts_with(stem)) || ["lid_closed", "d_bub"].contains(&id)
}
