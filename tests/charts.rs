//! The charts, asserted on their plain figures and on what they look like as files.

#[path = "support/synthetic.rs"]
mod synthetic;

use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use firstfill::analysis::case::Case;
use firstfill::analysis::charted;
use firstfill::analysis::ensemble::curve::ReadyCurve;
use firstfill::analysis::ensemble::days::Of;
use firstfill::analysis::forecast::{Forecast, Making, USUAL_MEMBERS};
use firstfill::analysis::milestones::Milestones;
use firstfill::analysis::outcome::Outcome;
use firstfill::analysis::ready::{OxidationStep, Ready, Ripening, Waiting};
use firstfill::base::clock::DAY;
use firstfill::base::stop::Stop;
use firstfill::engine::close_ups::CloseUps;
use firstfill::engine::result::RunResult;
use firstfill::model::conserved::{Flux, Quantity};
use firstfill::output::chart::figure::{Form, Shape};
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
    let days = drawn_days(run, &invented.milestones);
    figures(
        run,
        case,
        &invented.milestones,
        &invented.verdict,
        None,
        &days,
    )
}

fn drawn_days(run: &RunResult, milestones: &Milestones) -> Vec<u32> {
    let last = run.input.last_day;
    let worst = (milestones.oxygen_low.minute / DAY).min(last);
    let mut days = vec![worst, 0, last];
    days.sort();
    days.dedup();
    days
}

fn figures_of(outcome: &Outcome, case: &Case, forecast: Option<&Forecast>) -> Vec<Figure> {
    let days = drawn_days(&outcome.run, &outcome.milestones);
    let (milestones, verdict) = (&outcome.milestones, &outcome.verdict);
    figures(&outcome.run, case, milestones, verdict, forecast, &days)
}

/// A run looked at as closely as one that is drawn.
fn outcome_of(case: &Case) -> Outcome {
    let mut outcome = Outcome::of(case).unwrap();
    let days = drawn_days(&outcome.run, &outcome.milestones);
    let closely = CloseUps::none().of_days(&days, 5);
    outcome.look_closely(case, &closely).unwrap();
    outcome
}

/// Few members are enough to judge where words and bands go; for looking there are as many as in use.
fn members() -> usize {
    match std::env::var_os("LOOK") {
        Some(_) => USUAL_MEMBERS,
        None => 24,
    }
}

fn forecast_of(outcome: &Outcome, case: &Case) -> Forecast {
    let making = Making {
        members: members(),
        seed: 1,
        drawn_days: &drawn_days(&outcome.run, &outcome.milestones),
    };
    Forecast::of(case, making, &Stop::default(), |_, _| {}).unwrap()
}

fn loaded(path: &Path) -> Case {
    let loaded = firstfill::scenario::load(path);
    loaded
        .unwrap_or_else(|problems| panic!("{}", problems.render(false)))
        .case
}

/// A shipped scenario with its forecast.
fn forecast_shipped(name: &str) -> (Case, Outcome, Forecast) {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let case = loaded(&root.join(format!("scenarios/{name}.toml")));
    let outcome = outcome_of(&case);
    let forecast = forecast_of(&outcome, &case);
    (case, outcome, forecast)
}

/// What members wait for, of every kind.
fn every_reason() -> Vec<Option<Waiting>> {
    let limits = Ripening::ALL.map(|limit| Some(Waiting::Limit(limit)));
    let steps = OxidationStep::BOTH.map(|step| Some(Waiting::Capacity(step)));
    let animals = Ripening::ALL.map(|limit| Some(Waiting::WithAnimals(limit)));
    limits
        .into_iter()
        .chain(steps)
        .chain(animals)
        .chain([None])
        .collect()
}

/// The same members with other ready days and reasons, and the curve they make.
fn judged_otherwise(
    forecast: &Forecast,
    day: impl Fn(usize) -> Option<u32>,
    reasons: &[Option<Waiting>],
) -> Forecast {
    let mut other = forecast.clone();
    for member in &mut other.ensemble.members {
        let ready = &mut member.told.as_mut().unwrap().ready;
        ready.day = day(member.number);
        ready.waited_for = reasons[member.number % reasons.len()];
    }
    other.curve = ReadyCurve::of(&other.ensemble.members, forecast.curve.last_day);
    other
}

/// Forecasts of every kind of answer: never, at once, spread out, just short of 90 of 100.
fn odd_forecasts(forecast: &Forecast) -> Vec<(&'static str, Forecast)> {
    let all = every_reason();
    let nitrite = [Some(Waiting::Limit(Ripening::Nitrite))];
    let other = |day: &dyn Fn(usize) -> Option<u32>, reasons: &[Option<Waiting>]| {
        judged_otherwise(forecast, day, reasons)
    };
    vec![
        ("never", other(&|_| None, &all)),
        ("one", other(&|n| (n == 0).then_some(55), &nitrite)),
        ("at-once", other(&|_| Some(0), &[None])),
        ("one-day", other(&|_| Some(31), &nitrite)),
        ("last-day", other(&|n| (n < 12).then_some(56), &all)),
        ("spread", other(&|n| Some(2 * n as u32), &all)),
        (
            "nearly",
            other(&|n| (n < 21).then_some(30 + n as u32), &all),
        ),
    ]
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
        let case = loaded(&path);
        let outcome = outcome_of(&case);
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        let figures = figures_of(&outcome, &case, None);
        all.extend(figures.into_iter().map(|f| (name.clone(), f)));
        let forecast = forecast_of(&outcome, &case);
        let figures = figures_of(&outcome, &case, Some(&forecast));
        all.extend(figures.into_iter().map(|f| (format!("{name}-forecast"), f)));
    }
    let (case, outcome, forecast) = forecast_shipped("sixty");
    for (name, odd) in odd_forecasts(&forecast) {
        let figures = figures_of(&outcome, &case, Some(&odd));
        all.extend(figures.into_iter().map(|f| (name.to_string(), f)));
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
        let all = figures(run, case, milestones, verdict, None, days);
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
    let charts = figures(&outcome.run, &loaded.case, milestones, verdict, None, &[]);
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

#[test]
fn a_forecast_adds_a_chart_and_bands_and_takes_no_chart_away() {
    let (case, outcome, forecast) = forecast_shipped("sixty");
    let names = |forecast: Option<&Forecast>| -> Vec<String> {
        let all = figures_of(&outcome, &case, forecast);
        all.into_iter().map(|f| f.name).collect()
    };
    let mut expected = names(None);
    expected.insert(1, "ready".to_string());
    assert_eq!(names(Some(&forecast)), expected);
    let banded = |figure: &&Figure| {
        let panels = figure.panels.iter();
        panels
            .filter(|p| p.areas.iter().any(|a| a.name.contains("of 100")))
            .count()
    };
    let charts = figures_of(&outcome, &case, Some(&forecast));
    let counts: Vec<usize> = charts.iter().map(|f| banded(&f)).collect();
    // weeks 3, ready 0, nights 3, three days of 3 each, alkalinity 2, capacity and nitrogen 0
    assert_eq!(counts, [3, 0, 3, 3, 3, 3, 2, 0, 0]);
    let plain = figures_of(&outcome, &case, None);
    assert!(
        plain
            .iter()
            .all(|f| banded(&f) == 0 && !f.title.contains("of 100"))
    );
}

#[test]
fn a_band_is_drawn_where_the_forecast_has_it() {
    let (case, outcome, forecast) = forecast_shipped("sixty");
    let charts = figures_of(&outcome, &case, Some(&forecast));
    let nights = charts.iter().find(|f| f.name == "nights").unwrap();
    let [outer, inner] = &nights.panels[0].areas[..] else {
        panic!("two bands of oxygen");
    };
    let bands = &forecast.ensemble.bands;
    for day in bands.days() {
        let band = bands.of_day(day, charted::OXYGEN, Of::Lowest).unwrap();
        let at = |point: usize| (f64::from(day) + 0.5, f64::from(band[point]));
        assert!(
            outer.lower.contains(&at(0)) && outer.upper.contains(&at(4)),
            "day {day}"
        );
        assert!(
            inner.lower.contains(&at(1)) && inner.upper.contains(&at(3)),
            "day {day}"
        );
    }
    let day = charts.iter().find(|f| f.name == "day-56").unwrap();
    let hours = bands.of_hours(56, charted::PH).unwrap();
    let upper = &day.panels[2].areas[0].upper;
    assert_eq!(upper.last(), Some(&(24.0, f64::from(hours[24][4]))));
}

#[test]
fn bands_about_an_hourly_curve_hold_the_central_run_of_a_tank_without_doubt() {
    // every member is the central tank: the bands shrink to its own day, and hold its curve
    let (case, outcome, mut forecast) = forecast_shipped("sixty");
    let ask = firstfill::analysis::ensemble::Ask {
        case: &case,
        members: 2,
        drawn_days: &[],
    };
    let same = |_| case.input.clone();
    let made = firstfill::analysis::ensemble::run(ask, same, &Stop::default(), |_, _| {});
    forecast.ensemble = made.unwrap();
    let charts = figures_of(&outcome, &case, Some(&forecast));
    let panel = &charts[0].panels[1];
    let (band, line) = (&panel.areas[0], &panel.lines[0]);
    let noons = band
        .upper
        .iter()
        .zip(&band.lower)
        .filter(|(p, _)| p.0.fract() == 0.5);
    for (high, low) in noons {
        let of_day = line.points.iter().filter(|p| p.0.floor() == high.0.floor());
        for point in of_day {
            // bands are kept as f32, good to 1e-7 of the value; between full hours the curve is straight
            let slack = 1e-5 * high.1;
            assert!(
                point.1 <= high.1 + slack && point.1 >= low.1 - slack,
                "{point:?}"
            );
        }
    }
}

#[test]
fn titles_and_sentences_of_a_forecast_speak_of_100_tanks() {
    for (name, figure) in ALL.iter().filter(|(name, _)| name.ends_with("-forecast")) {
        if ["capacity", "nitrogen"].contains(&figure.name.as_str()) {
            assert!(
                figure.sentence.starts_with("Central run: "),
                "{name}/{}",
                figure.name
            );
            continue;
        }
        let words = format!("{} {}", figure.title, figure.sentence);
        assert!(words.contains("of 100"), "{name}/{}: {words}", figure.name);
        // a bare share of all tanks is never told; of full speed it may be
        assert!(!figure.title.contains('%'), "{name}/{}", figure.title);
    }
}

#[test]
fn the_days_of_10_50_and_90_are_marked_on_the_steps_or_told_in_the_margin() {
    for (name, figure) in ALL.iter().filter(|(_, f)| f.name == "ready") {
        let panel = &figure.panels[0];
        let steps = &panel.lines[0].points;
        let by = |day: f64| {
            steps
                .iter()
                .filter(|p| p.0 <= day)
                .map(|p| p.1)
                .fold(0.0, f64::max)
        };
        for share in [10.0, 50.0, 90.0] {
            let words: Vec<String> = figure.labels.iter().map(|l| l.words()).collect();
            let told = words
                .iter()
                .find(|w| w.starts_with(&format!("{share} of 100")));
            let mark = panel
                .marks
                .iter()
                .find(|m| m.form == Form::Disc && m.at.1 == share);
            match mark {
                Some(mark) => {
                    let day = format!("by day {}", mark.at.0);
                    assert!(by(mark.at.0) >= share, "{name}: {share}");
                    assert!(
                        mark.at.0 < 1.0 || by(mark.at.0 - 1.0) < share,
                        "{name}: {share}"
                    );
                    assert!(told.unwrap().contains(&day), "{name}: {told:?} for {day}");
                }
                None => {
                    assert!(steps.last().unwrap().1 < share, "{name}: {share}");
                    assert!(
                        words.iter().any(|w| w == "later than day 56"),
                        "{name}: {words:?}"
                    );
                }
            }
        }
    }
}

#[test]
fn there_is_one_square_for_each_of_100_tanks() {
    // a square is 17.2 pixels wide; what lies in it and the samples beside names are smaller
    let side = |corners: &[(f64, f64)]| corners[1].0 - corners[0].0;
    for (name, figure) in ALL.iter().filter(|(_, f)| f.name == "ready") {
        let squares = figure.shapes.iter().filter(|shape| match shape {
            Shape::Fill(corners, colour, _) => {
                (side(corners) - 17.2).abs() < 0.01
                    && *colour != firstfill::output::chart::style::WHITE
            }
            Shape::Path(corners, _) => corners.len() == 5 && (side(corners) - 16.2).abs() < 0.01,
            Shape::Disc(..) => false,
        });
        assert_eq!(squares.count(), 100, "{name}");
    }
}
