//! The charts, asserted on their plain figures and on what they look like as files.

#[path = "support/synthetic.rs"]
mod synthetic;

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
            "airy",
            Knobs {
                air_from: Some(0),
                still: 1.0,
                ..with()
            },
        ),
    ]
}

fn charts(invented: &Invented) -> Vec<Figure> {
    let worst = invented.milestones.oxygen_low.minute / 1440;
    let last = invented.run.input.last_day;
    figures(
        &invented.run,
        &invented.case,
        &invented.milestones,
        &invented.verdict,
        &[worst, 0, last],
    )
}

/// Draws every invented chart into a folder, for looking: `LOOK=/tmp/x cargo test --test charts look -- --ignored`.
#[test]
#[ignore = "for looking, not for judging"]
fn look() {
    let folder = std::env::var("LOOK").expect("set LOOK to a folder");
    let only = std::env::var("ONLY").unwrap_or_default();
    for (name, knobs) in cases() {
        for figure in charts(&knobs.invent()) {
            let file = format!("{name}-{}", figure.name);
            if !file.contains(&only) {
                continue;
            }
            let text = svg(&figure);
            std::fs::create_dir_all(&folder).unwrap();
            std::fs::write(format!("{folder}/{file}.svg"), &text).unwrap();
            std::fs::write(format!("{folder}/{file}.png"), png(&text).unwrap()).unwrap();
        }
    }
}

/// Runs a check on every chart of every case and lists all that fail.
fn every_chart(check: impl Fn(&Figure) -> Vec<String>) {
    let mut wrong = Vec::new();
    for (name, knobs) in cases() {
        for figure in charts(&knobs.invent()) {
            let faults = check(&figure);
            wrong.extend(
                faults
                    .into_iter()
                    .map(|f| format!("{name}/{}: {f}", figure.name)),
            );
        }
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
