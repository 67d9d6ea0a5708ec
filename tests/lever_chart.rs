//! The chart of levers: no word on a bar or on another word, nothing outside its scale, and the numbers of
//! the table.

#[path = "support/apart.rs"]
mod apart;

use std::path::Path;

use apart::{all_words_are_drawn, space, words_apart};

use firstfill::analysis::case::Case;
use firstfill::analysis::ensemble::curve::ReadyCurve;
use firstfill::analysis::levers::paired::{Moved, Paired};
use firstfill::analysis::levers::price::Price;
use firstfill::analysis::levers::shortest_air::{Night, ShortestAir};
use firstfill::analysis::levers::{Levers, NOTHING_DAYS, Pulled, Trying};
use firstfill::analysis::ready::{Ripening, Waiting};
use firstfill::output::chart::figure::Shape;
use firstfill::output::chart::levers::figure;
use firstfill::output::chart::rect::Rect;
use firstfill::output::chart::{Figure, png, svg};
use firstfill::output::csv::levers::table;

fn case() -> Case {
    let loaded = firstfill::scenario::load(Path::new("scenarios/dense-still-night-air.toml"));
    let loaded = loaded.unwrap_or_else(|problems| panic!("{}", problems.render(false)));
    loaded.case
}

fn price(litres: f64) -> Price {
    Price {
        litres,
        gas_g: 130.0,
        worst_night_mg_per_l: 5.84,
        ammonia_peak_mg_n_per_l: 3.0,
        nitrite_peak_mg_n_per_l: 4.0,
        ready_of_100: 80.0,
    }
}

/// A lever with a mean, an error and a range.
fn lever(mean: f64, error: f64, range: [f64; 2]) -> Pulled {
    let waiting = Waiting::WithAnimals(Ripening::FreeAmmonia);
    Pulled {
        key: "invented",
        words: "air through the dark hours, 0.5 L/min".into(),
        paired: Paired {
            pairs: 128,
            mean_days: mean,
            standard_error_days: error,
            range_days: range,
            changed: 90,
            only_with: 5,
            only_without: 3,
            neither: 7,
            moved: Some(Moved {
                waiting,
                of_100_before: 78.125,
                of_100_after: 70.3,
            }),
        },
        price: price(if mean > 1.0 { 12_345.0 } else { 130.0 }),
    }
}

fn levers(pulled: Vec<Pulled>) -> Levers {
    Levers {
        trying: Trying::default(),
        plan: price(130.0),
        curve: ReadyCurve::of(&[], 56),
        pulled,
        last_day_to_seed: Some(44),
        shortest_air: Some(ShortestAir {
            night: Night::FromPlan,
            minutes: None,
            longest_minutes: 870,
            kept_of_100: 70.0,
            gas_g: 140.0,
            gas_planned_g: 130.0,
        }),
    }
}

/// Lists that could break a layout: none, one, nothing clear, one side only, wide ranges, very many.
fn odd() -> Vec<(&'static str, Levers)> {
    let usual = |n: usize| {
        let mean = 20.0 - 1.1 * n as f64;
        lever(mean, 0.4, [mean - 9.0, mean + 11.0])
    };
    let idle = |_| lever(0.2, 0.3, [0.0, 0.0]);
    vec![
        ("none", levers(vec![])),
        ("one", levers(vec![lever(3.0, 0.4, [0.0, 8.0])])),
        ("idle", levers((0..24).map(idle).collect())),
        ("chance", levers(vec![lever(1.2, 0.9, [0.0, 0.0])])),
        (
            "gains",
            levers(
                (0..9)
                    .map(|n| lever(9.0 - n as f64, 0.3, [0.0, 20.0]))
                    .collect(),
            ),
        ),
        (
            "costs",
            levers(
                (0..9)
                    .map(|n| lever(-1.0 - n as f64, 0.3, [-30.0, 0.0]))
                    .collect(),
            ),
        ),
        (
            "wide",
            levers(vec![
                lever(0.3, 2.0, [-50.0, 50.0]),
                lever(-0.6, 2.0, [-50.0, 50.0]),
            ]),
        ),
        ("both", levers((0..24).map(usual).collect())),
        (
            "many",
            levers((0..22).map(usual).chain((0..24).map(idle)).collect()),
        ),
    ]
}

fn figures() -> Vec<(&'static str, Levers, Figure)> {
    let case = case();
    let drawn = |(name, levers): (&'static str, Levers)| {
        let drawn = figure(&case, &levers);
        (name, levers, drawn)
    };
    odd().into_iter().map(drawn).collect()
}

/// The bars, top to bottom.
fn bars(figure: &Figure) -> Vec<Rect> {
    let fills = figure
        .shapes
        .iter()
        .filter(|shape| matches!(shape, Shape::Fill(..)));
    fills.map(space).collect()
}

fn says(figure: &Figure, words: &str) -> bool {
    figure
        .labels
        .iter()
        .any(|label| label.words().contains(words))
}

#[test]
fn no_word_lies_on_another_or_on_anything_drawn_or_off_the_page() {
    for (name, _, figure) in figures() {
        words_apart(name, &figure);
        all_words_are_drawn(name, &figure);
        let drawn: Vec<Rect> = figure.shapes.iter().map(space).collect();
        for label in &figure.labels {
            let hit = drawn.iter().find(|space| space.overlaps(&label.space));
            assert_eq!(hit, None, "{name}: “{}” {:?}", label.words(), label.space);
        }
    }
}

#[test]
fn bars_end_at_the_days_of_the_table_and_rows_stand_apart() {
    for (name, levers, figure) in figures() {
        let panel = &figure.panels[0];
        let moving: Vec<&Pulled> = levers
            .pulled
            .iter()
            .filter(|p| p.does_something())
            .collect();
        let bars = bars(&figure);
        assert_eq!(bars.len(), moving.len(), "{name}");
        for (bar, pulled) in bars.iter().zip(&moving) {
            let (zero, mean) = (panel.x(0.0), panel.x(pulled.paired.mean_days));
            let ends = [zero.min(mean), zero.max(mean)];
            assert_eq!([bar.left, bar.right], ends, "{name}: {}", pulled.words);
        }
        let apart = |two: &[Rect]| two[1].top - two[0].bottom;
        assert!(
            bars.windows(2).all(|two| apart(two) > 3.0),
            "{name}: bars touch"
        );
        // ranges and errors keep inside the scale
        let reach = |p: &&Pulled| p.paired.range_days.into_iter().chain([p.paired.mean_days]);
        let inside = |days: f64| panel.across.holds(days);
        assert!(moving.iter().flat_map(reach).all(inside), "{name}");
    }
}

#[test]
fn every_number_beside_a_bar_is_the_one_of_the_table() {
    for (name, levers, figure) in figures() {
        let csv = String::from_utf8(table(&levers).bytes()).unwrap();
        for (line, pulled) in csv.lines().skip(2).zip(&levers.pulled) {
            let words = format!("\"{}\"", pulled.words);
            let rest = line.split_once(&words).expect("the words are quoted").1;
            let days: f64 = rest.split(',').nth(1).unwrap().parse().unwrap();
            let shown = format!("{:.1}", days.abs());
            if days.abs() >= NOTHING_DAYS {
                assert!(says(&figure, &shown), "{name}: {shown} of {days}");
            }
        }
    }
}

#[test]
fn a_lever_that_does_nothing_has_no_bar_and_is_said_to_do_nothing() {
    for (name, levers, figure) in figures() {
        let idle = levers.pulled.iter().filter(|p| !p.does_something()).count();
        let told = figure
            .labels
            .iter()
            .filter(|label| label.words() == "does nothing here")
            .count();
        let grouped = says(&figure, "Does nothing");
        match name {
            // a range over the whole scale leaves room for a number only
            "wide" => assert_eq!((idle, told, grouped), (1, 0, false)),
            "many" => assert_eq!((told, grouped), (0, true)),
            _ => assert_eq!((told, grouped), (idle, false), "{name}"),
        }
    }
}

#[test]
fn the_title_names_the_best_and_the_worst_beyond_chance_only() {
    let title = |wanted: &str| {
        let (_, _, figure) = figures()
            .into_iter()
            .find(|(name, ..)| *name == wanted)
            .unwrap();
        figure.title
    };
    assert_eq!(
        title("chance"),
        "No lever is sure to bring the ready day half a day nearer"
    );
    assert_eq!(title("idle"), title("none"));
    assert!(
        title("gains").ends_with("0.5 L/min: 9.0 days"),
        "{}",
        title("gains")
    );
    assert!(
        title("costs").ends_with("0.5 L/min: 9.0 days"),
        "{}",
        title("costs")
    );
}

/// Draws every odd list into a folder, for looking: `LOOK=pictures cargo test --test lever_chart look -- --ignored`.
#[test]
#[ignore = "for looking, not for judging"]
fn look() {
    let folder = std::env::var("LOOK").expect("set LOOK to a folder");
    std::fs::create_dir_all(&folder).unwrap();
    for (name, _, figure) in figures() {
        std::fs::write(format!("{folder}/{name}.png"), png(&svg(&figure)).unwrap()).unwrap();
    }
}
