//! Title and sentence of the chart of a day, where many plausible tanks speak.

use crate::analysis::charted::OXYGEN;
use crate::analysis::ensemble::bands::Band;
use crate::analysis::ensemble::days::Of;

use super::day::Day;
use super::hundred::how_many_under;
use super::series::lowest;
use super::words::{number, trimmed};

impl Day<'_> {
    /// The lowest oxygen of the day over all members.
    fn lowest_of_many(&self) -> Option<&Band> {
        let bands = &self.story.forecast?.ensemble.bands;
        bands.of_day(self.day, OXYGEN, Of::Lowest)
    }
    /// The result, longest wording first; none without a forecast.
    pub fn titles_of_many(&self) -> Option<Vec<String>> {
        let [_, low, _, high, _] = self.lowest_of_many()?.map(|v| number(f64::from(v), 1));
        let day = self.story.calendar().day(self.day);
        let many = format!("50 of 100 plausible tanks fall to {low}–{high} mg/L oxygen");
        Some(vec![
            format!("D{}: {many}", &day[1..]),
            format!("Day {}: {many}", self.day),
        ])
    }
    /// What the picture would hide; none without a forecast.
    pub fn sentences_of_many(&self) -> Option<Vec<String>> {
        let band = self.lowest_of_many()?;
        let bound = self.story.case.limits.oxygen.value;
        let many = format!(
            "{} of 100 fall under the limit of {} mg/L, 90 lie between {} and {} at their lowest.",
            sentence_start(how_many_under(band, bound)),
            trimmed(bound),
            number(f64::from(band[0]), 1),
            number(f64::from(band[4]), 1)
        );
        let central = self.central_words();
        Some(vec![format!("{central} {many}"), many])
    }
    /// The lowest oxygen of the central run, and whether it is the lowest of all its days.
    fn central_words(&self) -> String {
        let Some(low) = lowest(&self.ends_of_steps, |r| r.oxygen_mg_per_l) else {
            return String::new();
        };
        let is_worst = self.story.day_of(self.story.milestones.oxygen_low.minute) == self.day;
        let kind = match (is_worst, self.story.lowest_is_at_night()) {
            (true, true) => "Worst night of the central run",
            (true, false) => "Lowest of the central run",
            (false, _) => "Central run",
        };
        let value = number(low.oxygen_mg_per_l, 1);
        format!("{kind}: {value} mg/L at {}.", self.time(low.minute))
    }
}

/// `fewer than 5` as the start of a sentence.
fn sentence_start(words: &str) -> String {
    words
        .replacen("fewer", "Fewer", 1)
        .replacen("more", "More", 1)
}
