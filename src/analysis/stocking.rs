//! The search for the ready day: candidate days, what stocking on each of them does, and what follows.
//!
//! Nothing is simulated here; whoever searches stocks the tank on the day the search asks for and tells it
//! what came of it.

use super::broken::Broken;
use super::ripening::Ripening;

/// How long the ripening limits must hold with the planned animals in, days (a judgement, no source: two
/// weeks show what a feed does to the films that must take it).
pub const DAYS_WITH_ANIMALS: u32 = 14;

/// What came of putting all planned animals in on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stocked {
    /// The ripening limit that was broken first, if any was.
    pub broke: Option<Ripening>,
    /// Running limits broken in the days after; of no meaning where a ripening limit was broken.
    pub running: Broken,
}

/// A search for the first day on which stocking does no harm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Search {
    next: Option<u32>,
    last_day: u32,
    found: Option<(u32, Broken)>,
    lost: Option<Ripening>,
}

impl Search {
    /// Begins at the first day from which the tank is ripe without animals. If that day is ripe, so is
    /// every later one: ripe means to the end.
    pub fn new(candidate: Option<u32>, last_day: u32) -> Self {
        Search {
            next: candidate,
            last_day,
            found: None,
            lost: None,
        }
    }
    /// The day on which the tank is to be stocked next; none when the search is over.
    pub fn day(&self) -> Option<u32> {
        self.next
    }
    /// Learns what came of it.
    pub fn learn(&mut self, stocked: Stocked) {
        let Some(day) = self.next.take() else {
            return;
        };
        match stocked.broke {
            None => self.found = Some((day, stocked.running)),
            Some(limit) => {
                self.lost = Some(limit);
                self.next = Some(day + 1).filter(|&next| next <= self.last_day);
            }
        }
    }
    /// The last day on which a tank may be stocked.
    pub fn last_day(&self) -> u32 {
        self.last_day
    }
    /// The ready day and the running limits broken after it, if there is one.
    pub fn found(&self) -> Option<(u32, Broken)> {
        self.found
    }
    /// The limit that the animals broke when they went in a day too early.
    pub fn lost(&self) -> Option<Ripening> {
        self.lost
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LAST: u32 = 10;

    /// Searches a made-up tank that breaks a limit when stocked before a day.
    fn search(candidate: Option<u32>, bears_from: u32) -> (Search, Vec<u32>) {
        let mut search = Search::new(candidate, LAST);
        let mut tried = Vec::new();
        while let Some(day) = search.day() {
            tried.push(day);
            search.learn(Stocked {
                broke: (day < bears_from).then_some(Ripening::Nitrite),
                running: Broken::default(),
            });
        }
        (search, tried)
    }

    fn day(search: &Search) -> Option<u32> {
        search.found().map(|(day, _)| day)
    }

    #[test]
    fn a_tank_that_bears_its_animals_at_once_is_ready_on_the_candidate_day() {
        let (search, tried) = search(Some(0), 0);
        assert_eq!((day(&search), search.lost()), (Some(0), None));
        assert_eq!(tried, [0], "a day that will do ends the search");
    }

    #[test]
    fn a_tank_that_loses_its_limits_with_animals_is_ready_a_day_later_and_so_on() {
        let (search, tried) = search(Some(4), 7);
        assert_eq!(day(&search), Some(7));
        assert_eq!(search.lost(), Some(Ripening::Nitrite));
        assert_eq!(tried, [4, 5, 6, 7]);
    }

    #[test]
    fn the_last_day_counts_and_no_later_one() {
        assert_eq!(day(&search(Some(LAST), 0).0), Some(LAST));
        let (never, tried) = search(Some(8), 99);
        assert_eq!((day(&never), tried.last()), (None, Some(&LAST)));
        assert_eq!(never.lost(), Some(Ripening::Nitrite));
    }

    #[test]
    fn a_tank_that_is_never_ripe_is_never_stocked() {
        let (never, tried) = search(None, 0);
        assert_eq!((day(&never), never.lost()), (None, None));
        assert!(tried.is_empty());
    }
}
