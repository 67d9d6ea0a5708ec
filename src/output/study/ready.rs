//! What the tanks that are ready by a day have in common, in words: how many they are, and the inputs that differ most
//! between them and the others.

use crate::analysis::study::findings::regions::{Apart, Regions};
use crate::analysis::study::input::{Input, Spread};
use crate::base::shown::grouped;

use super::Story;
use super::numbers::told_apart;
use super::words::{full_name, of_100, share, with_unit};

/// Most inputs that are named.
const NAMED: usize = 3;

/// How many are ready by the day, and what sets them apart; none where all are, or none is.
pub fn in_common(story: &Story<'_>) -> Option<String> {
    let regions = story.findings.regions.as_ref()?;
    let how_many = how_many(regions);
    let clear: Vec<&Apart> = regions.clear().collect();
    if clear.is_empty() {
        return Some(format!(
            "{how_many}; no input sets them apart from the others by more than chance"
        ));
    }
    let by = regions.by_day;
    let named: Vec<String> = clear
        .iter()
        .take(NAMED)
        .map(|apart| side(story, apart))
        .collect();
    let more = match clear.len().saturating_sub(NAMED) {
        0 => String::new(),
        more => format!("; {more} more differ by more than chance"),
    };
    Some(format!(
        "{how_many}. Of those ready by day {by}, {}{more}",
        named.join("; ")
    ))
}

/// `of 20,000 runs 31 of 100 are ready by day 21, without animals`.
pub fn how_many(regions: &Regions) -> String {
    let [ready, others] = regions.rows;
    let all = ready + others;
    let share = of_100(ready as f64 / all as f64);
    let by = regions.by_day;
    format!(
        "of {} runs {share} are ready by day {by}, without animals",
        grouped(all)
    )
}

/// `78 of 100 are seeded-with-mature-sponge, of the others 12`; of a quantity both middles.
fn side(story: &Story<'_>, apart: &Apart) -> String {
    let input = &story.study.inputs[apart.input];
    let name = full_name(&story.findings.factors[apart.input]);
    if let Spread::Settings(settings) = &input.spread {
        let (at, [ready, others]) = most_apart(apart);
        let setting = settings.get(at).map_or("", String::as_str);
        let others = share(others).replace(" %", "");
        let what = match is_scenario(input) {
            true => format!("are {setting}"),
            false => format!("have {setting} as {name}"),
        };
        return format!("{} {what}, of the others {others}", of_100(ready));
    }
    let [ready, others] = told_apart(middles(apart, input));
    let ready = with_unit(input, &ready);
    format!("the middle of {name} is {ready}, of the others {others}")
}

/// Whether an input is the scenario itself, whose settings are tanks.
pub fn is_scenario(input: &Input) -> bool {
    input.name == "scenario"
}

/// The middles of the tanks that are ready and of the others, as the keeper would say them.
pub fn middles(apart: &Apart, input: &Input) -> [f64; 2] {
    [apart.region.meeting, apart.region.others].map(|quarters| input.shown(quarters[1]))
}

/// The setting whose shares differ most, and these.
pub fn most_apart(apart: &Apart) -> (usize, [f64; 2]) {
    let [ready, others] = &apart.shares;
    let both = ready
        .iter()
        .zip(others)
        .map(|(ready, others)| [*ready, *others])
        .enumerate();
    let by = |shares: [f64; 2]| (shares[0] - shares[1]).abs();
    both.max_by(|a, b| by(a.1).total_cmp(&by(b.1)))
        .unwrap_or((0, [0.0; 2]))
}
