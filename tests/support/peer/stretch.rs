//! Times during which nothing is switched and nothing happens, and what happens between them.

use firstfill::base::clock::DAY;
use firstfill::engine::event::{Event, EventKind};
use firstfill::engine::happening::{Crossed, Hands};
use firstfill::engine::plan::{Keeping, Plan};
use firstfill::engine::result::Side;
use firstfill::engine::simulation::Simulation;
use firstfill::engine::valve::Valves;
use firstfill::model::held::Held;
use firstfill::model::state::State;

use super::Eye;

/// A time during which nothing is switched and nothing happens.
pub struct Stretch<'p> {
    /// First minute.
    pub from: u32,
    /// One past the last.
    pub until: u32,
    /// What is switched.
    pub held: Held<f64>,
    /// What happens at its start.
    pub events: &'p [Event],
}

impl Stretch<'_> {
    /// Whether its first minute is among some in order, and those of them that lie behind it.
    pub fn parted<'m>(&self, minutes: &'m [u32]) -> (bool, &'m [u32]) {
        let before = |end: u32| minutes.partition_point(|&minute| minute < end);
        let inner = &minutes[before(self.from + 1)..before(self.until)];
        (before(self.from) < before(self.from + 1), inner)
    }
}

/// The stretches of a whole run, each as long as can be: a midnight alone ends none.
pub fn stretches(plan: &Plan) -> Vec<Stretch<'_>> {
    let (from, end) = (plan.input.filled_at, plan.input.end_minute());
    let (tank, mut valves) = (Simulation::filled(plan), Valves::new(plan));
    let mut keeping = Keeping::new(1);
    let mut stretches: Vec<Stretch<'_>> = Vec::new();
    for day in from / DAY..end.div_ceil(DAY) {
        keeping.gas = valves.set_for(day, &tank).unwrap();
        let mut cuts = plan.instants(day, &plan.switches(day, &keeping.gas));
        cuts.extend([(day * DAY).max(from), ((day + 1) * DAY).min(end)]);
        cuts.retain(|cut| (from..=end).contains(cut));
        cuts.sort_unstable();
        cuts.dedup();
        for pair in cuts.windows(2) {
            let next = stretch(plan, (pair[0], pair[1]), &mut keeping);
            match stretches.last_mut() {
                Some(last) if last.held == next.held && next.events.is_empty() => {
                    last.until = next.until;
                }
                _ => stretches.push(next),
            }
        }
    }
    stretches
}

fn stretch<'p>(plan: &'p Plan, (from, until): (u32, u32), keeping: &mut Keeping) -> Stretch<'p> {
    let all = &plan.lanes[0].events;
    let first_at = |minute| all.partition_point(|event| event.minute < minute);
    let events = &all[first_at(from)..first_at(from + 1)];
    for event in events {
        if let EventKind::Stock(animals) = &event.kind {
            keeping.animals[0].push(*animals);
        }
    }
    Stretch {
        from,
        until,
        held: plan.held(from, keeping),
        events,
    }
}

/// Does what happens at the start of a stretch, before the eyes of somebody or of nobody.
pub fn happen(plan: &Plan, stretch: &Stretch<'_>, state: &mut State<f64>, eye: Option<Eye<'_>>) {
    let mut unseen = |_, _, _: &State<f64>, _: &Held<f64>| {};
    let eye = eye.unwrap_or(&mut unseen);
    let (minute, held) = (stretch.from, &stretch.held);
    if stretch.events.is_empty() {
        return eye(minute, Side::Plain, state, held);
    }
    eye(minute, Side::Before, state, held);
    let mut crossed = Crossed::default();
    for event in stretch.events {
        let mut hands = Hands {
            plan: &plan.lanes[0],
            state,
            crossed: &mut crossed,
        };
        hands.apply(&event.kind);
    }
    eye(minute, Side::After, state, held);
}
