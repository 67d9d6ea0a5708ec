//! A value varied over a grid: the ends are single runs, every path of a scenario can be varied, what is wrong is
//! told, words and cells keep apart, and the command.

#[path = "support/apart.rs"]
mod apart;

use std::fs;
use std::path::Path;
use std::sync::LazyLock;

use apart::apart;
use assert_cmd::Command;
use tempfile::TempDir;

use firstfill::analysis::compare::Common;
use firstfill::analysis::compare::value::Value;
use firstfill::analysis::figure_list::FIGURES;
use firstfill::analysis::forecast::{Forecast, Making};
use firstfill::analysis::milestones;
use firstfill::analysis::outcome::Outcome;
use firstfill::analysis::sweep::axis::{Axis, Setting, points};
use firstfill::analysis::sweep::size::{MOST_POINTS, Size};
use firstfill::analysis::sweep::{Sweep, key};
use firstfill::base::stop::Stop;
use firstfill::output::chart::Figure;
use firstfill::output::chart::figure::Shape;
use firstfill::output::chart::style::Colour;
use firstfill::output::chart::sweep::figures;
use firstfill::output::sweep::shown;
use firstfill::output::sweep::table::table;
use firstfill::output::table::Form;
use firstfill::scenario::keys::KEYS;
use firstfill::scenario::{self, Loaded, varied};

/// Few members show as well as many whether numbers are the same.
const COMMON: Common = Common {
    members: 20,
    seed: 3,
};
const SHARE: &str = "changes.early.share=20 %..80 %:3";

static SIXTY: LazyLock<Loaded> = LazyLock::new(|| shipped("sixty"));
static NIGHT_AIR: LazyLock<Loaded> = LazyLock::new(|| shipped("dense-still-night-air"));
static ONE: LazyLock<Sweep> = LazyLock::new(|| swept(&SIXTY, &[SHARE]));
static TWO: LazyLock<Sweep> = LazyLock::new(|| {
    swept(
        &NIGHT_AIR,
        &["air.flow=0.2..2 L/min:2", "air.on.for=2..12 h:2"],
    )
});

fn shipped(name: &str) -> Loaded {
    let loaded = scenario::load(Path::new(&format!("scenarios/{name}.toml")));
    loaded.unwrap_or_else(|problems| panic!("{problems}"))
}

fn axes(loaded: &Loaded, vary: &[&str]) -> Vec<Axis> {
    let texts: Vec<String> = vary.iter().map(|text| text.to_string()).collect();
    varied::axes(loaded, &texts).unwrap_or_else(|problems| panic!("{problems}"))
}

fn swept(loaded: &Loaded, vary: &[&str]) -> Sweep {
    let axes = axes(loaded, vary);
    let cases = varied::grid(loaded, &axes).unwrap_or_else(|problems| panic!("{problems}"));
    Sweep::of(&axes, &cases, COMMON, &Stop::default(), |_, _| {}).unwrap()
}

/// The point of a sweep is the run of a scenario in which somebody wrote the values.
fn is_the_run_of(sweep: &Sweep, at: &[usize], text: &str) {
    let case = scenario::read_text("scenarios/written.toml", text)
        .unwrap()
        .case;
    let making = Making {
        members: COMMON.members,
        seed: COMMON.seed,
        drawn_days: &[],
    };
    let alone = Forecast::of(&case, making, &Stop::default(), |_, _| {}).unwrap();
    let number = sweep.point_at(at);
    let point = &sweep.points[number];
    assert_eq!(point.at, at);
    assert_eq!(point.members, alone.ensemble.members);
    assert_eq!(point.bands, alone.ensemble.bands);
    assert_eq!(point.curve, alone.curve);
    let outcome = Outcome::of(&case).unwrap();
    let own = milestones::figures(&outcome.run, &case.limits);
    for figure in FIGURES {
        let place = sweep.line(figure.name).unwrap();
        assert_eq!(point.central[place], (figure.read)(&own), "{}", figure.name);
    }
    let peak = sweep.line("nitrite_peak_mg_n_per_l").unwrap();
    assert_eq!(
        point.central[peak],
        Some(outcome.milestones.nitrite_peak.value)
    );
    let ready = sweep.line("ready_50_of_100_day").unwrap();
    assert_eq!(point.central[ready], outcome.verdict.day().map(f64::from));
    assert_eq!(
        sweep.lines[ready].values[number],
        Value::of_day(alone.curve.day_of(50))
    );
}

#[test]
fn the_ends_of_a_sweep_are_single_runs_to_the_bit() {
    for (place, share) in [(0, "20 %"), (2, "80 %")] {
        let text =
            format!("based_on = \"sixty.toml\"\n[changes]\nearly = {{ share = \"{share}\" }}\n");
        is_the_run_of(&ONE, &[place], &text);
    }
}

#[test]
fn a_corner_of_two_values_is_the_run_with_both_written() {
    let text = "based_on = \"dense-still-night-air.toml\"\n[air]\n\
        flow = \"2 L/min\"\non = { from = \"20:00\", for = \"2 h\" }\n";
    is_the_run_of(&TWO, &[1, 0], text);
}

#[test]
fn a_grid_has_its_ends_as_written_and_even_steps_between() {
    let words = |vary: &str| -> Vec<String> {
        let axis = axes(&SIXTY, &[vary]).remove(0);
        axis.settings
            .into_iter()
            .map(|setting| setting.words)
            .collect()
    };
    assert_eq!(
        words("changes.early.share=20 %..80 %:4"),
        ["20 %", "40 %", "60 %", "80 %"]
    );
    assert_eq!(words("changes.early.share=20..35 %:2"), ["20 %", "35 %"]);
    assert_eq!(words("changes.early.every=1..7:3"), ["1", "4", "7"]);
    assert_eq!(
        words("gas.hold=20..26.50 mg/L:3"),
        ["20 mg/L", "23.25 mg/L", "26.50 mg/L"]
    );
    let two = axes(&SIXTY, &["changes.early.every=1..3:3", SHARE]);
    let names: Vec<String> = points(&two).iter().map(|at| key(&two, at)).collect();
    assert_eq!(names.len(), 9);
    assert_eq!(
        names[1],
        "changes.early.every = 1, changes.early.share = 50 %"
    );
}

#[test]
fn every_key_that_is_a_number_can_be_varied() {
    let plain = |key: &&firstfill::scenario::keys::Key| key.example.parse::<f64>().is_ok();
    // a file with an air stone: what is varied in a section needs the rest of it
    let mut found = 0;
    for key in KEYS.iter().filter(plain) {
        let path = key.path.replace("NAME", "early");
        let text = format!("{path}=1..2:2");
        let known = varied::axes(&NIGHT_AIR, &[text]);
        assert!(known.is_ok(), "{}", known.unwrap_err());
        found += 1;
    }
    assert!(found > 20, "only {found} keys");
    for path in [
        "air.flow",
        "air.on.for",
        "refill.blend.ro",
        "seed.sponge.amount",
        "light.on.for",
    ] {
        let known = varied::axes(&NIGHT_AIR, &[format!("{path}=1..2 h:2")]);
        assert!(known.is_ok(), "{}", known.unwrap_err());
    }
}

#[test]
fn what_two_values_write_together_is_an_entry_of_its_own() {
    let both = ["seed.sponge.amount=0.2..0.5 L:2", "seed.sponge.day=1..5:2"];
    let cases = varied::grid(&SIXTY, &axes(&SIXTY, &both)).unwrap();
    let events = cases.iter().map(|case| case.input.events.len());
    let plain = SIXTY.case.input.events.len();
    assert!(events.into_iter().all(|count| count == plain + 1));
    let minutes = |case: &firstfill::analysis::case::Case| {
        let mut events = case.input.events.iter().zip(&SIXTY.case.input.events);
        events.position(|(a, b)| a != b)
    };
    assert_ne!(
        minutes(&cases[0]),
        minutes(&cases[1]),
        "day 1 is before day 5"
    );
}

/// What is said of things to vary that cannot be.
fn told(loaded: &Loaded, vary: &[&str]) -> String {
    let texts: Vec<String> = vary.iter().map(|text| text.to_string()).collect();
    let refused = varied::axes(loaded, &texts).and_then(|axes| varied::grid(loaded, &axes));
    refused.expect_err("it is refused").to_string()
}

macro_rules! refused {
    ($($name:ident: $($vary:literal),+;)*) => {$(
        #[test]
        fn $name() {
            insta::assert_snapshot!(told(&SIXTY, &[$($vary),+]));
        }
    )*};
}

refused! {
    a_misspelt_entry_gets_the_nearest_one: "changes.erly.share=20 %..80 %:4";
    a_misspelt_key_gets_the_nearest_path: "gas.hodl=20..30 mg/L:3";
    a_path_unlike_any_other_lists_numbers: "moon.phase.brightness.index=1..2:2";
    a_word_is_no_number_and_the_numbers_beside_it_are_named: "surface.kind=1..2 m/day:2";
    days_between_whole_ones_are_refused: "changes.early.every=1..7:5";
    a_value_out_of_bounds_is_the_readers_to_refuse: "changes.early.share=20 %..120 %:2";
    a_value_that_nobody_typed_is_told_with_its_range: "changes.early.share=20 %..180 %:4";
    a_unit_of_another_kind_is_the_readers_to_refuse: "gas.hold=1..2 h:2";
    half_an_entry_is_the_readers_to_refuse: "seed.sponge.amount=0.2..0.5 L:2";
    a_range_that_does_not_rise: "changes.early.share=80 %..20 %:4";
    ends_in_two_units: "tank.temperature=22 °C..80 °F:4";
    one_value_is_no_range: "changes.early.share=20 %..80 %:1";
    no_number_of_values: "changes.early.share=20 %..80 %";
    no_path_at_all: "20 %..80 %:4";
    three_values_at_once: "changes.early.every=1..7:7", "changes.early.share=20..80 %:4", "gas.hold=20..26 mg/L:2";
    the_same_value_twice: "gas.hold=20..26 mg/L:2", "gas.hold=20..30 mg/L:2";
    runs_of_different_length: "length=40..56:2";
    a_section_that_is_not_there_is_named_with_what_to_write: "air.on.for=2..12 h:3";
}

#[test]
fn a_grid_is_large_by_its_points_or_by_its_time() {
    let input = &SIXTY.case.input;
    let large = |points, members, threads| Size::of(points, members, input, threads).is_large();
    assert!(!large(MOST_POINTS, 50, 2));
    assert!(large(MOST_POINTS + 1, 20, 64));
    assert!(large(100, 5_000, 2));
    assert_eq!(Size::of(49, 50, input, 2).runs, 49 * 51);
}

#[test]
fn threads_do_not_matter() {
    let pool = |threads| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
        let ran = pool.unwrap().install(|| swept(&SIXTY, &[SHARE]));
        table(&ran).written(Form::Csv).unwrap()
    };
    assert_eq!(pool(1), pool(3));
}

#[test]
fn the_table_has_a_row_per_point_and_figure_with_the_numbers_of_the_members() {
    let csv = table(&TWO).written(Form::Csv).unwrap();
    let mut lines = csv.lines();
    let heads = "air.flow,air.on.for,figure,unit,central,p05,p50,p95,members";
    assert_eq!(lines.next(), Some(heads));
    assert_eq!(lines.count(), 4 * TWO.lines.len());
    let place = TWO.line("gas_used_g").unwrap();
    let Value::Band([low, middle, high]) = TWO.lines[place].values[2] else {
        panic!("gas differs from tank to tank");
    };
    let digits = |value: f64| firstfill::output::number::six_digits(value);
    let central = digits(TWO.points[2].central[place].unwrap());
    let [low, middle, high] = [low, middle, high].map(digits);
    let row = format!("2,2,gas_used_g,g,{central},{low},{middle},{high},20");
    assert!(csv.lines().any(|line| line == row), "{row} in\n{csv}");
}

/// A sweep with more points than were run, made of those that were.
fn stretched(sweep: &Sweep, counts: &[usize], words: fn(usize) -> String) -> Sweep {
    let mut larger = sweep.clone();
    for (axis, &count) in larger.axes.iter_mut().zip(counts) {
        let setting = |place: usize| Setting {
            number: place as f64,
            words: words(place),
        };
        axis.settings = (0..count).map(setting).collect();
    }
    let all = points(&larger.axes);
    let old = sweep.points.len();
    for line in &mut larger.lines {
        line.values = (0..all.len())
            .map(|number| line.values[number % old])
            .collect();
    }
    let copied = all.into_iter().enumerate().map(|(number, at)| {
        let mut point = sweep.points[number % old].clone();
        point.at = at;
        point
    });
    larger.points = copied.collect();
    larger
}

fn short(place: usize) -> String {
    format!("{place} %")
}

fn long(place: usize) -> String {
    format!("{place}.123 µmol/m²/s")
}

#[test]
fn charts_of_grids_of_any_shape_keep_words_apart_and_data_inside() {
    for words in [short, long] {
        for count in [2, 3, 9, 25, 120] {
            let sweep = stretched(&ONE, &[count], words);
            figures(&sweep, &shown::places(&sweep, &[]))
                .iter()
                .for_each(apart);
        }
        for counts in [[2, 2], [7, 7], [15, 15], [2, 40], [60, 3], [3, 90]] {
            let sweep = stretched(&TWO, &counts, words);
            figures(&sweep, &shown::places(&sweep, &[]))
                .iter()
                .for_each(apart);
        }
    }
}

/// All words of a chart.
fn words_of(figure: &Figure) -> Vec<String> {
    figure.labels.iter().map(|label| label.words()).collect()
}

#[test]
fn the_ready_day_is_drawn_up_to_the_end_of_the_run_and_later_days_on_a_line_of_their_own() {
    let mut one = stretched(&ONE, &[3], short);
    let place = one.line("ready_50_of_100_day").unwrap();
    let of_all = |sweep: &mut Sweep, values: [Value; 3]| {
        for (name, value) in ["10", "50", "90"].into_iter().zip(values) {
            let at = sweep.line(&format!("ready_{name}_of_100_day")).unwrap();
            sweep.lines[at].values.fill(value);
        }
    };
    of_all(&mut one, [24.0, 25.0, 30.0].map(Value::One));
    let within = figures(&one, &[place]).swap_remove(1);
    assert_eq!(within.panels[0].up.high, f64::from(one.last_day));
    assert!(!words_of(&within).iter().any(|words| words == "later"));
    of_all(&mut one, [Value::One(24.0), Value::Later, Value::Later]);
    let beyond = figures(&one, &[place]).swap_remove(1);
    assert!(words_of(&beyond).iter().any(|words| words == "later"));
    let later = format!("On the line later: later than day {}.", one.last_day);
    assert!(beyond.sentence.ends_with(&later), "{}", beyond.sentence);
    let upper = &beyond.panels[0].areas[0].upper;
    assert!(upper.iter().all(|point| point.1 > f64::from(one.last_day)));
    apart(&beyond);
}

#[test]
fn charts_write_formulas_and_ph_as_they_are_written_and_have_one_key() {
    let names = ["oxygen_low_mg_per_l", "ph_jump"];
    let of = names.map(|name| ONE.line(name).unwrap());
    let all = figures(&ONE, &of);
    for figure in &all {
        for words in words_of(figure).iter().chain([&figure.title]) {
            assert!(!words.contains("O2") && !words.contains("PH"), "{words}");
        }
    }
    let says = |start: &str| {
        words_of(&all[1])
            .iter()
            .any(|words| words.starts_with(start))
    };
    assert!(says("Worst night O₂") && says("pH jump"));
    let keys = words_of(&all[0]).into_iter();
    assert_eq!(
        keys.clone()
            .filter(|words| words == "changes.early.share")
            .count(),
        1
    );
    assert_eq!(
        keys.filter(|words| words.starts_with("share of")).count(),
        1
    );
}

#[test]
fn charts_bear_figures_that_are_missing_or_alike_or_later() {
    let mut sweep = stretched(&TWO, &[3, 3], short);
    for line in &mut sweep.lines {
        let value = match line.unit {
            "day" => Value::Later,
            "mg/L" => Value::Nothing,
            _ => Value::One(3.0),
        };
        line.values.fill(value);
    }
    for name in shown::names() {
        let place = sweep
            .line(&name)
            .unwrap_or_else(|| panic!("{name} is known"));
        figures(&sweep, &[place]).iter().for_each(apart);
    }
    let mut one = stretched(&ONE, &[3], short);
    one.lines
        .iter_mut()
        .for_each(|line| line.values.fill(Value::Nothing));
    figures(&one, &shown::places(&one, &[]))
        .iter()
        .for_each(apart);
}

#[test]
fn the_border_runs_between_cells_that_keep_the_limit_and_those_that_do_not() {
    let mut sweep = stretched(&TWO, &[3, 2], short);
    let place = sweep.line("oxygen_low_mg_per_l").unwrap();
    let limit = sweep.limits.oxygen.value;
    // the two cells of the middle column keep it: an upright edge of two pieces at either side
    let oxygen = [-1.0, -1.0, 1.0, 1.0, -1.0, -1.0].map(|more| Value::One(limit + more));
    sweep.lines[place].values = oxygen.to_vec();
    let thick = |figure: &Figure| {
        let shapes = figure.shapes.iter();
        let paths = shapes.filter_map(|shape| match shape {
            Shape::Path(points, pen) if pen.width > 2.0 && pen.width < 3.0 => Some(points.clone()),
            _ => None,
        });
        paths.collect::<Vec<_>>()
    };
    let map = &figures(&sweep, &[place])[0];
    let frame = map.panels[0].frame;
    let edges = [1.0, 2.0].map(|third| frame.left + third * frame.width() / 3.0);
    let pieces: Vec<_> = thick(map)
        .into_iter()
        .filter(|path| path[0].0 < frame.right)
        .collect();
    let (pieces, ticks): (Vec<_>, Vec<_>) =
        (pieces.into_iter()).partition(|path| (path[0].0 - path[1].0).abs() < 1e-9); // rounding
    assert_eq!((pieces.len(), ticks.len()), (4, 4));
    let points_inwards = |tick: &Vec<(f64, f64)>| (edges[0]..=edges[1]).contains(&tick[1].0);
    assert!(ticks.iter().all(points_inwards), "{ticks:?}");
    let is_on_one = |(x, _): &(f64, f64)| edges.iter().any(|edge| (x - edge).abs() < 1e-9); // rounding
    assert!(pieces.iter().flatten().all(is_on_one), "{pieces:?}");
    let side = |sweep: &Sweep| {
        let map = &figures(sweep, &[place])[0];
        words_of(map).join(" ")
    };
    assert!(
        side(&sweep).contains("where the ticks point:"),
        "neither right nor left"
    );
    let oxygen = [-1.0, -1.0, 1.0, 1.0, 1.0, 1.0].map(|more| Value::One(limit + more));
    sweep.lines[place].values = oxygen.to_vec();
    assert!(side(&sweep).contains("right of the line:"));
    let oxygen = [1.0, -1.0, 1.0, -1.0, 1.0, -1.0].map(|more| Value::One(limit + more));
    sweep.lines[place].values = oxygen.to_vec();
    assert!(side(&sweep).contains("below the line:"));
    sweep.lines[place].values.fill(Value::One(limit + 1.0));
    assert!(
        thick(&figures(&sweep, &[place])[0]).is_empty(),
        "all of them keep it"
    );
    let flat = figures(&sweep, &[place]).remove(1);
    assert!(words_of(&flat).contains(&"the same everywhere".to_string()));
    let first = flat.panels[0].fields[0].colour;
    let pale = flat.panels[0].fields.iter().all(|field| {
        let Colour(r, g, b) = field.colour;
        field.colour == first && [r, g, b].iter().all(|&part| part > 220)
    });
    assert!(pale, "a figure that is the same everywhere is pale");
}

#[test]
fn the_ready_day_leads_where_it_moves_most_against_the_spread_of_the_tanks() {
    let leads = |sweep: &Sweep| sweep.lines[shown::places(sweep, &[])[0]].name;
    let mut sweep = ONE.clone();
    let last = sweep.points.len() - 1;
    for (number, point) in sweep.points.iter_mut().enumerate() {
        for told in point
            .members
            .iter_mut()
            .filter_map(|m| m.told.as_mut().ok())
        {
            told.ready.day = Some(if number == last { 20 } else { 37 });
        }
    }
    assert_eq!(leads(&sweep), "ready_50_of_100_day");
    for point in &mut sweep.points {
        for told in point
            .members
            .iter_mut()
            .filter_map(|m| m.told.as_mut().ok())
        {
            told.ready.day = Some(30);
        }
    }
    assert_eq!(leads(&sweep), "tan_peak_mg_n_per_l");
}

const TANK: &str = r#"
length = 12
[tank]
inside = "60 x 30 x 36 cm"
water_line = "33 cm"
[soil]
kind = "medium"
amount = "9 L"
[changes]
early = { days = "1..7", every = 1, share = "50 %" }
"#;

fn room() -> TempDir {
    let room = tempfile::tempdir().expect("a temporary folder");
    fs::write(room.path().join("tank.toml"), TANK).unwrap();
    room
}

fn sweep(room: &TempDir, words: &[&str]) -> std::process::Output {
    let mut command = Command::cargo_bin("firstfill").expect("the program");
    let command = command.current_dir(room.path()).arg("sweep").args(words);
    command.output().unwrap()
}

#[test]
fn the_command_writes_table_charts_and_a_manifest_that_repeats_it() {
    let room = room();
    let vary = ["--vary", "changes.early.every=1..3:2", "--vary", SHARE];
    let words = [&["tank.toml", "--members", "20"], &vary[..]].concat();
    let output = sweep(&room, &words);
    let said = String::from_utf8(output.stdout).unwrap();
    assert!(
        output.status.success(),
        "{said}{}",
        String::from_utf8_lossy(&output.stderr)
    );
    for piece in [
        "6 points on the same 20 plausible tanks",
        "peak ammonia runs from",
        "map.png",
    ] {
        assert!(said.contains(piece), "{piece} is not in\n{said}");
    }
    let folder = "output/sweep-tank-changes.early.every-changes.early.share";
    let folder = room.path().join(folder);
    let read =
        |name: &str| fs::read(folder.join(name)).unwrap_or_else(|why| panic!("{name}: {why}"));
    let names = [
        "sweep.csv",
        "columns.csv",
        "map.png",
        "map.svg",
        "maps.png",
        "maps.svg",
    ];
    let first = names.map(read);
    fs::write(room.path().join("tank.toml"), "spoiled").unwrap();
    let manifest = folder.join("manifest.json");
    let again = sweep(&room, &[manifest.to_str().unwrap(), "--out", "again"]);
    assert!(
        again.status.success(),
        "{}",
        String::from_utf8_lossy(&again.stderr)
    );
    for (name, bytes) in names.iter().zip(first) {
        assert_eq!(
            fs::read(room.path().join("again").join(name)).unwrap(),
            bytes,
            "{name}"
        );
    }
    let kept = fs::read(room.path().join("again/manifest.json")).unwrap();
    assert_eq!(kept, fs::read(manifest).unwrap());
}

#[test]
fn one_value_has_curves_and_milestones_and_a_table_in_three_forms() {
    let room = room();
    let words = ["tank.toml", "--vary", SHARE, "--members", "20"];
    let csv = sweep(&room, &[&words[..], &["--format", "csv"]].concat());
    let folder = room.path().join("output/sweep-tank-changes.early.share");
    assert_eq!(csv.stdout, fs::read(folder.join("sweep.csv")).unwrap());
    for name in [
        "curves.png",
        "curves.svg",
        "milestones.png",
        "milestones.svg",
    ] {
        assert!(folder.join(name).exists(), "{name}");
    }
    let json = sweep(
        &room,
        &[&words[..], &["--format", "json", "--no-charts"]].concat(),
    );
    let read: serde_json::Value = serde_json::from_slice(&json.stdout).unwrap();
    assert_eq!(read["rows"][0]["changes.early.share"], 20.0);
    assert_eq!(read["columns"][0]["unit"], "%");
    assert!(
        !room
            .path()
            .join("output/sweep-tank-changes.early.share-2/curves.png")
            .exists()
    );
}

#[test]
fn a_grid_too_large_is_told_in_runs_and_minutes_and_not_run() {
    let room = room();
    let vary = [
        "--vary",
        "changes.early.share=20 %..80 %:21",
        "--vary",
        "soil.amount=5..9 L:20",
    ];
    let refused = sweep(&room, &[&["tank.toml"], &vary[..]].concat());
    assert_eq!(refused.status.code(), Some(2));
    assert!(!room.path().join("output").exists(), "nothing is written");
    let words = String::from_utf8(refused.stderr).unwrap();
    assert!(
        words.contains("420 points on 50 plausible tanks each are 21420 runs"),
        "{words}"
    );
    assert!(
        words.contains("about") && words.contains("--yes"),
        "{words}"
    );
}

#[test]
fn more_figures_than_the_charts_draw_are_told() {
    let room = room();
    let names = shown::names();
    let mut words = vec![
        "tank.toml",
        "--vary",
        SHARE,
        "--members",
        "20",
        "--no-charts",
    ];
    words.extend(names[..7].iter().flat_map(|name| ["--of", name]));
    let said = String::from_utf8(sweep(&room, &words).stdout).unwrap();
    let told = "the first 6 of 7 figures; all are in sweep.csv";
    assert!(said.contains(told), "{said}");
    let said = sweep(&room, &words[..words.len() - 2]).stdout;
    assert!(!String::from_utf8(said).unwrap().contains("Drawn"));
}

#[test]
fn a_figure_nobody_knows_gets_the_nearest_one() {
    let room = room();
    let refused = sweep(
        &room,
        &["tank.toml", "--vary", SHARE, "--of", "tan_peek_mg_n_per_l"],
    );
    let words = String::from_utf8(refused.stderr).unwrap();
    assert!(
        words.contains("did you mean tan_peak_mg_n_per_l?"),
        "{words}"
    );
    let other = sweep(&room, &["tank.toml"]);
    let words = String::from_utf8(other.stderr).unwrap();
    assert!(words.contains("nothing is varied"), "{words}");
}
