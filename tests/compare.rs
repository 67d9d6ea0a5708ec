//! Plans side by side: common members, single runs to the bit, words that follow the facts, and the command.

#[path = "support/apart.rs"]
mod apart;

use std::fs;
use std::path::Path;
use std::sync::LazyLock;

use apart::apart;
use assert_cmd::Command;
use tempfile::TempDir;

use firstfill::analysis::case::Case;
use firstfill::analysis::compare::differences::by_section;
use firstfill::analysis::compare::effect::Effect;
use firstfill::analysis::compare::lines::{Line, Standing};
use firstfill::analysis::compare::nitrogen::{Nitrogen, Sink};
use firstfill::analysis::compare::strategy::Strategy;
use firstfill::analysis::compare::{Common, Comparison, Entrant};
use firstfill::analysis::ensemble::curve::ReadyCurve;
use firstfill::analysis::figure_list::FIGURES;
use firstfill::analysis::forecast::{Forecast, Making};
use firstfill::analysis::outcome::Outcome;
use firstfill::analysis::uncertain::Uncertain;
use firstfill::base::stop::Stop;
use firstfill::output::chart::compare::figures;
use firstfill::output::compare::paragraph::paragraph;
use firstfill::output::compare::table::table;
use firstfill::output::place::Written;
use firstfill::output::table::Form;
use firstfill::output::text::{Length, closing};
use firstfill::scenario;

/// Few members show as well as many whether numbers are the same.
const COMMON: Common = Common {
    members: 20,
    seed: 3,
};
/// Names of the most plans that can be compared.
const SHIPPED: [&str; 8] = [
    "heavy-early-changes",
    "weekly-changes",
    "no-changes-for-two-weeks",
    "dark-start",
    "dense-still",
    "handover-in-may",
    "power-cut",
    "soft-water-stuck",
];

static CASES: LazyLock<Vec<Case>> = LazyLock::new(|| SHIPPED.map(shipped).into());
static ALL: LazyLock<Comparison<'static>> = LazyLock::new(|| {
    let named = SHIPPED.iter().zip(CASES.iter());
    compared(&named.map(|(key, case)| (*key, case)).collect::<Vec<_>>())
});

fn shipped(name: &str) -> Case {
    let loaded = scenario::load(Path::new(&format!("scenarios/{name}.toml")));
    loaded.unwrap_or_else(|problems| panic!("{problems}")).case
}

fn compared<'a>(plans: &[(&str, &'a Case)]) -> Comparison<'a> {
    let entrants = plans.iter().map(|(key, case)| Entrant {
        key: key.to_string(),
        case,
    });
    let entrants: Vec<Entrant<'a>> = entrants.collect();
    Comparison::of(&entrants, COMMON, &Stop::default(), |_, _| {}).unwrap()
}

/// The first so many of the shipped plans, held against each other anew.
fn first(count: usize) -> Comparison<'static> {
    Comparison::between(ALL.strategies[..count].to_vec(), COMMON)
}

#[test]
fn a_file_against_itself_gives_zero_everywhere() {
    let twice = vec![ALL.strategies[0].clone(), ALL.strategies[0].clone()];
    let same = Comparison::between(twice, COMMON);
    let run_twice = compared(&[("a", &CASES[0]), ("b", &CASES[0])]);
    for comparison in [&same, &run_twice] {
        for pair in &comparison.pairs {
            assert_eq!((pair.before, pair.after), (0, 0));
            assert_eq!(pair.same_day + pair.neither, COMMON.members);
            assert_eq!(pair.paired.mean_days, 0.0);
            assert_eq!(pair.paired.standard_error_days, 0.0);
        }
        assert!(comparison.differences.is_empty());
        let [a, b] = [0, 1].map(|place| &comparison.strategies[place].members);
        for figure in FIGURES {
            let effect = Effect::of(a, b, |told| (figure.read)(&told.figures));
            let effect = effect.unwrap_or_else(|| panic!("{} is there", figure.name));
            assert_eq!(effect.points, [0.0; 5], "{}", figure.name);
        }
        for line in &comparison.lines {
            assert_eq!(line.values[0], line.values[1], "{}", line.name);
            assert_eq!(line.standing(0), Standing::Between, "{}", line.name);
        }
        let words = paragraph(comparison, 0).unwrap();
        assert!(
            words.starts_with("No tank is ready sooner or later"),
            "{words}"
        );
        let page = firstfill::output::text::compare::page(comparison, Length::Screen);
        assert!(page.render(100).contains("B the same in every tank"));
    }
}

#[test]
fn numbers_are_those_of_single_runs_to_the_bit() {
    for place in [0, 5] {
        let (case, strategy) = (&CASES[place], &ALL.strategies[place]);
        let making = Making {
            members: COMMON.members,
            seed: COMMON.seed,
            drawn_days: &[],
        };
        let alone = Forecast::of(case, making, &Stop::default(), |_, _| {}).unwrap();
        assert_eq!(strategy.members, alone.ensemble.members);
        assert_eq!(strategy.bands, alone.ensemble.bands);
        assert_eq!(strategy.curve, alone.curve);
        let outcome = Outcome::of(case).unwrap();
        assert_eq!(strategy.outcome.verdict, outcome.verdict);
        assert_eq!(
            strategy.outcome.milestones.nitrite_peak,
            outcome.milestones.nitrite_peak
        );
    }
}

#[test]
fn a_member_is_the_same_unknown_tank_with_every_plan() {
    let [one, other] = [&CASES[0], &CASES[3]].map(Uncertain::of);
    let drawn = |of: &Uncertain, name: &str| {
        let place = of.rows().iter().position(|row| row.name == name)?;
        Some(of.draw(COMMON.seed, 7)[place])
    };
    let mut shared = 0;
    for row in one.rows() {
        if let Some(value) = drawn(&other, &row.name) {
            assert_eq!(drawn(&one, &row.name), Some(value), "{}", row.name);
            shared += 1;
        }
    }
    assert!(shared > 30, "only {shared} rows are shared");
}

#[test]
fn threads_do_not_matter() {
    let pool = |threads| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
        let ran = pool
            .unwrap()
            .install(|| compared(&[("a", &CASES[0]), ("b", &CASES[1])]));
        table(&ran).written(Form::Json).unwrap()
    };
    assert_eq!(pool(1), pool(3));
}

/// A plan with other ready days than those it has.
fn with_days(strategy: &Strategy<'static>, days: &[Option<u32>]) -> Strategy<'static> {
    let mut strategy = strategy.clone();
    strategy.members.truncate(days.len());
    for (member, day) in strategy.members.iter_mut().zip(days) {
        let told = member.told.as_mut().expect("no member fails");
        told.ready.day = *day;
    }
    let last_day = strategy.case.input.last_day;
    strategy.curve = ReadyCurve::of(&strategy.members, last_day);
    strategy
}

#[test]
fn who_is_ready_before_whom_is_counted_with_ties_and_never_apart() {
    let days = [
        [Some(30), None, Some(20), None, Some(40), Some(41)],
        [Some(31), Some(56), Some(20), None, None, Some(40)],
    ];
    let [a, b] = days.map(|days| with_days(&ALL.strategies[0], &days));
    let comparison = Comparison::between(vec![a, b], COMMON);
    let pair = comparison.versus(0, 1).unwrap();
    let counts = [pair.before, pair.after, pair.same_day, pair.neither];
    assert_eq!(counts, [2, 2, 1, 1]);
    // 1, 0, 0, 0, 16 and −1 days sooner, by hand; day 56 stands in for never
    assert!(
        (pair.paired.mean_days - 16.0 / 6.0).abs() < 1e-12,
        "rounding"
    );
    let back = comparison.versus(1, 0).unwrap();
    assert_eq!([back.before, back.after], [2, 2]);
    assert_eq!(back.paired.mean_days, -pair.paired.mean_days);
}

#[test]
fn a_paragraph_changes_when_its_facts_change() {
    let before = first(2);
    let words = |comparison: &Comparison<'_>| paragraph(comparison, 0).unwrap();
    let says = |comparison: &Comparison<'_>, piece: &str| {
        let words = words(comparison);
        assert!(words.contains(piece), "{piece} is not in: {words}");
    };
    let change = |change: &dyn Fn(&mut Strategy<'static>)| {
        let mut strategies = before.strategies.clone();
        change(&mut strategies[0]);
        let last_day = before.last_day;
        strategies[0].curve = ReadyCurve::of(&strategies[0].members, last_day);
        Comparison::between(strategies, COMMON)
    };
    let days = vec![Some(10); COMMON.members];
    let early = change(&|plan| *plan = with_days(plan, &days));
    says(&early, "days sooner than weekly-changes");
    says(&early, "before it in 100 of 100");
    let never = change(&|plan| *plan = with_days(plan, &[None; 20]));
    says(&never, "days later than weekly-changes");
    let waits = change(&|plan| {
        for member in &mut plan.members {
            member.told.as_mut().unwrap().ready.waited_for = None;
        }
    });
    says(&waits, "Last to come right was nothing in 100 of 100");
    let starved = change(&|plan| {
        let alkalinity = plan.outcome.alkalinity.as_mut().unwrap();
        alkalinity.slowest.value = 0.07;
    });
    says(&starved, "slow down to 7 % of full speed");
    let ammonia = change(&|plan| {
        for member in &mut plan.members {
            member.told.as_mut().unwrap().figures.tan_peak.value = 99.0;
        }
    });
    let worse = |comparison: &Comparison<'_>| {
        let words = words(comparison);
        let (_, worse) = words.split_once("worse in").unwrap();
        worse.contains("peak ammonia")
    };
    assert!(worse(&ammonia) && !worse(&before));
    for other in [&early, &never, &waits, &starved, &ammonia] {
        assert_ne!(words(other), words(&before));
    }
}

#[test]
fn plans_that_are_never_ready_are_not_called_ready_alike() {
    let titles = |days: [&[Option<u32>]; 2]| {
        let plans = days.map(|days| with_days(&ALL.strategies[0], days));
        let comparison = Comparison::between(plans.into(), COMMON);
        (
            paragraph(&comparison, 0).unwrap(),
            figures(&comparison)[0].title.clone(),
        )
    };
    let (never, title) = titles([&[None; 20]; 2]);
    assert!(
        never.starts_with("Not ready by day 56 in any tank"),
        "{never}"
    );
    assert!(title.contains("no tank is ready with any plan"), "{title}");
    let (alike, title) = titles([&[None, Some(30)]; 2]);
    let same = "o tank is ready sooner or later";
    assert!(
        alike.contains(same) && title.contains(same),
        "{alike} {title}"
    );
}

#[test]
fn free_ammonia_stands_among_the_courses_the_milestones_and_the_differences() {
    let drawn = figures(&first(2));
    let panels = |at: usize, words: &str| {
        let panels = drawn[at].panels.iter();
        panels.filter(|panel| panel.title.contains(words)).count()
    };
    assert_eq!(panels(0, "Free ammonia"), 2, "a panel for each plan");
    assert_eq!(panels(1, "Peak free NH₃"), 1);
    let says = |words: &str| drawn[0].labels.iter().any(|label| label.words() == words);
    assert!(says("peak NH₃"));
}

#[test]
fn the_nitrogen_that_is_told_is_that_of_the_ledger() {
    for strategy in &ALL.strategies {
        let nitrogen = Nitrogen::of(&strategy.outcome.run).unwrap();
        let shares: f64 = Sink::ALL.map(|sink| nitrogen.share(sink)).iter().sum();
        assert!((shares - 1.0).abs() < 1e-12, "shares add up: {shares}");
        let gained: f64 = nitrogen.gained_mg.iter().map(|(_, mg)| mg).sum();
        let run = &strategy.outcome.run;
        let soil =
            |r: &firstfill::engine::result::Reading| r.soil_ammonium_mg_n + r.soil_organic_n_mg;
        let shown = run.shown();
        let filled = shown.iter().rfind(|r| r.minute == run.input.filled_at);
        let given = soil(filled.unwrap()) - soil(shown.last().unwrap());
        // what else comes in (refills, feed, doses, a sponge) is little beside it or adds to it
        assert!(
            gained > 0.9 * given,
            "{}: {gained} of {given}",
            strategy.key
        );
    }
}

#[test]
fn what_the_files_say_otherwise_is_listed_from_what_to_what() {
    let cases = ["sixty", "heavy-early-changes"].map(shipped);
    let told = firstfill::analysis::compare::differences::between(&[&cases[0], &cases[1]]);
    let of = |path: &str| {
        let one = told.iter().find(|one| one.path == path);
        one.unwrap_or_else(|| panic!("{path} is not told"))
            .values
            .clone()
    };
    let some = |value: &str| Some(value.to_string());
    assert_eq!(of("changes.early.every"), [some("2"), some("1")]);
    assert_eq!(of("changes.early.days"), [some("1..14"), some("1..7")]);
    assert_eq!(of("changes.next.share"), [None, some("50 %")]);
    assert!(!told.iter().any(|one| one.path == "tank.temperature"));
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
[prices]
tap = "0.01 /L"
dechlorinator = "0.02 /L"
"#;

#[test]
fn cost_is_every_litre_at_its_price_and_dechlorinator_by_what_it_treats() {
    let case = scenario::read_text("tank.toml", TANK).unwrap().case;
    let both = compared(&[("a", &case), ("b", &CASES[0])]);
    let plan = &both.strategies[0];
    let litres = case.input.tank.volume_l + plan.outcome.milestones.litres_changed;
    let told = plan.told().next().unwrap();
    let cost = plan.cost(&told.figures).unwrap();
    let by_hand = 0.03 * (case.input.tank.volume_l + told.figures.litres_changed);
    assert!((cost - by_hand).abs() < 1e-9, "{cost}, {by_hand}: rounding");
    assert!(litres > 100.0);
    let none = both.strategies[1].told().next().unwrap();
    assert_eq!(both.strategies[1].cost(&none.figures), None);
}

#[test]
fn charts_of_two_to_eight_plans_keep_words_apart_and_data_inside() {
    for count in 2..=SHIPPED.len() {
        let drawn = figures(&first(count));
        assert_eq!(drawn.len(), 2);
        drawn.iter().for_each(apart);
        let names: Vec<String> = drawn[0].labels.iter().map(|label| label.words()).collect();
        assert!(names.iter().any(|name| name == "heavy-early-changes"));
    }
}

#[test]
fn charts_bear_odd_names_and_plans_that_are_alike() {
    let odd = ["a <b> & 漢字".to_string(), "endless-".repeat(30)];
    let mut strategies = vec![ALL.strategies[0].clone(), ALL.strategies[0].clone()];
    for (strategy, key) in strategies.iter_mut().zip(odd) {
        strategy.key = key;
    }
    let drawn = figures(&Comparison::between(strategies, COMMON));
    for figure in &drawn {
        let svg = firstfill::output::chart::svg(figure);
        firstfill::output::chart::png(&svg).unwrap();
        apart(figure);
    }
}

/// A room with some scenarios and the program.
fn room(files: &[(&str, String)]) -> TempDir {
    let room = tempfile::tempdir().expect("a temporary folder");
    for (name, text) in files {
        let path = room.path().join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }
    room
}

fn firstfill(room: &TempDir, words: &[&str]) -> Command {
    let mut command = Command::cargo_bin("firstfill").expect("the program");
    command.current_dir(room.path()).args(words);
    command
}

fn weekly() -> String {
    TANK.replace("every = 1", "every = 6")
}

fn refused(files: &[(&str, String)], words: &[&str]) -> String {
    let room = room(files);
    let output = firstfill(&room, words).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(!room.path().join("output").exists(), "nothing is written");
    String::from_utf8(output.stderr).unwrap()
}

#[test]
fn the_command_writes_tables_charts_and_a_manifest_that_repeats_it() {
    let room = room(&[("daily.toml", TANK.into()), ("weekly.toml", weekly())]);
    let words = ["compare", "daily.toml", "weekly.toml", "--members", "20"];
    let output = firstfill(&room, &words).output().unwrap();
    let said = String::from_utf8(output.stdout).unwrap();
    assert!(output.status.success(), "{said}");
    for piece in [
        "changes.early.every: 1 | 6",
        "best B worst A",
        "It never replaces a test",
    ] {
        assert!(said.contains(piece), "{piece} is not in {said}");
    }
    let folder = room.path().join("output/compare-daily-weekly");
    let names = [
        "columns.csv",
        "compare.png",
        "compare.svg",
        "differences.csv",
        "differences.png",
        "differences.svg",
        "effects.csv",
        "manifest.json",
        "members.csv",
        "pairs.csv",
        "table.csv",
    ];
    let mut found: Vec<String> = fs::read_dir(&folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    found.sort();
    assert_eq!(found, names);
    fs::write(room.path().join("daily.toml"), weekly()).unwrap();
    let manifest = folder.join("manifest.json");
    let again = ["compare", manifest.to_str().unwrap(), "--out", "again"];
    firstfill(&room, &again).assert().success();
    for name in names {
        let file = |folder: &Path| fs::read(folder.join(name)).unwrap();
        assert_eq!(file(&folder), file(&room.path().join("again")), "{name}");
    }
    let run = ["run", manifest.to_str().unwrap()];
    let told = firstfill(&room, &run).output().unwrap();
    let told = String::from_utf8(told.stderr).unwrap();
    assert!(told.contains("is of `firstfill compare`"), "{told}");
}

#[test]
fn the_screen_of_two_or_three_plans_tells_every_figure_why_and_in_which_sections_they_differ() {
    // a tall window: figures, pairs, two or three paragraphs, what differs, cautions
    for (count, most) in [(2, 64), (3, 72)] {
        let comparison = first(count);
        let mut page = firstfill::output::text::compare::page(&comparison, Length::Screen);
        let written = Written {
            folder: "output/compare".into(),
            renamed: false,
            replaced: false,
        };
        let files = [
            "table.csv".into(),
            "compare.png".into(),
            "differences.png".into(),
        ];
        closing(&mut page, Path::new("output/compare"), &written, &files);
        let text = anstream::adapter::strip_str(&page.render(100)).to_string();
        let lines = text.lines().count();
        assert!(lines <= most, "{count} plans, {lines} lines:\n{text}");
        for told in [
            "ready day of 50 of 100",
            "peak nitrite",
            "water changed",
            "Why",
            "table.csv",
        ] {
            assert!(text.contains(told), "{told} is not in\n{text}");
        }
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        let untold = [
            "peak nitrate",
            "day of the ammonia peak",
            "day of the nitrite peak",
        ];
        for line in &comparison.lines {
            let is_known = line.values.iter().any(|value| value.middle().is_some());
            let is_told = text.contains(line.short);
            let wanted = is_known && !untold.contains(&line.short);
            assert_eq!(is_told, wanted, "{} in\n{text}", line.short);
        }
        for reason in ["Last to come right was", "of nitrogen given"] {
            assert_eq!(text.matches(reason).count(), count, "{reason} in\n{text}");
        }
        for one in by_section(&comparison.differences) {
            let path = &one[0].path;
            assert!(text.contains(path), "{path} is not in\n{text}");
        }
    }
}

#[test]
fn in_full_every_figure_every_reason_and_every_difference_is_told() {
    let comparison = first(3);
    let page = firstfill::output::text::compare::page(&comparison, Length::Full);
    let one_line = |words: &str| words.split_whitespace().collect::<Vec<_>>().join(" ");
    let text = one_line(&anstream::adapter::strip_str(&page.render(100)).to_string());
    let known = |line: &&Line| line.values.iter().any(|value| value.middle().is_some());
    for line in comparison.lines.iter().filter(known) {
        assert!(
            text.contains(line.short),
            "{} is not in\n{text}",
            line.short
        );
    }
    for place in 0..3 {
        let whole = paragraph(&comparison, place).unwrap();
        assert!(
            text.contains(&one_line(&whole)),
            "{whole} is not in\n{text}"
        );
    }
    for one in &comparison.differences {
        assert!(text.contains(&format!("{}: ", one.path)), "{}", one.path);
    }
    let screen = firstfill::output::text::compare::page(&comparison, Length::Screen);
    let screen = anstream::adapter::strip_str(&screen.render(100)).to_string();
    let more = comparison.differences.len();
    let more = format!("all {more}: --full, differences.csv");
    assert!(screen.contains(&more), "{more} is not in\n{screen}");
}

#[test]
fn why_a_sponge_wins_is_told_by_its_nitrifiers() {
    let plans = ["handover-in-may", "heavy-early-changes"].map(shipped);
    let comparison = compared(&[("handover", &plans[0]), ("heavy", &plans[1])]);
    let [own, other] = [0, 1].map(|place| paragraph(&comparison, place).unwrap());
    assert!(
        own.contains("Mature medium put in on day 1 brought"),
        "{own}"
    );
    assert!(
        own.contains("first keep up with what comes in on day"),
        "{own}"
    );
    assert!(other.contains("No mature medium was put in"), "{other}");
    let given = comparison.strategies.iter().map(|strategy| {
        let nitrogen = Nitrogen::of(&strategy.outcome.run).unwrap();
        format!("{:.2} g", nitrogen.given_mg() / 1000.0)
    });
    for grams in given {
        assert!(own.contains(&grams), "{grams} is not in {own}");
    }
}

#[test]
fn a_table_is_printed_in_the_form_that_is_asked_for() {
    let room = room(&[("a/tank.toml", TANK.into()), ("b/tank.toml", weekly())]);
    let printed = |form: &str, out: &str| {
        let words = [
            "compare",
            "a/tank.toml",
            "b/tank.toml",
            "--no-charts",
            "--members",
            "20",
        ];
        let mut command = firstfill(&room, &words);
        let output = command
            .args(["--format", form, "--out", out])
            .output()
            .unwrap();
        assert!(output.status.success());
        String::from_utf8(output.stdout).unwrap()
    };
    let csv = printed("csv", "x");
    assert_eq!(
        csv,
        fs::read_to_string(room.path().join("x/table.csv")).unwrap()
    );
    let json: serde_json::Value = serde_json::from_str(&printed("json", "y")).unwrap();
    assert_eq!(json["rows"][0]["strategy"], "a-tank");
    assert_eq!(json["rows"][1]["strategy"], "b-tank");
    assert!(json["rows"][0]["water_changed_l"].is_number());
    let markdown = printed("markdown", "z");
    assert!(markdown.starts_with("| strategy"), "{markdown}");
}

#[test]
fn files_of_different_length_are_refused_with_their_lengths() {
    let files = [
        ("short.toml", TANK.to_string()),
        ("long.toml", TANK.replace("length = 12", "length = 20")),
    ];
    insta::assert_snapshot!(refused(&files, &["compare", "short.toml", "long.toml"]));
}

#[test]
fn all_problems_of_all_files_are_told_at_once() {
    let files = [
        ("a.toml", TANK.replace("50 %", "150 %")),
        ("b.toml", TANK.replace("33 cm", "33")),
    ];
    insta::assert_snapshot!(refused(
        &files,
        &["compare", "a.toml", "b.toml", "c.toml", "c.toml"]
    ));
}

#[test]
fn one_file_is_too_few_and_nine_are_too_many() {
    let files = [("a.toml", TANK.to_string())];
    let few = refused(&files, &["compare", "a.toml"]);
    let mut words = vec!["compare"];
    let names: Vec<String> = (0..9).map(|n| format!("{n}.toml")).collect();
    words.extend(names.iter().map(String::as_str));
    let nine: Vec<(&str, String)> = names.iter().map(|n| (n.as_str(), TANK.into())).collect();
    insta::assert_snapshot!(format!("{few}---\n{}", refused(&nine, &words)));
}
