//! `[plants]`: what stands where, how dense, how it was grown, when it goes in.

use crate::analysis::uncertain::moves::{Move, Place as To};
use crate::analysis::uncertain::unsure::Known;
use crate::base::clock::DAY;
use crate::base::units::{digits, everyday};
use crate::engine::event::EventKind;
use crate::model::group::{GROUPS, Group};
use crate::model::parameters;
use crate::model::pool::MAX_STANDS;
use crate::model::setup::StandPlan;
use crate::scenario::draft::Draft;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::reader::{Read, Reader, Said};
use crate::scenario::repeats;
use crate::scenario::words::list_or;

const DENSITIES: [&str; 3] = ["sparse", "normal", "dense"];
const GROWN: [&str; 3] = ["under water", "tissue culture", "out of water"];

/// A planting with the place where it is written.
struct Planting {
    plan: StandPlan,
    place: Place,
    cover: Said,
    density: Said,
    /// The parameter that says how much of it is shed.
    melts_by: Option<&'static str>,
}

/// Reads `[plants]`; the plantings come back in a fixed order, whatever the order in the file.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>) -> Vec<StandPlan> {
    let section = file.section("plants");
    let entries = section.named("NAME");
    let count = entries.len();
    let mut plantings: Vec<Planting> = entries
        .iter()
        .filter_map(|entry| planting(entry, draft))
        .collect();
    plantings.sort_by(|a, b| (a.plan.group, &a.plan.name).cmp(&(b.plan.group, &b.plan.name)));
    if plantings.len() == count {
        covers(draft, &plantings);
    }
    too_many(draft, &plantings);
    tell(draft, &plantings);
    for (stand, planting) in plantings.iter().enumerate() {
        let plan = &planting.plan;
        let (day, time) = (plan.planted_at / DAY, plan.planted_at % DAY);
        let name = format!("plants.{}", plan.name);
        planting.tell_moves(draft, stand, &name);
        draft.mind_absence(&name, day);
        if day < draft.dark_days {
            let (name, first) = (&name, draft.dark_days);
            draft.desk.notice(format!(
                "{name} goes in on day {day}, in the dark: light begins on day {first}"
            ));
        }
        draft.happen(&name, day, time, EventKind::Plant { stand });
    }
    plantings
        .into_iter()
        .map(|planting| planting.plan)
        .collect()
}

impl Planting {
    /// Notes what moves with what is not known of a planting.
    fn tell_moves(&self, draft: &Draft<'_>, stand: usize, name: &str) {
        self.cover.moves(draft.desk, To::Cover(stand));
        self.density.moves(draft.desk, To::Density(stand));
        if let Some(id) = self.melts_by {
            let path = format!("{name}.grown");
            draft.desk.word(path, id, Move::to(To::Melt(stand)));
        }
    }
}

fn planting(entry: &Reader<'_>, draft: &Draft<'_>) -> Option<Planting> {
    let group = group(entry);
    let cover = entry.said("cover", &everyday::SHARE, (0.001, 1.0));
    if cover.is_absent() {
        entry.missing("cover");
    }
    let density = density(entry, draft, group);
    let grown = GROWN[entry.choice_or_default("grown", &GROWN)];
    let uses_bicarbonate = entry.truth_or_default("bicarbonate");
    let planted_at = planted_at(entry, draft);
    entry.close();
    let group = group?;
    let melts_by = match grown {
        "under water" => None,
        "tissue culture" => declared("melt_tissue"),
        _ => declared(&group.id("melt")),
    };
    let (cover, density) = (cover.value()?, density?);
    Some(Planting {
        place: entry.place.clone()?,
        cover,
        density,
        melts_by,
        plan: StandPlan {
            name: entry.path.rsplit('.').next()?.to_string(),
            group,
            cover_frac: cover.value,
            density_g_per_m2: density.value,
            melt_frac: melts_by.map_or(0.0, |id| draft.parameters.get(id)),
            acclimates: grown != "under water",
            uses_bicarbonate,
            planted_at: planted_at?,
        },
    })
}

fn group(entry: &Reader<'_>) -> Option<Group> {
    let words = GROUPS.map(Group::word);
    let name = entry.path.rsplit('.').next().unwrap_or("");
    match entry.choice("group", &words) {
        Read::Given(at, _) => Some(GROUPS[at]),
        Read::Bad(_) => None,
        Read::Absent => {
            let named = GROUPS
                .iter()
                .find(|group| group.word() == name || group.suffix() == name);
            if named.is_none()
                && let Some(place) = &entry.place
            {
                entry.desk.problem(
                    Problem::at(place, format!("{} does not say its group", entry.path))
                        .label(format!("\"{name}\" is no group"))
                        .help(format!(
                            "add group = {}",
                            list_or(&words.map(|word| format!("\"{word}\"")))
                        )),
                );
            }
            named.copied()
        }
    }
}

/// An id as its declaration has it.
fn declared(id: &str) -> Option<&'static str> {
    parameters::spec(id).map(|spec| spec.id)
}

/// A word, or dry weight per area, g/m².
fn density(entry: &Reader<'_>, draft: &Draft<'_>, group: Option<Group>) -> Option<Said> {
    let print = |value: f64| everyday::DENSITY.print(value);
    // without a group the words are still looked at, for the mistakes in them
    let of = group.unwrap_or(Group::Stems);
    let id = |word: &str| of.id(&format!("w_{word}"));
    let by_word = |word: &str| {
        let id = declared(&id(word))?;
        let unsure = draft.desk.unsure(entry.path_of("density"), Known::Word(id));
        Some(Said::unsure(draft.parameter(id), unsure))
    };
    if entry.is_word("density") {
        let value = |word: &str| draft.parameter(&id(word));
        let word = entry.word_of("density", &DENSITIES, value, print).value();
        group?;
        return by_word(DENSITIES[word?]);
    }
    let read = entry.said("density", &everyday::DENSITY, (0.1, 2000.0));
    group?;
    if !read.is_absent() {
        return read.value();
    }
    let usual = by_word("normal")?;
    entry.assumed("density", print(usual.value), "normal");
    Some(usual)
}

/// Planting day and time as minutes since midnight of day 0.
fn planted_at(entry: &Reader<'_>, draft: &Draft<'_>) -> Option<u32> {
    let own = repeats::time(entry, draft);
    let day = repeats::one_day(entry, &draft.calendar, Some(draft.dark_days))?;
    if entry.wanted("day").is_none() {
        entry.assumed(
            "day",
            day.to_string(),
            "at filling, or after the dark start",
        );
    }
    let time = match own {
        Read::Absent if day == 0 => draft.calendar.filled_at,
        _ => repeats::at(entry, draft, &own, day, draft.usual_time)?,
    };
    Some(draft.calendar.minute(day, time))
}

fn covers(draft: &Draft<'_>, plantings: &[Planting]) {
    let sum: f64 = plantings.iter().map(|p| p.plan.cover_frac).sum();
    if sum <= 1.0 + 1e-9 {
        return;
    }
    let Some(last) = plantings.iter().max_by_key(|p| p.place.start) else {
        return;
    };
    let mut problem = Problem::at(
        &last.place,
        format!("the plants cover {:.0} % of the bed", 100.0 * sum),
    )
    .label("the covers may add up to 100 %")
    .help("each planting stands on its own patch; what is left is bare soil");
    for other in plantings.iter().filter(|p| p.place != last.place) {
        let share = format!("{} %", digits(100.0 * other.plan.cover_frac));
        problem = problem.also(&other.place, share);
    }
    draft.desk.problem(problem);
}

fn too_many(draft: &Draft<'_>, plantings: &[Planting]) {
    if let Some(extra) = plantings.get(MAX_STANDS) {
        draft.desk.problem(
            Problem::at(
                &extra.place,
                format!("there are {} plantings", plantings.len()),
            )
            .label(format!("at most {MAX_STANDS}"))
            .help("put plants of one group together"),
        );
    }
}

fn tell(draft: &mut Draft<'_>, plantings: &[Planting]) {
    let parts: Vec<String> = plantings
        .iter()
        .map(|p| format!("{} {} %", p.plan.name, digits(100.0 * p.plan.cover_frac)))
        .collect();
    let words = if parts.is_empty() {
        "none".to_string()
    } else {
        parts.join(", ")
    };
    draft.fact("Plants", words);
}
