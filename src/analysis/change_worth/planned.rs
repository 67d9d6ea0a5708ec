//! The changes of a plan one by one, and the plan with some of them left out, added or made larger.

use crate::analysis::levers::lever::Lever;
use crate::base::clock::DAY;
use crate::engine::event::{Event, EventKind};
use crate::engine::input::ModelInput;

/// A change larger than this leaves fish on dry ground.
pub const LARGEST_SHARE: f64 = 0.9;
/// Name of a change that is added on trial.
const ADDED: &str = "changes.on_trial";

/// One water change of a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// Minutes since midnight of day 0.
    pub minute: u32,
    /// Dotted path of its entry, for example `changes.early`.
    pub name: String,
    /// Share of the water present, 0 to 1.
    pub share: f64,
}

impl Change {
    /// The day on which it is done.
    pub fn day(&self) -> u32 {
        self.minute / DAY
    }
    /// The change an event is, if it is one.
    fn of(event: &Event) -> Option<Change> {
        match event.kind {
            EventKind::Change { share } => Some(Change {
                minute: event.minute,
                name: event.name.clone(),
                share,
            }),
            _ => None,
        }
    }
    fn is(&self, event: &Event) -> bool {
        Change::of(event).as_ref() == Some(self)
    }
    fn event(&self) -> Event {
        Event {
            minute: self.minute,
            name: self.name.clone(),
            kind: EventKind::Change { share: self.share },
        }
    }
    /// A change of that share on trial.
    pub fn on_trial(minute: u32, share: f64) -> Change {
        Change {
            minute,
            name: ADDED.into(),
            share,
        }
    }
    /// The share it has when somebody takes twice as much, as far as that goes.
    pub fn doubled_share(&self) -> f64 {
        (2.0 * self.share).min(LARGEST_SHARE).max(self.share)
    }
}

/// The changes inside the judged run, in their order; those of the look-ahead belong to no plan.
pub fn planned(input: &ModelInput) -> Vec<Change> {
    let inside = |change: &Change| change.minute < input.end_minute();
    let changes = input.events.iter().filter_map(Change::of);
    let mut changes: Vec<Change> = changes.filter(inside).collect();
    changes.sort_by_key(|change| change.minute);
    changes
}

/// The plan without some of its changes; one that is not in it is no loss.
pub fn without(changes: &[&Change]) -> Lever {
    let left_out: Vec<Change> = changes.iter().map(|&change| change.clone()).collect();
    Lever::of("without", "changes left out", move |input| {
        let stays = |event: &Event| !left_out.iter().any(|change| change.is(event));
        input.events.retain(stays);
    })
}

/// The plan with more changes.
pub fn with(changes: &[Change]) -> Lever {
    let added: Vec<Event> = changes.iter().map(Change::event).collect();
    Lever::of("with", "changes added", move |input| {
        input.events.extend_from_slice(&added);
    })
}

/// The plan with twice the share on one day.
pub fn doubled(change: &Change) -> Lever {
    let (change, doubled) = (change.clone(), change.doubled_share());
    Lever::of("doubled", "one change doubled", move |input| {
        for event in input.events.iter_mut().filter(|event| change.is(event)) {
            event.kind = EventKind::Change { share: doubled };
        }
    })
}
