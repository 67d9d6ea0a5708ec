//! The charts, asserted on their plain figures and on what they look like as files.

#[path = "support/synthetic.rs"]
mod synthetic;

use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use firstfill::analysis::case::Case;
use firstfill::analysis::milestones::Milestones;
use firstfill::analysis::outcome::Outcome;
use firstfill::analysis::ready::{Ready, Verdict};
use firstfill::base::clock::DAY;
use firstfill::engine::result::RunResult;
use firstfill::model::conserved::{Flux, Quantity};
use firstfill::output::chart::fonts::FAMILY;
use firstfill::output::chart::rect::Rect;
use firstfill::output::chart::style::LEAST;
use firstfill::output::chart::{Figure, figures, png, svg};

use synthetic::{Invented, Knobs};

/// The cases that have broken charts before, or could.
fn cases() -> Vec<(&'static str, Knobs)> {
    let with = Knobs::default;
    vec![
        ("usual", with()),
        (
            "week",
            Knobs {
                last_day: 7,
                ..with()
            },
        ),
        (
            "long",
            Knobs {
                last_day: 120,
                ..with()
            },
        ),
        (
            "undated",
            Knobs {
                dated: false,
                filled_at: 0,
                ..with()
            },
        ),
        (
            "no-changes",
            Knobs {
                changes: vec![],
                away: vec![],
                ..with()
            },
        ),
        (
            "bare",
            Knobs {
                gas: false,
                plants: false,
                lit: false,
                air_from: None,
                steps: false,
                ..with()
            },
        ),
        (
            "no-soil",
            Knobs {
                soil: false,
                ..with()
            },
        ),
        (
            "stuck",
            Knobs {
                growth: 0.02,
                changes: vec![],
                ..with()
            },
        ),
        (
            "zero",
            Knobs {
                soil: false,
                plants: false,
                scale: 0.0,
                kh: 0.0,
                growth: 0.0,
                ..with()
            },
        ),
        (
            "extreme",
            Knobs {
                scale: 60.0,
                still: 0.02,
                kh: 20.0,
                ..with()
            },
        ),
        (
            "odd-names",
            Knobs {
                step_name: "light.steps.漢字 <b>&",
                ..with()
            },
        ),
        (
            "airy",
            Knobs {
                air_from: Some(0),
                still: 1.0,
                ..with()
            },
        ),
    ]
}

/// The charts of an invented run: the worst night, the day of filling and the last day among them.
fn charts(invented: &Invented) -> Vec<Figure> {
    let (run, case) = (&invented.run, &invented.case);
    drawn(run, case, &invented.milestones, &invented.verdict)
}

fn drawn(run: &RunResult, case: &Case, milestones: &Milestones, verdict: &Verdict) -> Vec<Figure> {
    let last = run.input.last_day;
    let worst = (milestones.oxygen_low.minute / DAY).min(last);
    let mut days = vec![worst, 0, last];
    days.sort();
    days.dedup();
    figures(run, case, milestones, verdict, &days)
}

/// Scenarios of the repository, whatever there is.
fn shipped() -> Vec<PathBuf> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let folders = [root.join("scenarios"), root.join("tests/scenarios")];
    let mut files: Vec<PathBuf> = folders
        .iter()
        .filter_map(|folder| std::fs::read_dir(folder).ok())
        .flatten()
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| path.extension().is_some_and(|e| e == "toml"))
        .collect();
    files.sort();
    files
}

/// Every chart of every invented and every shipped run, made once.
static ALL: LazyLock<Vec<(String, Figure)>> = LazyLock::new(|| {
    let mut all = Vec::new();
    for (name, knobs) in cases() {
        all.extend(
            charts(&knobs.invent())
                .into_iter()
                .map(|f| (name.to_string(), f)),
        );
    }
    for path in shipped() {
        let loaded = firstfill::scenario::load(&path)
            .unwrap_or_else(|problems| panic!("{}", problems.render(false)));
        let case = &loaded.case;
        let outcome = Outcome::of(case).unwrap();
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        let figures = drawn(&outcome.run, case, &outcome.milestones, &outcome.verdict);
        all.extend(figures.into_iter().map(|f| (name.clone(), f)));
    }
    all
});

/// Draws every chart into a folder, for looking:
/// `LOOK=pictures cargo test --test charts look -- --ignored`; `ONLY=weeks` draws fewer.
#[test]
#[ignore = "for looking, not for judging"]
fn look() {
    let folder = std::env::var("LOOK").expect("set LOOK to a folder");
    let only = std::env::var("ONLY").unwrap_or_default();
    std::fs::create_dir_all(&folder).unwrap();
    for (name, figure) in ALL.iter() {
        let file = format!("{name}-{}", figure.name);
        if file.contains(&only) {
            let text = svg(figure);
            std::fs::write(format!("{folder}/{file}.svg"), &text).unwrap();
            std::fs::write(format!("{folder}/{file}.png"), png(&text).unwrap()).unwrap();
        }
    }
}

/// Runs a check on every chart of every case and lists all that fail.
fn every_chart(check: impl Fn(&Figure) -> Vec<String>) {
    let mut wrong = Vec::new();
    for (name, figure) in ALL.iter() {
        let faults = check(figure);
        wrong.extend(
            faults
                .into_iter()
                .map(|f| format!("{name}/{}: {f}", figure.name)),
        );
    }
    assert!(
        wrong.is_empty(),
        "{} faults:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}

#[test]
fn no_two_words_overlap() {
    every_chart(|figure| {
        let labels = &figure.labels;
        let mut faults = Vec::new();
        for (n, a) in labels.iter().enumerate() {
            let hit = labels[n + 1..].iter().find(|b| a.space.overlaps(&b.space));
            faults.extend(hit.map(|b| format!("“{}” on “{}”", a.words(), b.words())));
        }
        faults
    });
}

#[test]
fn no_words_are_left_out_for_want_of_room() {
    every_chart(|figure| figure.left_out.clone());
}

#[test]
fn no_words_lie_on_a_curve() {
    every_chart(|figure| {
        let curves: Vec<_> = figure.panels.iter().flat_map(|p| p.curves()).collect();
        let labels = figure.labels.iter();
        labels
            .filter(|l| curves.iter().any(|c| l.space.is_on(c)))
            .map(|l| format!("“{}” lies on a curve", l.words()))
            .collect()
    });
}

#[test]
fn every_value_lies_inside_its_axes() {
    every_chart(|figure| {
        let panels = figure.panels.iter().enumerate();
        panels
            .flat_map(|(n, panel)| {
                let values = panel.values();
                let inside = |p: &&(f64, f64)| !(panel.across.holds(p.0) && panel.up.holds(p.1));
                let outside: Vec<_> = values.iter().filter(inside).copied().collect();
                outside
                    .first()
                    .map(|p| format!("panel {n}: {p:?} and {} in all", outside.len()))
            })
            .collect()
    });
}

#[test]
fn all_words_are_on_the_page() {
    // 8 mm margins are part of the print; on the page itself nothing may touch the edge
    let page = Rect::new(4.0, 4.0, 1196.0, 896.0);
    every_chart(|figure| {
        let labels = figure.labels.iter();
        labels
            .filter(|l| !page.holds(&l.space))
            .map(|l| format!("“{}” at {:?}", l.words(), l.space))
            .collect()
    });
}

#[test]
fn the_smallest_words_can_be_read_on_a_postcard() {
    // 2 mm em height on A5 landscape (210 mm) inside 8 mm margins: 2 * 1200 / 194 = 12.4 px
    every_chart(|figure| {
        let spans = figure.labels.iter().flat_map(|l| &l.spans);
        spans
            .filter(|s| s.size < LEAST)
            .map(|s| format!("“{}” is {} px", s.text, s.size))
            .collect()
    });
}

#[test]
fn every_character_has_a_glyph_in_its_face() {
    every_chart(|figure| {
        let spans = figure.labels.iter().flat_map(|l| &l.spans);
        spans
            .filter(|s| s.text.chars().any(|c| !s.face.draws(c)))
            .map(|s| s.text.clone())
            .collect()
    });
}

#[test]
fn every_family_is_ours() {
    let invented = Knobs::default().invent();
    for figure in charts(&invented) {
        let text = svg(&figure);
        for part in text.split("font-family=\"").skip(1) {
            assert!(part.starts_with(&format!("{FAMILY}\"")), "{}", &part[..40]);
        }
        assert!(text.contains("font-face{font-family:Inter"));
    }
}

#[test]
fn drawing_twice_gives_the_same_bytes() {
    let [one, two] = [(); 2].map(|()| charts(&Knobs::default().invent()));
    assert_eq!(one, two);
    for (a, b) in one.iter().zip(&two).take(2) {
        let (a, b) = (svg(a), svg(b));
        assert_eq!(a, b);
        assert_eq!(png(&a).unwrap(), png(&b).unwrap());
    }
}

#[test]
fn a_run_has_six_charts_and_one_per_asked_day() {
    let invented = Knobs::default().invent();
    let (run, case) = (&invented.run, &invented.case);
    let (milestones, verdict) = (&invented.milestones, &invented.verdict);
    let names = |days: &[u32]| -> Vec<String> {
        let all = figures(run, case, milestones, verdict, days);
        all.into_iter().map(|f| f.name).collect()
    };
    assert_eq!(
        names(&[8, 56]),
        [
            "weeks",
            "nights",
            "day-08",
            "day-56",
            "alkalinity",
            "capacity",
            "nitrogen"
        ]
    );
    assert_eq!(names(&[57]).len(), 5, "day 57 is not in the run");
}

#[test]
fn titles_and_sentences_fit_on_their_lines() {
    every_chart(|figure| {
        let cut = [&figure.title, &figure.sentence];
        let cut = cut.into_iter().filter(|words| words.ends_with('…'));
        cut.cloned().collect()
    });
}

#[test]
fn the_title_of_the_weeks_says_the_verdict() {
    for (name, knobs) in cases() {
        let invented = knobs.invent();
        let title = charts(&invented)[0].title.clone();
        let said = match invented.verdict.ready {
            Ready::Day(day) => title.contains(&format!("Ready from day {day}")),
            Ready::QuietNotRipe { day, .. } => {
                title.contains(&format!("Quiet from day {day}")) && title.contains("not shown")
            }
            Ready::LaterThan(day) => title.contains(&format!("Not ready by day {day}")),
        };
        assert!(said, "{name}: {title} against {:?}", invented.verdict.ready);
    }
}

#[test]
fn what_is_talked_about_is_marked_where_it_is() {
    let invented = Knobs::default().invent();
    let weeks = &charts(&invented)[0];
    let peak = invented.milestones.tan_peak;
    let mark = weeks.panels[0].marks[0].at;
    assert_eq!(mark, (f64::from(peak.minute) / f64::from(DAY), peak.value));
    let words: Vec<String> = weeks.labels.iter().map(|l| l.words()).collect();
    assert!(words.contains(&format!("{:.1}, day {}", peak.value, peak.minute / DAY)));
}

#[test]
fn the_layers_of_nitrogen_miss_none_of_it() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let loaded = firstfill::scenario::load(&root.join("tests/scenarios/whole.toml"))
        .unwrap_or_else(|problems| panic!("{}", problems.render(false)));
    let outcome = Outcome::of(&loaded.case).unwrap();
    let (milestones, verdict) = (&outcome.milestones, &outcome.verdict);
    let charts = figures(&outcome.run, &loaded.case, milestones, verdict, &[]);
    let panel = &charts.last().unwrap().panels[0];
    let drawn = panel.areas.last().unwrap().upper.last().unwrap().1;
    // what is in the tank and what left it, by the books of the run
    let account = outcome.run.ledger.of(Quantity::Nitrogen);
    let left = [
        Flux::RemovedByChanges,
        Flux::RemovedByCare,
        Flux::NitrogenGas,
    ];
    let expected = account.now - left.map(|flux| account.by(flux)).iter().sum::<f64>();
    // readings are rounded nowhere: what differs is the order of sums, 1e-9 of some grams; layers
    // under half a milligram are left out
    assert!(
        (drawn - expected).abs() < 0.5,
        "{drawn} drawn, {expected} in the books"
    );
}

#[test]
fn a_file_that_leaves_home_carries_its_faces_and_its_words() {
    let invented = Knobs::default().invent();
    let figure = &charts(&invented)[0];
    let text = svg(figure);
    assert_eq!(text.matches("data:font/woff2;base64,").count(), 2);
    assert!(text.contains(&format!("<title>{}</title>", figure.title)));
    assert!(text.contains("<desc>") && text.contains("total ammonia between"));
}

#[test]
fn a_name_in_another_script_leaves_a_trace_and_does_no_harm() {
    let knobs = Knobs {
        step_name: "light.steps.漢字 <b>&",
        ..Knobs::default()
    };
    let text = svg(&charts(&knobs.invent())[0]);
    assert!(text.contains("light: ?? &lt;b&gt;&amp;"));
    assert!(png(&text).is_ok());
}

#[test]
fn the_picture_has_two_pixels_for_each_of_the_page() {
    let invented = Knobs::default().invent();
    let bytes = png(&svg(&charts(&invented)[0])).unwrap();
    // width and height stand at bytes 16 to 23 of every PNG, most significant byte first
    let number = |at: usize| u32::from_be_bytes(bytes[at..at + 4].try_into().unwrap());
    assert_eq!((number(16), number(20)), (2400, 1800));
}
