//! One figure of all plans side by side, with who is best and who is worst in it.

use crate::analysis::figure_list::{Better, FIGURES, FigureOf};

use super::alike::Alike;
use super::strategy::Strategy;
use super::value::Value;
use crate::base::shown::three_digits;

/// One figure of all plans.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Name with unit, as in the tables.
    pub name: &'static str,
    /// Unit.
    pub unit: &'static str,
    /// What it is.
    pub what: &'static str,
    /// What it is in a few words.
    pub short: &'static str,
    /// Which way it is better.
    pub better: Better,
    /// Differences smaller than this are not told.
    pub told_from: f64,
    /// What each plan has of it.
    pub values: Vec<Value>,
    /// Whether two plans differ in it by no more than chance may make of the same tanks; empty where nothing
    /// is left to chance.
    pub alike: Alike,
}

/// Where a plan stands among the others.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// None is better, and some are worse.
    Best,
    /// None is worse, and some are better.
    Worst,
    /// Neither.
    Between,
}

/// Days are told by themselves for these shares, of 100.
pub const OF_100: [usize; 3] = [10, 50, 90];
const READY: [(&str, &str, &str); OF_100.len()] = [
    (
        "ready_10_of_100_day",
        "day by which 10 of 100 tanks are ready; empty when later than the last day",
        "ready day of 10 of 100",
    ),
    (
        "ready_50_of_100_day",
        "day by which 50 of 100 tanks are ready; empty when later than the last day",
        "ready day of 50 of 100",
    ),
    (
        "ready_90_of_100_day",
        "day by which 90 of 100 tanks are ready; empty when later than the last day",
        "ready day of 90 of 100",
    ),
];

/// Every figure of all plans: ready days, the figures of the members, visits and cost.
pub fn lines(strategies: &[Strategy<'_>]) -> Vec<Line> {
    let ready = (0..OF_100.len()).map(|place| ready(strategies, place));
    let figures = FIGURES.iter().map(|figure| of_figure(strategies, figure));
    let others = [visits(strategies), cost(strategies)];
    ready.chain(figures).chain(others).collect()
}

fn ready(strategies: &[Strategy<'_>], place: usize) -> Line {
    let (name, what, short) = READY[place];
    let day = |s: &Strategy<'_>| Value::of_day(s.curve.day_of(OF_100[place]));
    Line {
        name,
        unit: "day",
        what,
        short,
        better: Better::Less,
        told_from: 1.0,
        values: strategies.iter().map(day).collect(),
        alike: Alike::of_days(strategies),
    }
}

fn of_figure(strategies: &[Strategy<'_>], figure: &FigureOf) -> Line {
    let value = |s: &Strategy<'_>| Value::of(s.told().map(|told| (figure.read)(&told.figures)));
    Line {
        name: figure.name,
        unit: figure.unit,
        what: figure.what,
        short: figure.short,
        better: figure.better,
        told_from: figure.told_from,
        values: strategies.iter().map(value).collect(),
        alike: Alike::of(strategies, |_, told| (figure.read)(&told.figures)),
    }
}

fn visits(strategies: &[Strategy<'_>]) -> Line {
    let visits = |s: &Strategy<'_>| Value::One(f64::from(s.outcome.milestones.visits));
    Line {
        name: "visits",
        unit: "",
        what: "days on which somebody has to be there",
        short: "visits",
        better: Better::Less,
        told_from: 1.0,
        values: strategies.iter().map(visits).collect(),
        alike: Alike::default(),
    }
}

fn cost(strategies: &[Strategy<'_>]) -> Line {
    let cost = |s: &Strategy<'_>| Value::of(s.told().map(|told| s.cost(&told.figures)));
    Line {
        name: "cost",
        unit: "money",
        what: "waters, gas and dechlorinator at the prices of the file; what has no price is left out",
        short: "cost",
        better: Better::Less,
        told_from: 0.01,
        values: strategies.iter().map(cost).collect(),
        alike: Alike::of(strategies, |s, told| s.cost(&told.figures)),
    }
}

impl Line {
    /// Where a plan stands in it, by the middles; between where there is nothing to tell, where the difference may
    /// be chance, or where three figures do not show it.
    pub fn standing(&self, strategy: usize) -> Standing {
        self.standing_among(strategy, |one, other| self.beats(one, other))
    }
    /// The same where each plan's value is written as it is here: what is written alike is not told apart.
    pub fn standing_as(&self, strategy: usize, written: &[String]) -> Standing {
        let is_told = |one: usize, other: usize| written[one] != written[other];
        self.standing_among(strategy, |one, other| {
            is_told(one, other) && self.beats(one, other)
        })
    }
    fn standing_among(&self, strategy: usize, beats: impl Fn(usize, usize) -> bool) -> Standing {
        let others = 0..self.values.len();
        let beaten = others.clone().any(|other| beats(other, strategy));
        let winning = others.clone().any(|other| beats(strategy, other));
        match (beaten, winning) {
            (false, true) => Standing::Best,
            (true, false) => Standing::Worst,
            _ => Standing::Between,
        }
    }
    /// Whether no plan is told to be better than another.
    pub fn is_about_the_same(&self) -> bool {
        (0..self.values.len()).all(|place| self.standing(place) == Standing::Between)
    }
    fn beats(&self, one: usize, other: usize) -> bool {
        let [Some(own), Some(its)] = [one, other].map(|place| self.values[place].middle()) else {
            return false;
        };
        let more = match self.better {
            Better::More => own - its,
            Better::Less => its - own,
            Better::Neither => return false,
        };
        let is_shown = three_digits(own) != three_digits(its);
        more >= self.told_from && is_shown && !self.alike.are(one, other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(better: Better, middles: &[Value]) -> Line {
        Line {
            name: "made_up",
            unit: "",
            what: "",
            short: "made up",
            better,
            told_from: 0.1,
            values: middles.to_vec(),
            alike: Alike::default(),
        }
    }

    fn standings(line: &Line) -> Vec<Standing> {
        (0..line.values.len()).map(|n| line.standing(n)).collect()
    }

    #[test]
    fn the_best_is_beaten_by_none_and_small_differences_are_not_told() {
        use Standing::{Best, Between, Worst};
        let values = [
            Value::One(1.0),
            Value::One(1.05),
            Value::One(2.0),
            Value::Nothing,
        ];
        assert_eq!(
            standings(&line(Better::Less, &values)),
            [Best, Best, Worst, Between]
        );
        assert_eq!(
            standings(&line(Better::More, &values)),
            [Worst, Worst, Best, Between]
        );
        assert_eq!(standings(&line(Better::Neither, &values)), [Between; 4]);
        let alike = line(Better::Less, &[Value::One(1.0), Value::One(1.05)]);
        assert_eq!(standings(&alike), [Between, Between]);
    }

    #[test]
    fn what_is_written_alike_has_neither_best_nor_worst() {
        use Standing::{Best, Between, Worst};
        let values = [Value::One(12.26), Value::One(12.44), Value::One(12.64)];
        let made_up = line(Better::Less, &values);
        let as_written = |words: [&str; 3]| {
            let words = words.map(String::from);
            [0, 1, 2].map(|place| made_up.standing_as(place, &words))
        };
        // 12.3, 12.4 and 12.6 on the screen, 12, 12 and 13 on a chart
        assert_eq!(standings(&made_up), [Best, Between, Worst]);
        assert_eq!(as_written(["12", "12", "13"]), [Best, Best, Worst]);
        assert_eq!(as_written(["12", "12", "12"]), [Between; 3]);
        let close = [Value::One(1234.1), Value::One(1234.4)];
        assert_eq!(standings(&line(Better::Less, &close)), [Between; 2]);
    }

    #[test]
    fn what_may_be_chance_has_neither_best_nor_worst() {
        use Standing::{Best, Between, Worst};
        let values = [Value::One(1.0), Value::One(2.0), Value::One(3.0)];
        let mut made_up = line(Better::Less, &values);
        assert_eq!(standings(&made_up), [Best, Between, Worst]);
        // the first two may be alike: neither beats the other, both beat the third
        made_up.alike = Alike::pairs(&[(0, 1)]);
        assert_eq!(standings(&made_up), [Best, Best, Worst]);
        assert!(!made_up.is_about_the_same());
        made_up.alike = Alike::pairs(&[(0, 1), (1, 2), (0, 2)]);
        assert_eq!(standings(&made_up), [Between; 3]);
        assert!(made_up.is_about_the_same());
    }

    #[test]
    fn later_than_the_run_is_worse_than_any_day_and_as_bad_as_itself() {
        use Standing::{Best, Between, Worst};
        let values = [Value::Later, Value::One(56.0), Value::Later];
        assert_eq!(
            standings(&line(Better::Less, &values)),
            [Worst, Best, Worst]
        );
        let never = line(Better::Less, &[Value::Later, Value::Later]);
        assert_eq!(standings(&never), [Between, Between]);
    }
}
