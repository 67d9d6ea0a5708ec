//! Title and sentence of the chart of a day.

use crate::analysis::beyond::under;
use crate::base::clock::DAY;

use super::day::Day;
use super::day_hours::{minutes, range, rounded};
use super::series::{in_words, lowest};
use super::words::{list, number, short, span, trimmed};

impl Day<'_> {
    /// The result, longest wording first.
    pub fn titles(&self) -> Vec<String> {
        if let Some(titles) = self.titles_of_many() {
            return titles;
        }
        let (_, high) = range(&self.curve(|r| r.oxygen_mg_per_l));
        let Some(lowest) = lowest(&self.ends_of_steps, |r| r.oxygen_mg_per_l) else {
            return Vec::new();
        };
        let (day, low, high) = (
            self.story.calendar().day(self.day),
            number(lowest.oxygen_mg_per_l, 1),
            number(high, 1),
        );
        let time = self.time(lowest.minute);
        if self.story.day_of(self.story.milestones.oxygen_low.minute) == self.day {
            let kind = if self.story.lowest_is_at_night() {
                "The worst night"
            } else {
                "The lowest of all days"
            };
            return vec![
                format!("{kind}: oxygen falls to {low} mg/L at {time} on {day}"),
                format!("{kind}: oxygen falls to {low} mg/L at {time}"),
            ];
        }
        let day = format!("D{}", &day[1..]);
        vec![format!(
            "{day}: oxygen between {low} and {high} mg/L, lowest at {time}"
        )]
    }
    /// What the picture would hide.
    pub fn sentences(&self) -> Vec<String> {
        if let Some(sentences) = self.sentences_of_many() {
            return sentences;
        }
        let under = self.under_words();
        let lag = self.lag_words();
        vec![format!("{under} {lag}"), under]
    }
    /// How long oxygen is under its limit.
    pub fn under_words(&self) -> String {
        let bound = self.story.case.limits.oxygen.value;
        let under = under(&self.curve(|r| r.oxygen_mg_per_l), bound);
        let named: Vec<String> = under
            .iter()
            .map(|&(from, until)| in_words((rounded(from), rounded(until))))
            .collect();
        match named.len() {
            1 if minutes(&under) >= DAY - 5 => "Oxygen is under its limit all day.".to_string(),
            0 => format!("Oxygen stays over its limit of {} mg/L.", trimmed(bound)),
            1 | 2 => format!("Oxygen is under its limit from {}.", list(&named)),
            _ => format!(
                "Oxygen is under its limit for {} in all.",
                span(minutes(&under))
            ),
        }
    }
    /// How far the indicator trails the water when the lights go on.
    pub fn lag_words(&self) -> String {
        let lit = self.when(|r| r.light_umol_per_m2_s > 0.0);
        let on = lit.first().map(|s| self.day * DAY + s.0);
        let reading = on.and_then(|on| self.readings.iter().find(|r| r.minute == on));
        match reading {
            Some(r) => format!(
                "At lights-on the water holds {} mg/L CO₂ while the indicator shows {}.",
                short(r.co2_mg_per_l),
                short(r.indicator_co2_mg_per_l)
            ),
            None => "The lights stay off all day.".to_string(),
        }
    }
}
