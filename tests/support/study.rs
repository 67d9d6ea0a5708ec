//! Studies of plain functions instead of tanks: their inputs run evenly from 0 to 1.

use firstfill::analysis::study::findings::{Findings, Gathering};
use firstfill::analysis::study::group::Group;
use firstfill::analysis::study::input::{Input, Spread};
use firstfill::analysis::study::method::Method;
use firstfill::analysis::study::milestone::Milestone;
use firstfill::analysis::study::{Row, Study};
use firstfill::analysis::uncertain::shape::Shape;
use firstfill::model::parameters;

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
        shown: None,
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

/// Inputs as a study of a planted tank has them: name, group, spread.
const LIKE_A_TANK: [(&str, Group, [f64; 3]); 24] = [
    ("mu_NOB", Group::Microbes, [0.5, 0.8, 1.1]),
    ("seed.level", Group::Microbes, [0.1, 1.0, 10.0]),
    ("mu_AOB", Group::Microbes, [0.7, 0.8, 1.1]),
    ("q0", Group::Soil, [40.0, 90.0, 250.0]),
    ("k_ex", Group::Soil, [0.022, 0.047, 0.1]),
    ("P0", Group::Soil, [5.0, 10.0, 20.0]),
    ("N_o0", Group::Soil, [500.0, 900.0, 1500.0]),
    ("k_min", Group::Soil, [0.001, 0.002, 0.004]),
    ("b_AOB", Group::Microbes, [0.1, 0.15, 0.2]),
    ("b_NOB", Group::Microbes, [0.1, 0.15, 0.2]),
    ("Y_AOB", Group::Microbes, [0.11, 0.15, 0.21]),
    ("Y_NOB", Group::Microbes, [0.03, 0.05, 0.09]),
    ("K_NH", Group::Microbes, [0.3, 0.6, 1.2]),
    ("K_NO2", Group::Microbes, [0.2, 0.5, 1.2]),
    ("K_O_NOB", Group::Gas, [0.4, 1.0, 1.75]),
    ("k_600", Group::Gas, [0.8, 1.5, 3.0]),
    ("room.co2", Group::Gas, [400.0, 600.0, 1200.0]),
    ("stem_P_max", Group::Plants, [8.0, 12.0, 18.0]),
    ("Q0", Group::Plants, [20.0, 30.0, 40.0]),
    ("melt_tissue", Group::Plants, [0.1, 0.2, 0.3]),
    ("tap.kh", Group::Water, [2.0, 4.0, 7.0]),
    ("tap.nitrate", Group::Water, [1.0, 3.0, 8.0]),
    ("heater.target", Group::Water, [23.0, 24.5, 26.0]),
    ("a_bio", Group::Microbes, [0.02, 0.08, 0.2]),
];

/// A study of 25 inputs as of a planted tank, the last of them a choice of the keeper's.
pub fn like_a_tank(method: Method, members: usize, milestones: &[&str]) -> Study {
    let input = |(name, group, [low, middle, high]): (&str, Group, [f64; 3])| {
        let spec = parameters::spec(name);
        Input {
            name: name.into(),
            words: spec.map_or(
                "first films of all guilds together, as a multiple of level 1".into(),
                |spec| spec.meaning.to_string(),
            ),
            unit: spec.map_or("1", |spec| spec.unit).into(),
            group,
            source: "judgement: invented".into(),
            spread: Spread::Shape(Shape::log_normal(low, middle, high)),
            shown: None,
        }
    };
    let share = Input {
        name: "changes.early.share".into(),
        words: "share of water changed early on".into(),
        unit: "1".into(),
        group: Group::Care,
        source: "judgement: invented".into(),
        spread: Spread::Settings(["20 %", "40 %", "60 %"].map(String::from).into()),
        shown: None,
    };
    let milestones = milestones
        .iter()
        .map(|name| Milestone::named(name).expect("a milestone"));
    Study {
        inputs: LIKE_A_TANK.into_iter().map(input).chain([share]).collect(),
        milestones: milestones.collect(),
        members,
        ready_by: 28,
        ..study(1, method, members, "ready_day")
    }
}

/// Milestones of an invented tank at some places: those asked for, of the ready day, two peaks and nitrate.
pub fn invented(study: &Study, places: &[f64], later_by: f64) -> Vec<f64> {
    let z = |at: usize| 2.0 * places[at] - 1.0;
    let start = (1.6 - z(1)) * (1.4 - 0.9 * z(0)) * 4.0;
    let changes = (3.0 * places[24]).floor().min(2.0);
    let day =
        18.0 + later_by + start + 5.0 * z(3) + 3.0 * z(2) * z(2) - 2.0 * changes - 1.5 * z(13)
            + 0.4 * z(20)
            + z(9);
    let ammonia = (1.2 + 0.9 * z(3) + 0.6 * z(4) - 0.3 * changes) * (1.2 - 0.4 * z(2));
    let nitrite = 2.0 + 1.5 * places[3] * (1.5 - z(0)) + 0.4 * z(13) - 0.2 * changes;
    let nitrate = 10.0 + 4.0 * z(21) + 2.0 * z(7) - 1.5 * z(17);
    let of = |name: &str| match name {
        "ready_day" => day.floor().clamp(3.0, 57.0),
        "ready_by" => f64::from(u8::from(day <= 28.0)),
        "tan_peak_mg_n_per_l" => ammonia,
        "nitrite_peak_mg_n_per_l" => nitrite,
        // a few runs in a thousand go far up
        "free_ammonia_peak_mg_n_per_l" if places[3] > 0.95 && places[0] < 0.1 => 0.6 + places[4],
        "free_ammonia_peak_mg_n_per_l" => 0.02 + 0.01 * places[3],
        "water_changed_l" => 190.0,
        _ => nitrate,
    };
    study
        .milestones
        .iter()
        .map(|milestone| of(milestone.name))
        .collect()
}

/// What a study finds of the invented tank.
pub fn of_invented(study: &Study, later_by: f64) -> Findings {
    let mut gathering = Gathering::new(study);
    for number in 0..study.rows() {
        let places = study.places(number);
        let outputs = Some(invented(study, &places, later_by));
        gathering.take(&Row {
            number,
            places,
            outputs,
        });
    }
    gathering.findings()
}
