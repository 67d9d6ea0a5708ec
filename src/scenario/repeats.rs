//! On which days, and at what time, an entry happens.
//!
//! `day` or `days` say where; `every` counts from the first of `days`; `on` means those weekdays
//! inside `days`. An entry that repeats by a rule and reaches the last day goes on by that rule
//! through the look-ahead.

use crate::engine::input::again_beyond;

use super::calendar::{Calendar, LOOKAHEAD_DAYS, Span};
use super::draft::Draft;
use super::problem::Problem;
use super::reader::{Read, Reader};
use super::timer;

/// When an entry happens.
#[derive(Debug, Clone)]
pub struct When {
    /// Days, look-ahead included, in order.
    pub days: Vec<u32>,
    /// Time of day, minutes since midnight.
    pub time: u32,
    /// Whether several days are named one by one, not by a rule.
    is_listed: bool,
}

impl When {
    /// The same, and where days are named one by one, those of the last weeks again in the look-ahead.
    #[must_use]
    pub fn and_again_beyond(mut self, calendar: &Calendar) -> When {
        let again = |&day: &u32| again_beyond(day, calendar.last_day, LOOKAHEAD_DAYS);
        if self.is_listed {
            let again: Vec<u32> = self.days.iter().filter_map(again).collect();
            self.days.extend(again);
        }
        self
    }
}

/// How an entry repeats inside its days.
enum Rule {
    /// Every so many days.
    Every(u32),
    /// On these weekdays.
    On(Vec<jiff::civil::Weekday>),
    /// On each day that is listed.
    Listed,
}

/// Reads `day`, `days`, `every`, `on` and `time` of an entry.
pub fn when(reader: &Reader<'_>, draft: &Draft<'_>) -> Option<When> {
    let spans = spans(reader, &draft.calendar);
    let rule = rule(reader, &draft.calendar, spans.as_deref());
    let own_time = time(reader, draft);
    let (spans, rule) = (spans?, rule?);
    let days = days(&spans, &rule, &draft.calendar);
    if days.is_empty() {
        nothing_happens(reader, &spans);
        return None;
    }
    Some(When {
        time: at(reader, draft, &own_time, days[0], draft.usual_time)?,
        is_listed: matches!(rule, Rule::Listed) && reader.wanted("days").is_some(),
        days,
    })
}

/// The time of an event on a day: its own, else the usual one; never before the filling.
pub fn at(
    reader: &Reader<'_>,
    draft: &Draft<'_>,
    own: &Read<u32>,
    first_day: u32,
    usual_time: u32,
) -> Option<u32> {
    let filled_at = draft.calendar.filled_at;
    match own {
        Read::Given(time, place) if first_day == 0 && *time < filled_at => {
            reader.desk.problem(
                Problem::at(
                    place,
                    format!("{} happens before the tank is full", reader.path),
                )
                .label(format!(
                    "on day 0 the tank is full at {}",
                    crate::base::clock::TimeOfDay(filled_at)
                ))
                .help("choose a later time, or day 1"),
            );
            None
        }
        Read::Given(time, _) => Some(*time),
        Read::Bad(_) => None,
        Read::Absent if first_day == 0 => Some(usual_time.max(filled_at)),
        Read::Absent => Some(usual_time),
    }
}

/// Reads `time`.
pub fn time(reader: &Reader<'_>, draft: &Draft<'_>) -> Read<u32> {
    let Some(entry) = reader.wanted("time") else {
        return Read::Absent;
    };
    match timer::time_of_day(draft.desk, &reader.path_of("time"), &entry.node) {
        Some(minutes) => {
            reader.given("time", &entry.node);
            Read::Given(minutes, entry.node.place.clone())
        }
        None => Read::Bad(entry.node.place.clone()),
    }
}

/// Reads `day` of an entry that happens once; an absent one is told if it has no stand-in.
pub fn one_day(reader: &Reader<'_>, calendar: &Calendar, stand_in: Option<u32>) -> Option<u32> {
    match reader.wanted("day") {
        Some(entry) => {
            let day = calendar.day(reader.desk, &reader.path_of("day"), &entry.node)?;
            reader.given("day", &entry.node);
            Some(day)
        }
        None => {
            if stand_in.is_none() {
                reader.missing("day");
            }
            stand_in
        }
    }
}

fn spans(reader: &Reader<'_>, calendar: &Calendar) -> Option<Vec<Span>> {
    let (day, days) = (reader.wanted("day"), reader.wanted("days"));
    match (day, days) {
        (None, None) => {
            reader.missing("days");
            None
        }
        (Some(day), Some(days)) => {
            reader.desk.problem(
                Problem::at(
                    &days.key_place,
                    format!("{} has both day and days", reader.path),
                )
                .label("one of the two")
                .also(&day.key_place, "and here"),
            );
            None
        }
        (Some(entry), None) => {
            let path = reader.path_of("day");
            let day = calendar.day(reader.desk, &path, &entry.node)?;
            reader.given("day", &entry.node);
            Some(vec![Span {
                first: day,
                last: day,
                is_range: false,
                place: entry.node.place.clone(),
            }])
        }
        (None, Some(entry)) => {
            let spans = calendar.spans(reader.desk, &reader.path_of("days"), &entry.node)?;
            reader.given("days", &entry.node);
            Some(spans)
        }
    }
}

fn rule(reader: &Reader<'_>, calendar: &Calendar, spans: Option<&[Span]>) -> Option<Rule> {
    let (every, on) = (reader.wanted("every"), reader.wanted("on"));
    if let (Some(every), Some(on)) = (every, on) {
        reader.desk.problem(
            Problem::at(
                &on.key_place,
                format!("{} has both every and on", reader.path),
            )
            .label("weekdays")
            .also(&every.key_place, "and a count of days")
            .help("keep one of the two; if the other is inherited, take it out with every = \"none\" or on = \"none\""),
        );
        return None;
    }
    if let Some(on) = on {
        let days = calendar.weekdays(reader.desk, &reader.path_of("on"), &on.node)?;
        reader.given("on", &on.node);
        return Some(Rule::On(days));
    }
    if every.is_some() {
        return reader.count("every", (1, 366)).value().map(Rule::Every);
    }
    let range = spans?
        .iter()
        .find(|span| span.is_range && span.last > span.first);
    match range {
        Some(range) => {
            reader.desk.problem(
                Problem::at(
                    &range.place,
                    format!("{} does not say how often", reader.path),
                )
                .label("a range of days")
                .help("add every = 1 for each day, every = 7 for once a week, or on = [\"Sun\"]"),
            );
            None
        }
        None => Some(Rule::Listed),
    }
}

/// All days of an entry, in order, look-ahead included.
fn days(spans: &[Span], rule: &Rule, calendar: &Calendar) -> Vec<u32> {
    let mut days: Vec<u32> = spans
        .iter()
        .flat_map(|span| days_of(span, rule, calendar))
        .collect();
    days.sort_unstable();
    days.dedup();
    days
}

fn days_of(span: &Span, rule: &Rule, calendar: &Calendar) -> Vec<u32> {
    let has_rule = !matches!(rule, Rule::Listed);
    let goes_on = has_rule && span.is_range && span.last >= calendar.last_day;
    let last = if goes_on {
        calendar.final_day()
    } else {
        span.last.min(calendar.last_day)
    };
    (span.first..=last)
        .filter(|&day| match rule {
            Rule::Every(step) => (day - span.first).is_multiple_of(*step),
            Rule::On(weekdays) => calendar
                .weekday(day)
                .is_some_and(|weekday| weekdays.contains(&weekday)),
            Rule::Listed => true,
        })
        .collect()
}

fn nothing_happens(reader: &Reader<'_>, spans: &[Span]) {
    let place = spans
        .first()
        .map(|span| &span.place)
        .or(reader.place.as_ref());
    if let Some(place) = place {
        reader.desk.problem(
            Problem::at(place, format!("{} never happens", reader.path))
                .label("none of the weekdays lies in these days"),
        );
    }
}
