//! Studies of plain functions instead of tanks: their inputs run evenly from 0 to 1.

use firstfill::analysis::study::findings::{Findings, Gathering};
use firstfill::analysis::study::group::Group;
use firstfill::analysis::study::input::{Input, Spread};
use firstfill::analysis::study::method::Method;
use firstfill::analysis::study::milestone::Milestone;
use firstfill::analysis::study::{Row, Study};

/// A study of so many inputs from 0 to 1, all of one group, that looks at one milestone.
pub fn study(inputs: usize, method: Method, members: usize, milestone: &str) -> Study {
    let input = |at: usize| Input {
        name: format!("x{}", at + 1),
        words: format!("the input with number {}", at + 1),
        unit: "1".into(),
        group: Group::Soil,
        source: "judgement: invented".into(),
        spread: Spread::Even {
            low: 0.0,
            high: 1.0,
        },
    };
    Study {
        inputs: (0..inputs).map(input).collect(),
        milestones: vec![Milestone::named(milestone).expect("a milestone")],
        method,
        members,
        seed: 1,
        last_day: 56,
        ready_by: 21,
    }
}

/// A row with what a function makes of its places.
pub fn row(number: u64, places: Vec<f64>, of: impl Fn(&[f64]) -> f64) -> Row {
    let outputs = Some(vec![of(&places)]);
    Row {
        number,
        places,
        outputs,
    }
}

/// What a study finds of a function.
pub fn findings(study: &Study, of: impl Fn(&[f64]) -> f64) -> Findings {
    let mut gathering = Gathering::new(study);
    for number in 0..study.rows() {
        gathering.take(&row(number, study.places(number), &of));
    }
    gathering.findings()
}
