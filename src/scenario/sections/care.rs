//! `[trims]`, `[siphons]`, `[wipes]`, `[cleanings]`: what hands do.

use crate::base::units::everyday;
use crate::engine::event::EventKind;
use crate::model::setup::StandPlan;
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::{Read, Reader};
use crate::scenario::repeats;
use crate::scenario::words::closest;

/// Reads the four sections of care.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>, stands: &[StandPlan]) {
    trims(file, draft, stands);
    shares(file, draft, "siphons", |share| EventKind::Siphon { share });
    shares(file, draft, "wipes", |share| EventKind::Wipe { share });
    shares(file, draft, "cleanings", |share| EventKind::CleanFilter {
        share,
    });
}

fn trims(file: &Reader<'_>, draft: &mut Draft<'_>, stands: &[StandPlan]) {
    for entry in file.section("trims").named("NAME") {
        let when = repeats::when(&entry, draft);
        let stand = stand(&entry, stands);
        let share = share(&entry);
        entry.close();
        if let (Some(when), Some(stand), Some(share)) = (when, stand, share) {
            draft.schedule(&entry.path, &when, &EventKind::Trim { stand, share });
        }
    }
}

/// Which planting; `Some(None)` means all.
fn stand(entry: &Reader<'_>, stands: &[StandPlan]) -> Option<Option<usize>> {
    match entry.text("plants") {
        Read::Absent => {
            entry.note_default("plants");
            Some(None)
        }
        Read::Bad(_) => None,
        Read::Given(name, _) if name == "all" => Some(None),
        Read::Given(name, place) => {
            let found = stands.iter().position(|stand| stand.name == name);
            if found.is_none() {
                let names: Vec<&str> = stands.iter().map(|stand| stand.name.as_str()).collect();
                let problem = Problem::at(
                    &place,
                    format!("{}: there is no planting \"{name}\"", entry.path),
                )
                .label(format!("planted: {}", names.join(", ")));
                entry
                    .desk
                    .problem(match closest(&name, names.iter().copied()) {
                        Some(near) => problem.help(format!("did you mean \"{near}\"?")),
                        None => problem,
                    });
            }
            found.map(Some)
        }
    }
}

fn shares(
    file: &Reader<'_>,
    draft: &mut Draft<'_>,
    section: &'static str,
    kind: impl Fn(f64) -> EventKind,
) {
    for entry in file.section(section).named("NAME") {
        let when = repeats::when(&entry, draft);
        let share = share(&entry);
        entry.close();
        if let (Some(when), Some(share)) = (when, share) {
            draft.schedule(&entry.path, &when, &kind(share));
        }
    }
}

fn share(entry: &Reader<'_>) -> Option<f64> {
    let share = entry.quantity("share", &everyday::SHARE, (0.001, 1.0));
    if share.is_absent() {
        entry.missing("share");
    }
    share.value()
}
