//! One screen: what `run` prints of every shipped scenario is short, and begins with what decides.

use std::path::{Path, PathBuf};

use firstfill::analysis::forecast::{Forecast, Making, USUAL_MEMBERS, USUAL_SEED};
use firstfill::analysis::outcome::Outcome;
use firstfill::base::stop::Stop;
use firstfill::output::place::Written;
use firstfill::output::text::{Length, Story, WIDEST, closing, report};

/// Lines of a screen that is read without scrolling, less the prompt before and after.
const LINES: usize = 44;

fn shipped() -> Vec<PathBuf> {
    let files = std::fs::read_dir("scenarios").unwrap();
    let mut files: Vec<PathBuf> = files.map(|entry| entry.unwrap().path()).collect();
    files.retain(|file| file.is_file()); // studies lie in a folder of their own
    files.sort();
    files
}

/// What `run` prints, without colour.
fn screen(file: &Path) -> String {
    let loaded = firstfill::scenario::load(file);
    let case = loaded
        .unwrap_or_else(|problems| panic!("{}", problems.render(false)))
        .case;
    let outcome = Outcome::of(&case).unwrap();
    let making = Making {
        members: USUAL_MEMBERS,
        seed: USUAL_SEED,
        drawn_days: &[],
    };
    let forecast = Forecast::of(&case, making, &Stop::default(), |_, _| {}).unwrap();
    let mut page = report(&Story {
        file: None,
        case: &case,
        outcome: &outcome,
        forecast: Some(&forecast),
        length: Length::Screen,
    });
    let folder = PathBuf::from("output").join(file.file_stem().unwrap());
    let written = Written {
        folder: folder.clone(),
        renamed: true,
        replaced: false,
    };
    let charts = [
        "weeks",
        "ready",
        "nights",
        "day-14",
        "alkalinity",
        "capacity",
        "nitrogen",
    ];
    let mut files: Vec<String> = charts.map(|name| format!("{name}.png")).into();
    files.push("series.csv".into());
    closing(&mut page, &folder, &written, &files);
    anstream::adapter::strip_str(&page.render(WIDEST)).to_string()
}

#[test]
fn the_screen_of_every_shipped_scenario_is_short_and_begins_with_what_decides() {
    let mut long = Vec::new();
    for file in shipped() {
        let text = screen(&file);
        let lines = text.lines().count();
        if lines > LINES {
            long.push(format!("{lines} lines of {}:\n{text}", file.display()));
        }
        let place = |words: &str| {
            text.find(words)
                .unwrap_or_else(|| panic!("{}: no {words} in\n{text}", file.display()))
        };
        let order = [
            "Ready ",
            "of 100",
            "What held them back",
            "Next ",
            "firstfill levers",
            "Peaks",
        ];
        let places = order.map(place);
        assert!(
            places.is_sorted(),
            "{}: {order:?} at {places:?}",
            file.display()
        );
        // cautions stay, whatever is short
        for caution in [
            "never replaces a test",
            "CO2 cylinders",
            "The animals come first",
        ] {
            place(caution);
        }
    }
    assert!(long.is_empty(), "{}", long.join("\n\n"));
}

/// A tank on soil, refilled with a water of so much chloride, to the end of two weeks.
fn waiting(chloride: &str) -> String {
    let text = format!(
        "length = 14\n[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"33 cm\"\n[soil]\namount = \"9 L\"\n\
         [water.ro]\nalkalinity = \"4 dKH\"\nchloride = \"{chloride} mg/L\"\n[refill]\nblend = {{ ro = \"100 %\" }}\n"
    );
    let loaded = firstfill::scenario::read_text("tank.toml", &text);
    let case = loaded.unwrap_or_else(|problems| panic!("{problems}")).case;
    let outcome = Outcome::of(&case).unwrap();
    let page = report(&Story {
        file: None,
        case: &case,
        outcome: &outcome,
        forecast: None,
        length: Length::Screen,
    });
    let words = anstream::adapter::strip_str(&page.render(WIDEST)).to_string();
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn where_chloride_lowers_the_limit_of_nitrite_it_is_told_as_the_cause() {
    let (none, enough) = (waiting("0"), waiting("20"));
    for words in [&none, &enough] {
        assert!(words.contains("later than day 14, waiting for"), "{words}");
    }
    assert!(none.contains("only 0 mg/L chloride"), "{none}");
    assert!(!enough.contains("chloride"), "{enough}");
}
