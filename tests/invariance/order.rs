//! Orders that must not matter: of events in a list, of entries and sections in a file.

use std::path::Path;

use firstfill::base::clock::{DAY, HOUR};
use firstfill::engine::event::{Dose, Event, EventKind};
use firstfill::engine::run::run;
use firstfill::scenario;

use crate::support::drive::left_by;
use crate::support::planted_tank::Draws;
use crate::support::reference;

#[test]
fn the_order_of_events_in_the_list_does_not_matter() {
    let mut input = reference::input("base_fish");
    // three things in one instant, with names as a scenario gives them: each its own
    let here = 10 * DAY + 9 * HOUR;
    let nitrate = Dose {
        nitrate_mg_n_per_l: 1.0,
        ..Dose::default()
    };
    for (name, kind) in [
        ("doses.extra", EventKind::Dose(nitrate)),
        ("changes.extra", EventKind::Change { share: 0.3 }),
        ("care.siphon", EventKind::Siphon { share: 0.5 }),
    ] {
        input.events.push(Event {
            minute: here,
            name: name.into(),
            kind,
        });
    }
    let in_order = left_by(&input);
    let mut shuffled = input.clone();
    let mut draws = Draws(7);
    for last in (1..shuffled.events.len()).rev() {
        let other = draws.between(0.0, last as f64 + 1.0) as usize;
        shuffled.events.swap(last, other);
    }
    assert_ne!(shuffled.events, input.events);
    assert!(left_by(&shuffled) == in_order, "the same bits");
    // and the order in an instant does matter, so it must be fixed: a dose before the change is less
    let mut swapped = input.clone();
    swapped.events.retain(|event| event.name != "doses.extra");
    assert!(left_by(&swapped) != in_order);
}

/// The sections of a scenario: what stands before the first, then each with its heading.
fn sections(text: &str) -> Vec<Vec<String>> {
    let mut sections = vec![Vec::new()];
    for line in text.lines() {
        if line.starts_with('[') {
            sections.push(Vec::new());
        }
        sections.last_mut().unwrap().push(line.to_string());
    }
    sections
}

/// The same scenario with its sections, and the entries of each, in another order.
fn shuffled(text: &str, draws: &mut Draws) -> String {
    let mut shuffle = |list: &mut [Vec<String>]| {
        for last in (1..list.len()).rev() {
            list.swap(last, draws.between(0.0, last as f64 + 1.0) as usize);
        }
    };
    let mut sections = sections(text);
    shuffle(&mut sections[1..]);
    for section in &mut sections {
        let heading = usize::from(section[0].starts_with('['));
        let mut entries: Vec<Vec<String>> =
            section.drain(heading..).map(|line| vec![line]).collect();
        shuffle(&mut entries);
        section.extend(entries.into_iter().flatten());
    }
    sections.concat().join("\n")
}

#[test]
fn the_order_of_sections_and_entries_in_a_file_does_not_matter() {
    let mut draws = Draws(11);
    let mut seen = 0;
    for entry in std::fs::read_dir("scenarios").unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            continue; // studies
        }
        let name = path.display().to_string();
        let text = std::fs::read_to_string(&path).unwrap();
        let other = shuffled(&text, &mut draws);
        assert_ne!(other, text, "{name}");
        let case = |text: &str| match scenario::read_text(Path::new(&name).to_str().unwrap(), text)
        {
            Ok(loaded) => loaded.case,
            Err(problems) => panic!("{}", problems.render(false)),
        };
        let (as_written, mixed) = (case(&text), case(&other));
        let bytes = |mut input: firstfill::engine::input::ModelInput| {
            // a fortnight shows whatever differs
            input.last_day = input.last_day.min(13);
            input.lookahead_days = 0;
            let result = run(&input).unwrap();
            format!("{:?}", (result.readings, result.events, result.tunings))
        };
        assert!(bytes(as_written.input) == bytes(mixed.input), "{name}");
        seen += 1;
    }
    assert!(seen >= 12, "{seen} scenarios");
}
