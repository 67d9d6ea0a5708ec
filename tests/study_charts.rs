//! Charts and words of studies: no word on another or off the page, numbers of the tables, sentences that facts move.

#[path = "support/apart.rs"]
mod apart;
mod support;

use anstream::adapter::strip_str;
use apart::{all_words_are_drawn, words_apart};
use firstfill::analysis::study::Study;
use firstfill::analysis::study::findings::Findings;
use firstfill::analysis::study::findings::index::Kind;
use firstfill::analysis::study::findings::lead::{Footing, Lead};
use firstfill::analysis::study::findings::regions::DRAWN;
use firstfill::analysis::study::input::Spread;
use firstfill::analysis::study::method::{By, Method};
use firstfill::analysis::uncertain::shape::{Measure, Shape};
use firstfill::base::stop::Stop;
use firstfill::base::units::converted::Converted;
use firstfill::output::chart::axis::Scale;
use firstfill::output::chart::figure::Label;
use firstfill::output::chart::study::figures;
use firstfill::output::chart::{Figure, png, svg};
use firstfill::output::rows::results::Results;
use firstfill::output::study::entries::{entries, tables};
use firstfill::output::study::verdict;
use firstfill::output::study::{Story, indices};
use firstfill::output::table::Form;
use firstfill::output::text::{WIDEST, study::page};
use support::study::{like_a_tank, of_invented};

const MILESTONES: [&str; 4] = [
    "ready_day",
    "nitrite_peak_mg_n_per_l",
    "tan_peak_mg_n_per_l",
    "nitrate_end_mg_n_per_l",
];

const SHARES: Method = Method::Variance {
    second_order: false,
    by: By::Input,
};

/// More than have a line, one of which a few runs carry, and one that never changes.
const MANY: [&str; 9] = [
    "free_ammonia_peak_mg_n_per_l",
    "ready_day",
    "water_changed_l",
    "ready_by",
    "tan_peak_mg_n_per_l",
    "nitrite_peak_mg_n_per_l",
    "nitrate_end_mg_n_per_l",
    "nitrate_peak_mg_n_per_l",
    "oxygen_low_mg_per_l",
];

/// Studies that could break a layout: every method, late tanks, few members, nothing that moves.
fn odd() -> Vec<(&'static str, Study, Findings)> {
    let pairs = Method::Variance {
        second_order: true,
        by: By::Input,
    };
    let groups = Method::Variance {
        second_order: false,
        by: By::Group,
    };
    let levels = Method::Trajectories { levels: 4 };
    let all = [
        ("shares", SHARES, 1024, 0.0),
        ("shares-late", SHARES, 256, 30.0),
        ("shares-few", SHARES, 16, 0.0),
        ("pairs", pairs, 256, 0.0),
        ("groups", groups, 1024, 0.0),
        ("effects", levels, 100, 0.0),
        ("effects-few", levels, 4, 0.0),
        ("points", Method::Points, 4096, 10.0),
        ("points-late", Method::Points, 1024, 90.0),
        ("points-few", Method::Points, 64, 0.0),
        ("shares-late-few", SHARES, 16, 35.0),
        ("groups-late", groups, 256, 35.0),
        ("never", Method::OneAtATime, 9, 90.0),
        ("one-at-a-time", Method::OneAtATime, 9, 0.0),
    ];
    let studied = |(name, method, members, later): (&'static str, Method, usize, f64)| {
        let study = like_a_tank(method, members, &MILESTONES);
        let study = match method {
            Method::OneAtATime => return walked(name, study, later),
            _ => study,
        };
        let findings = of_invented(&study, later);
        (name, study, findings)
    };
    let many = |name, method, members| {
        let study = like_a_tank(method, members, &MANY);
        let findings = of_invented(&study, 0.0);
        (name, study, findings)
    };
    let of_many = [
        many("few-runs", SHARES, 2048),
        many("many-effects", levels, 100),
    ];
    all.into_iter().map(studied).chain(of_many).collect()
}

/// One at a time, laid out by hand: step by step, input by input.
fn walked(name: &'static str, study: Study, later: f64) -> (&'static str, Study, Findings) {
    use firstfill::analysis::study::Row;
    use firstfill::analysis::study::findings::Gathering;
    let mut gathering = Gathering::new(&study);
    let inputs = study.inputs.len();
    for number in 0..study.rows() {
        let (step, input) = (number as usize / inputs, number as usize % inputs);
        let mut places = vec![0.5; inputs];
        places[input] = 0.05 + 0.9 * step as f64 / (study.members - 1) as f64;
        let outputs = Some(support::study::invented(&study, &places, later));
        gathering.take(&Row {
            number,
            places,
            outputs,
        });
    }
    let findings = gathering.findings();
    (name, study, findings)
}

fn story<'a>(study: &'a Study, findings: &'a Findings) -> Story<'a> {
    Story {
        name: "what matters in an invented tank",
        study,
        findings,
    }
}

fn drawn() -> Vec<(&'static str, Figure)> {
    let all = odd();
    let figures = all.iter().flat_map(|(name, study, findings)| {
        figures(&story(study, findings))
            .into_iter()
            .map(move |figure| (*name, figure))
    });
    figures.collect()
}

#[test]
fn no_word_lies_on_another_or_off_the_page() {
    for (name, figure) in drawn() {
        let name = format!("{name} {}", figure.name);
        words_apart(&name, &figure);
        all_words_are_drawn(&name, &figure);
    }
}

#[test]
fn everything_drawn_lies_within_its_axes() {
    for (name, figure) in drawn() {
        for panel in &figure.panels {
            for (x, y) in panel.values() {
                let inside = panel.across.holds(x) && panel.up.holds(y);
                assert!(inside, "{name} {} {}: {x} {y}", figure.name, panel.title);
            }
        }
    }
}

#[test]
fn each_method_has_its_charts() {
    let drawn = drawn();
    let names = |wanted: &str| -> Vec<&str> {
        let of = drawn.iter().filter(|(name, _)| *name == wanted);
        of.map(|(_, figure)| figure.name.as_str()).collect()
    };
    let shares = names("shares");
    for wanted in ["shares-ready_day", "scatter", "regions", "convergence"] {
        assert!(shares.contains(&wanted), "{shares:?}");
    }
    assert!(
        names("shares-late").contains(&"ranks-ready_day"),
        "{:?}",
        names("shares-late")
    );
    assert!(names("effects").contains(&"effects-ready_day"));
    assert!(names("points").contains(&"ranks-ready_day"));
    assert!(names("one-at-a-time").contains(&"ranges-ready_day"));
}

#[test]
fn the_title_names_the_strongest_with_the_number_of_the_table() {
    let (_, study, findings) = odd().swap_remove(0);
    let story = story(&study, &findings);
    let figure = figures(&story).swap_remove(0);
    let csv = indices::table(&story).written(Form::Csv).unwrap();
    let of = |kind: &str| -> Vec<(String, f64)> {
        let start = format!("ready_day,variance,{kind},");
        let rows = csv.lines().filter_map(|line| line.strip_prefix(&start));
        rows.map(|rest| {
            let cells: Vec<&str> = rest.split(',').collect();
            (cells[0].to_string(), cells[4].parse().unwrap())
        })
        .collect()
    };
    let total = of("total");
    let strongest = total.iter().max_by(|a, b| a.1.total_cmp(&b.1)).unwrap();
    assert_eq!(strongest.0, "mu_NOB");
    let first = of("first")
        .into_iter()
        .find(|(input, _)| *input == strongest.0);
    let wanted = format!("{:.0} %", 100.0 * first.unwrap().1);
    let title = &figure.title;
    assert!(
        title.contains("growth of nitrite oxidisers") && title.contains(&wanted),
        "{title}"
    );
}

#[test]
fn an_input_is_drawn_in_the_unit_its_range_is_written_in_and_a_share_along_an_even_axis() {
    let mut study = like_a_tank(Method::Points, 400, &["ready_day"]);
    // as strong as the growth of nitrite oxidisers and the first films
    for (at, unit, spelling, range, measure) in [
        (0, "meq/L", "dKH", (1.0, 2.0), Measure::Amount),
        (1, "1", "%", (0.1, 0.6), Measure::Share),
    ] {
        let input = &mut study.inputs[at];
        input.unit = unit.into();
        input.spread = Spread::Shape(Shape::of_range(range.0, range.1, measure));
        input.shown = Converted::between(unit, spelling);
    }
    let findings = of_invented(&study, 0.0);
    let drawn = figures(&story(&study, &findings));
    for name in ["scatter", "regions"] {
        let figure = drawn.iter().find(|figure| figure.name == name).unwrap();
        let says = |words: &str| figure.labels.iter().any(|label| label.words() == words);
        assert!(says("dKH") && says("%"), "{name}");
        let reaches = |at: usize| {
            let input = &study.inputs[at];
            let high = input.shown(input.at(DRAWN[1]));
            let panels = figure.panels.iter().map(|panel| &panel.across);
            panels
                .filter(|across| across.high == high)
                .map(|across| across.scale)
                .next()
        };
        assert_eq!(reaches(0), Some(Scale::Even), "{name}");
        assert_eq!(reaches(1), Some(Scale::Even), "{name}");
    }
}

#[test]
fn tables_hold_every_number_and_their_columns() {
    for (name, study, findings) in odd() {
        let story = story(&study, &findings);
        for table in tables(&story) {
            let csv = table.written(Form::Csv).unwrap();
            let columns = table.heads.len();
            assert!(
                table.rows.iter().all(|row| row.len() == columns),
                "{name} {}",
                table.file
            );
            assert!(
                !csv.contains("NaN") && !csv.contains("inf"),
                "{name} {}",
                table.file
            );
        }
        let told: usize = findings.found.iter().map(|found| found.indices.len()).sum();
        assert_eq!(indices::table(&story).rows.len(), told, "{name}");
    }
}

#[test]
fn the_screen_is_one_and_ends_in_the_verdict() {
    for (name, study, findings) in odd() {
        let text = strip_str(&page(&story(&study, &findings)).render(WIDEST)).to_string();
        let lines: Vec<&str> = text.trim_end().lines().collect();
        assert!(lines.len() <= 44, "{name}: {} lines\n{text}", lines.len());
        assert!(
            lines.iter().all(|line| line.chars().count() <= WIDEST),
            "{name}\n{text}"
        );
        assert!(
            text.contains("Matter") && text.contains("But "),
            "{name}\n{text}"
        );
    }
}

#[test]
fn the_verdict_changes_when_the_facts_do() {
    let said = |wanted: &str| {
        let all = odd();
        let (_, study, findings) = all.iter().find(|(name, ..)| *name == wanted).unwrap();
        verdict::text(&story(study, findings))
    };
    let [early, late] = ["shares", "shares-late"].map(said);
    assert!(!early.contains("ranks and distances lead"), "{early}");
    assert!(
        late.contains("of 100 runs are not ready by day 56")
            && late.contains("ranks and distances lead"),
        "{late}"
    );
    assert!(
        said("shares-few").contains("would take about"),
        "{}",
        said("shares-few")
    );
    assert!(said("pairs").contains(" with "), "{}", said("pairs"));
}

#[test]
fn what_is_said_to_lead_is_what_leads() {
    let mut met = Vec::new();
    for (name, study, findings) in odd() {
        let story = story(&study, &findings);
        let (main, screen) = (
            &findings.found[0],
            strip_str(&page(&story).render(WIDEST)).to_string(),
        );
        let screen = screen.split_whitespace().collect::<Vec<_>>().join(" ");
        let names: Vec<String> = figures(&story).into_iter().map(|one| one.name).collect();
        let has = |stem: &str| names.contains(&format!("{stem}-{}", main.milestone.name));
        let Some(Lead { kind, footing }) = main.lead() else {
            continue;
        };
        met.push(footing);
        let says = |words: &str| screen.contains(words);
        match footing {
            Footing::Own => assert!(!says(" lead here"), "{name}\n{screen}"),
            Footing::Ranks => assert!(
                has("ranks") && says("distance rank rank, 95 of 100 times"),
                "{name} {names:?}\n{screen}"
            ),
            Footing::Distances => assert!(
                kind == Kind::Pawn && has("distances") && says("distances lead here"),
                "{name} {names:?}\n{screen}"
            ),
            Footing::Care => assert!(
                !says(" lead here") && (says("read them with care") || says("nothing can be told")),
                "{name}\n{screen}"
            ),
        }
    }
    for footing in [Footing::Own, Footing::Ranks, Footing::Care] {
        assert!(met.contains(&footing), "{footing:?} in {met:?}");
    }
}

#[test]
fn what_the_tanks_ready_by_a_day_have_in_common_is_told_in_words() {
    use firstfill::output::study::ready::in_common;
    let mut study = like_a_tank(Method::Points, 2000, &["ready_day"]);
    let findings = of_invented(&study, 0.0);
    let regions = findings.regions.as_ref().unwrap();
    let words = in_common(&story(&study, &findings)).unwrap();
    let percent = 100.0 * regions.rows[0] as f64 / 2000.0;
    let start = format!("of 2000 runs {percent:.0} of 100 are ready by day 28, without animals.");
    assert!(words.starts_with(&start), "{words}");
    assert!(words.contains("the middle of fastest growth of nitrite oxidisers"));
    // the way of starting by the names of its tanks
    study.inputs[24].name = "scenario".into();
    study.inputs[24].words = "scenario".into();
    study.inputs[24].spread =
        Spread::Settings(["bare", "planted", "seeded"].map(Into::into).into());
    let findings = {
        use firstfill::analysis::study::Row;
        use firstfill::analysis::study::findings::Gathering;
        let mut gathering = Gathering::new(&study);
        for number in 0..study.rows() {
            let places = study.places(number);
            let outputs = Some(vec![if places[24] > 2.0 / 3.0 { 20.0 } else { 40.0 }]);
            gathering.take(&Row {
                number,
                places,
                outputs,
            });
        }
        gathering.findings()
    };
    let words = in_common(&story(&study, &findings)).unwrap();
    assert!(
        words.ends_with("Of those ready by day 28, 100 of 100 are seeded, of the others 0"),
        "{words}"
    );
    let screen = strip_str(&page(&story(&study, &findings)).render(WIDEST)).to_string();
    assert!(screen.contains("In common"), "{screen}");
    let regions = figures(&story(&study, &findings))
        .into_iter()
        .find(|figure| figure.name == "regions")
        .unwrap();
    assert_eq!(regions.title, "Tanks ready by day 28 are more often seeded");
}

#[test]
fn shares_larger_alone_than_in_all_are_rough() {
    use firstfill::output::study::sureness::is_rough;
    assert!(is_rough(0.06, 0.02) && is_rough(0.9, 1.1));
    assert!(!is_rough(0.31, 0.30) && !is_rough(0.002, -0.004));
}

#[test]
fn a_variance_that_a_few_runs_carry_is_told_and_not_ranked_by() {
    let all = odd();
    let (_, study, findings) = all.iter().find(|(name, ..)| *name == "few-runs").unwrap();
    let story = story(study, findings);
    let tail = findings.found[0].carried_by_few().unwrap();
    let share = format!("{:.0} % of the variance", 100.0 * tail.share);
    let few = format!("{} of {} runs", tail.runs, tail.of);
    let verdict = verdict::text(&story);
    let screen = strip_str(&page(&story).render(WIDEST)).to_string();
    let screen = screen.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in [&verdict, &screen] {
        assert!(
            words.contains(&few) && words.contains(&format!("carry {share}")),
            "{words}"
        );
        assert!(words.contains("shares of it hang"), "{words}");
        assert!(words.contains("method = \"latin\""), "{words}");
    }
    let convergence = figures(&story).pop().unwrap();
    assert_eq!(convergence.name, "convergence");
    let notes: Vec<String> = convergence.labels.iter().map(Label::words).collect();
    let notes = notes.join(" ");
    for words in [
        &format!("of peak free NH₃ {few} hold {share}"),
        "water changed: nothing moves it",
        "there is room for 7 lines",
    ] {
        assert!(notes.contains(words), "{words}\n{notes}");
    }
    // and of the other milestones none of it is said
    let other = verdict.split("Ready day, without animals:").nth(1).unwrap();
    assert!(!other.contains("carry"), "{other}");
}

#[test]
fn a_choice_is_told_where_a_number_hangs_on_the_order_of_its_settings() {
    for (name, study, findings) in odd() {
        let words = verdict::text(&story(&study, &findings));
        let hangs = "hang on the order in which the study lists the settings";
        let told = words.contains(&format!(
            "share of water changed early on (changes.early.share) is a choice: its ranks {hangs}"
        ));
        let found = &findings.found;
        let leading = found.iter().filter_map(|found| Some(found.lead()?.kind));
        let ranks_lead = leading.into_iter().any(|kind| kind == Kind::Rank);
        assert_eq!(told, ranks_lead, "{name}\n{words}");
        let csv = indices::table(&story(&study, &findings))
            .written(Form::Csv)
            .unwrap();
        let is = |input: &str| {
            let row = csv
                .lines()
                .find(|row| row.contains(&format!(",{input},")))
                .unwrap();
            row.rsplit(',').next().unwrap().to_string()
        };
        assert_eq!(is("mu_NOB"), "quantity", "{name}");
        assert_eq!(is("changes.early.share"), "choice", "{name}");
        if name == "groups" {
            assert_eq!(is("soil"), "group");
        }
    }
}

#[test]
fn what_leads_is_of_the_late_study_a_rank() {
    let (_, _, findings) = odd().swap_remove(1);
    assert_eq!(findings.found[0].lead().unwrap().kind, Kind::Rank);
    assert!(findings.found[0].of(Kind::Total).next().is_some());
}

#[test]
fn all_files_are_there_without_charts_too() {
    let (_, study, findings) = odd().swap_remove(2);
    let files = entries(
        &story(&study, &findings),
        Results::of(&study).table(),
        false,
        &Stop::default(),
    )
    .unwrap();
    let names: Vec<&str> = files.iter().map(|file| file.name.as_str()).collect();
    assert_eq!(
        names,
        [
            "indices.csv",
            "convergence.csv",
            "regions.csv",
            "columns.csv",
            "verdict.txt"
        ]
    );
}

/// Draws and prints every odd study, for looking: `LOOK=pictures cargo test --test study_charts look -- --ignored`.
#[test]
#[ignore = "for looking, not for judging"]
fn look() {
    let folder = std::env::var("LOOK").expect("set LOOK to a folder");
    std::fs::create_dir_all(&folder).unwrap();
    for (name, study, findings) in odd() {
        let story = story(&study, &findings);
        let screen = strip_str(&page(&story).render(WIDEST)).to_string();
        std::fs::write(
            format!("{folder}/{name}.txt"),
            screen + "\n\n" + &verdict::text(&story),
        )
        .unwrap();
        for figure in figures(&story) {
            let path = format!("{folder}/{name}-{}.png", figure.name);
            std::fs::write(path, png(&svg(&figure)).unwrap()).unwrap();
        }
    }
}
