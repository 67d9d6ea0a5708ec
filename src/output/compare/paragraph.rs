//! Why a plan wins or loses, as one paragraph made of what the runs computed; nothing in it is canned.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::lines::Line;
use crate::analysis::compare::nitrogen::{Nitrogen, Sink};
use crate::analysis::compare::versus::Versus;
use crate::analysis::compare::why::{Slowed, Waited, Why};
use crate::analysis::ready::{Ripening, Waiting};
use crate::output::text::words::{list, short};
use crate::output::waiting::waited_words;

use super::capacity_words;

/// Shares of the nitrogen that are told: at least so much of all, and so many of them.
const TOLD_FRAC: f64 = 0.05;
const TOLD: usize = 3;
/// The slowest nitrite oxidisers are told when they are slower than this share of full speed, or when the two
/// plans are so far apart.
const SLOW_FRAC: f64 = 0.5;
const APART_FRAC: f64 = 0.1;
/// Milligrams of a gram.
const MG_PER_G: f64 = 1000.0;
/// Figures named one by one.
const NAMED: usize = 6;

/// The paragraph of one plan; none where there is nothing to hold it against.
pub fn paragraph(comparison: &Comparison<'_>, place: usize) -> Option<String> {
    let why = Why::of(comparison, place)?;
    let mut told = vec![days(comparison, why.versus)];
    told.extend(sentences(comparison, &why));
    told.extend(standing(comparison, &why));
    Some(told.join(" "))
}

/// The same without the days gained and where it is best and worst, which a table tells.
pub fn reasons(comparison: &Comparison<'_>, place: usize) -> Option<String> {
    let why = Why::of(comparison, place)?;
    let told = sentences(comparison, &why);
    match told.is_empty() {
        true => Some(days(comparison, why.versus)),
        false => Some(told.join(" ")),
    }
}

/// What decides first: mature medium, who keeps up, the limit that was last, alkalinity, and where the nitrogen went.
fn sentences(comparison: &Comparison<'_>, why: &Why<'_>) -> Vec<String> {
    let able = capacity_words::able(&why.capacity);
    let (first, later) = match capacity_words::decides(&why.capacity) {
        true => (able, None),
        false => (None, able),
    };
    let sentences = [
        capacity_words::seeds(&why.capacity),
        first,
        waited(comparison, why),
        why.slowed.and_then(slowed),
        later,
        why.nitrogen.as_ref().and_then(nitrogen),
    ];
    sentences.into_iter().flatten().collect()
}

/// The plan that a paragraph calls *there*.
pub fn reference(comparison: &Comparison<'_>, place: usize) -> Option<usize> {
    Some(Why::of(comparison, place)?.versus.against)
}

fn days(comparison: &Comparison<'_>, versus: &Versus) -> String {
    let other = &comparison.strategies[versus.against].key;
    let counts = counts(comparison, versus);
    if versus.is_never() {
        let last_day = comparison.last_day;
        return format!("Not ready by day {last_day} in any tank, and neither is {other}.");
    }
    if versus.is_same() {
        return format!("No tank is ready sooner or later than with {other}: {counts}.");
    }
    let gained = gained(versus);
    match versus.paired.is_clear() {
        true => format!("Ready {gained} than {other}, tank by tank: {counts}."),
        false => format!("By its ready day not to be told from {other} ({gained}): {counts}."),
    }
}

/// `3.1 ± 0.4 days sooner`.
pub fn gained(versus: &Versus) -> String {
    let days = &versus.paired;
    let way = if days.mean_days < 0.0 {
        "later"
    } else {
        "sooner"
    };
    format!(
        "{:.1} ± {:.1} days {way}",
        days.mean_days.abs(),
        days.standard_error_days
    )
}

fn counts(comparison: &Comparison<'_>, versus: &Versus) -> String {
    let of_100 = |count: usize| format!("{:.0}", versus.of_100(count));
    let told = [
        (
            versus.before,
            format!("before it in {} of 100", of_100(versus.before)),
        ),
        (
            versus.after,
            format!("after it in {}", of_100(versus.after)),
        ),
        (
            versus.same_day,
            format!("on the same day in {}", of_100(versus.same_day)),
        ),
        (
            versus.neither,
            format!(
                "neither way by day {} in {}",
                comparison.last_day,
                of_100(versus.neither)
            ),
        ),
    ];
    let told = told.into_iter().enumerate();
    let told = told.filter(|(place, (count, _))| *place == 0 || *count > 0);
    list(&told.map(|(_, (_, words))| words).collect::<Vec<_>>())
}

fn waited(comparison: &Comparison<'_>, why: &Why<'_>) -> Option<String> {
    let words = |waited: &Waited| {
        let what = waited.waiting.map_or("nothing", waited_words);
        let (here, there) = (waited.of_100, waited.there_of_100);
        format!("{what} in {here:.0} of 100 ({there:.0} there)")
    };
    let told: Vec<String> = why.waited.iter().map(words).collect();
    let first = why.waited.first()?;
    let hours = first.waiting.and_then(hours_of);
    let hours = hours.and_then(|name| hours_over(comparison, why.versus, name));
    Some(format!(
        "Last to come right was {}{}.",
        list(&told),
        hours.unwrap_or_default()
    ))
}

/// The figure that counts the hours beyond a limit.
fn hours_of(waiting: Waiting) -> Option<&'static str> {
    match waiting {
        Waiting::Capacity(_) => None,
        Waiting::Limit(limit) | Waiting::WithAnimals(limit) => Some(match limit {
            Ripening::Nitrite => "nitrite_over_limit_h",
            Ripening::TotalAmmonia => "tan_over_limit_h",
            Ripening::FreeAmmonia => "free_ammonia_over_limit_h",
        }),
    }
}

fn hours_over(comparison: &Comparison<'_>, versus: &Versus, name: &str) -> Option<String> {
    let line = comparison.lines.iter().find(|line| line.name == name)?;
    if line.alike.are(versus.of, versus.against) {
        return None; // hours that may be chance are no reason
    }
    let middle = |place: usize| line.values[place].middle().map(short);
    let (here, there) = (middle(versus.of)?, middle(versus.against)?);
    Some(format!("; {} for {here} h ({there} h there)", line.short))
}

fn slowed([here, there]: [Slowed; 2]) -> Option<String> {
    let apart = (here.slowest_frac - there.slowest_frac).abs() >= APART_FRAC;
    if here.slowest_frac >= SLOW_FRAC && !apart {
        return None;
    }
    let words = |slowed: Slowed| {
        let percent = 100.0 * slowed.slowest_frac;
        (
            format!("{percent:.0} %"),
            format!("{} dKH", short(slowed.lowest_dkh)),
        )
    };
    let ((speed, kh), (speed_there, kh_there)) = (words(here), words(there));
    Some(format!(
        "In the central run nitrite oxidisers slow down to {speed} of full speed ({speed_there} there), KH sinks to \
         {kh} ({kh_there})."
    ))
}

fn nitrogen([here, there]: &[Nitrogen; 2]) -> Option<String> {
    let shares = here.shares().into_iter();
    let told = shares.filter(|(_, share)| *share >= TOLD_FRAC).take(TOLD);
    let words = |(sink, share): (Sink, f64)| {
        let (own, other) = (100.0 * share, 100.0 * there.share(sink));
        format!("{own:.0} % {} ({other:.0} % there)", sink_words(sink))
    };
    let told: Vec<String> = told.map(words).collect();
    let given = [here, there].map(|one| grams(one.given_mg()));
    let [given, given_there] = given;
    (!told.is_empty()).then(|| {
        format!(
            "Of {given} of nitrogen given ({given_there} there) {}.",
            told.join(", ")
        )
    })
}

/// Milligrams as grams.
fn grams(mg: f64) -> String {
    format!("{} g", short(mg / MG_PER_G))
}

fn sink_words(sink: Sink) -> &'static str {
    match sink {
        Sink::Changes => "left with changed water",
        Sink::Care => "was cut or siphoned away",
        Sink::Gas => "left as gas",
        Sink::Plants => "went into plants and algae",
        Sink::Detritus => "went into detritus and microbes",
        Sink::Water => "is in the water",
    }
}

fn standing(comparison: &Comparison<'_>, why: &Why<'_>) -> Option<String> {
    let [best, worst] = match comparison.strategies.len() {
        2 => ["Better in", "worse in"],
        _ => ["Best in", "worst in"],
    };
    let words = match (named(&why.best_in), named(&why.worst_in)) {
        (None, None) => return None,
        (Some(good), None) => format!("{best} {good}."),
        (None, Some(bad)) => format!("{} {bad}.", worst.replacen('w', "W", 1)),
        (Some(good), Some(bad)) => format!("{best} {good}; {worst} {bad}."),
    };
    Some(words)
}

/// The figures by name, the first few of many.
pub fn named(lines: &[&Line]) -> Option<String> {
    let names = lines.iter().take(NAMED).map(|line| line.short.to_string());
    let mut names: Vec<String> = names.collect();
    if lines.len() > NAMED {
        names.push(format!("{} more", lines.len() - NAMED));
    }
    (!names.is_empty()).then(|| list(&names))
}
