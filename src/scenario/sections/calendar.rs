//! `[calendar]`: on which days water could be changed, how much at once, and what must hold.

use jiff::civil::Weekday;

use crate::analysis::calendar::wish::CalendarWish;
use crate::base::units::everyday;
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::Reader;
use crate::scenario::timer;

/// Most sizes of a change.
const MOST_SIZES: i64 = 4;

/// Reads `[calendar]`, for a tank that holds so much water when full; none where the file has none.
pub fn read(file: &Reader<'_>, draft: &Draft<'_>, volume_l: f64) -> Option<CalendarWish> {
    let section = file.section("calendar");
    if !section.is_there() {
        return None;
    }
    let most_share = section.quantity_or_default("most_share", &everyday::SHARE, (0.05, 1.0));
    let most_l = section.quantity("most_litres", &everyday::VOLUME, (0.1, 10_000.0));
    let sizes = section.count_or_default("sizes", (1, MOST_SIZES));
    let most = most_l
        .value()
        .map_or(most_share, |litres| most_share.min(litres / volume_l));
    let wish = CalendarWish {
        free_days: free_days(&section, draft),
        minute: time(&section, draft),
        shares: (1..=sizes)
            .map(|size| most * f64::from(size) / f64::from(sizes))
            .collect(),
        keep_of_100: section
            .count("keep", (1, 100))
            .value()
            .map(|keep| keep as usize),
        ready_by: ready_by(&section, draft),
        peak_tan_mg_n_per_l: peak(&section, "peak_tan", &everyday::AMMONIA),
        peak_nitrite_mg_n_per_l: peak(&section, "peak_nitrite", &everyday::NITRITE),
    };
    section.close();
    Some(wish)
}

fn peak(
    section: &Reader<'_>,
    key: &'static str,
    kind: &'static crate::base::units::Kind,
) -> Option<f64> {
    section.quantity(key, kind, (0.001, 1000.0)).value()
}

/// Days of the run but the first, on the given weekdays, while somebody is there.
fn free_days(section: &Reader<'_>, draft: &Draft<'_>) -> Vec<u32> {
    let calendar = &draft.calendar;
    let weekdays: Option<Vec<Weekday>> = match section.wanted("free") {
        Some(entry) => {
            let path = section.path_of("free");
            let days = calendar.weekdays(section.desk, &path, &entry.node);
            section.given("free", &entry.node);
            days
        }
        None => {
            section.note_default("free");
            None
        }
    };
    let is_free = |day: &u32| match (&weekdays, calendar.weekday(*day)) {
        (Some(free), Some(weekday)) => free.contains(&weekday),
        (Some(_), None) => false,
        (None, _) => true,
    };
    let days = 1..=calendar.last_day;
    let free: Vec<u32> = days
        .filter(|day| !draft.is_away(*day) && is_free(day))
        .collect();
    // weekdays that could not be read have been told already
    let is_known = weekdays.is_some() && free.is_empty();
    if let (true, Some(entry)) = (is_known, section.wanted("free")) {
        section.desk.problem(
            Problem::at(&entry.node.place, "no day is free to change water on")
                .help("name more weekdays, or look at changes.away"),
        );
    }
    free
}

fn time(section: &Reader<'_>, draft: &Draft<'_>) -> u32 {
    let Some(entry) = section.wanted("time") else {
        section.note_default("time");
        return draft.usual_time;
    };
    let minutes = timer::time_of_day(section.desk, &section.path_of("time"), &entry.node);
    section.given("time", &entry.node);
    minutes.unwrap_or(draft.usual_time)
}

fn ready_by(section: &Reader<'_>, draft: &Draft<'_>) -> Option<u32> {
    let entry = section.wanted("ready_by")?;
    let path = section.path_of("ready_by");
    let day = (draft.calendar).day(section.desk, &path, &entry.node)?;
    section.given("ready_by", &entry.node);
    Some(day)
}
