//! Runs members side by side: as planned, and without animals. When ripe they are stocked, many groups
//! together (see `stocked`).
//!
//! Up to the day on which the first animals go in, a tank as planned and its twin without animals are one;
//! they part at the midnight before. What comes of a member hangs on its input alone.

use std::sync::Arc;

use crate::analysis::branch::{Noons, planned_animals};
use crate::analysis::feed;
use crate::analysis::figures::FigureWatch;
use crate::analysis::limits::Limits;
use crate::analysis::running::first_shrimp;
use crate::analysis::stocking::Search;
use crate::base::clock::DAY;
use crate::base::real::Real;
use crate::engine::error::RunError;
use crate::engine::event::Animals;
use crate::engine::input::ModelInput;
use crate::engine::many::{ABREAST, Abreast, fours};
use crate::engine::plan::Plan;
use crate::engine::simulation::{Simulation, Watcher};
use crate::engine::valve::Valves;
use crate::engine::watcher::Eyes;

use super::days::DayWatch;
use super::member::{MemberReady, Told};
use super::planned::PlannedWatch;
use super::quiet::QuietWatch;
use super::stocked::Waits;

/// How members are judged, and which days are drawn.
#[derive(Debug, Clone, Copy)]
pub(super) struct Group<'a> {
    pub(super) limits: &'a Limits,
    pub(super) drawn: &'a [u32],
}

/// What a member tells, and what bands are made of.
pub(super) type Ran = Result<(Told, Vec<f32>), RunError>;

/// A member that has run, and what is left to do: the search for its ready day, where animals are planned.
pub(super) struct Underway {
    pub(super) ran: Ran,
    pub(super) waits: Option<Waits>,
}

type Four<'a> = [&'a ModelInput; ABREAST];

impl Group<'_> {
    /// Runs up to four members.
    pub(super) fn run(&self, inputs: &[ModelInput]) -> Vec<Underway> {
        fours(&inputs.iter().collect::<Vec<_>>())
            .iter()
            .flat_map(|(four, count)| {
                let mut course = Course::new(self, four);
                if four[0].has_animals() {
                    course.run_with_twin(four);
                } else {
                    course.run_alone(four);
                }
                let lanes = 0..*count;
                lanes
                    .map(move |lane| course.underway(lane))
                    .collect::<Vec<_>>()
            })
            .collect()
    }
}

/// Four members on their way.
struct Course {
    last_day: u32,
    planned: PlannedWatch<Abreast>,
    quiet: QuietWatch<Abreast>,
    failed: [Option<RunError>; ABREAST],
    /// The tanks without animals, where animals are planned.
    twins: Option<Twins>,
}

impl Course {
    fn new(group: &Group<'_>, four: &Four<'_>) -> Self {
        let input = four[0];
        let all = |number: fn(&ModelInput) -> f64| Abreast::gather(|lane| number(four[lane]));
        let shrimp_from = all(|input| first_shrimp(input).map_or(f64::INFINITY, f64::from));
        let needed = all(|input| feed::planned(input).mg_n_per_day);
        Course {
            last_day: input.last_day,
            planned: PlannedWatch {
                figures: FigureWatch::new(input.end_minute(), group.limits, shrimp_from),
                days: DayWatch::new(input.last_day, group.drawn),
            },
            quiet: QuietWatch::new(group.limits, input.filled_at..input.end_minute(), needed),
            failed: [const { None }; ABREAST],
            twins: None,
        }
    }

    /// Without animals the tank as planned is the quiet one.
    fn run_alone(&mut self, four: &Four<'_>) {
        let plan = Plan::abreast(four).expect(ALIKE);
        let mut tanks = Simulation::filled(&plan);
        let mut all: [&mut dyn Watcher<Abreast>; 2] = [&mut self.planned, &mut self.quiet];
        let mut eyes = Eyes(&mut all);
        let ended = Valves::new(&plan).take(&mut tanks, plan.input.final_minute(), &mut eyes);
        tanks.show(&mut eyes);
        self.note_failures(&tanks, ended);
    }

    fn run_with_twin(&mut self, four: &Four<'_>) {
        let as_planned = Plan::abreast(four).expect(ALIKE);
        let without = four.map(ModelInput::without_animals);
        let alone = Plan::abreast(&without.each_ref()).expect(ALIKE);
        let mut noons = Noons::until(four[0].end_minute());
        let mut twin = Simulation::filled(&alone);
        let mut valves = Valves::new(&alone);
        let mut all: [&mut dyn Watcher<Abreast>; 3] =
            [&mut self.planned, &mut self.quiet, &mut noons];
        let parted = valves.take(&mut twin, parting(four[0]), &mut Eyes(&mut all));
        self.note_failures(&twin, parted);

        let (mut tanks, mut their_valves) = twin.with_plan(&as_planned);
        let mut all: [&mut dyn Watcher<Abreast>; 1] = [&mut self.planned];
        let mut eyes = Eyes(&mut all);
        let ended = their_valves.take(&mut tanks, four[0].end_minute(), &mut eyes);
        tanks.show(&mut eyes);
        self.note_failures(&tanks, ended);

        let mut all: [&mut dyn Watcher<Abreast>; 2] = [&mut self.quiet, &mut noons];
        let mut eyes = Eyes(&mut all);
        let ended = valves.take(&mut twin, four[0].final_minute(), &mut eyes);
        twin.show(&mut eyes);
        self.note_failures(&twin, ended);
        let animals = four.map(planned_animals);
        let stocked = !animals[0].is_empty();
        self.twins = stocked.then(|| Twins {
            inputs: without,
            animals,
            noons: Arc::new(noons),
        });
    }

    fn note_failures(&mut self, tanks: &Simulation<'_, Abreast>, ended: Result<(), RunError>) {
        let all = ended.err();
        for (lane, (noted, failed)) in self.failed.iter_mut().zip(&tanks.failed).enumerate() {
            let why = failed.clone().or_else(|| all.clone());
            let counts = |why: &RunError| !self.quiet.is_settled(why.day(), lane);
            *noted = noted.take().or(why.filter(counts));
        }
    }

    /// What came of one lane.
    fn underway(&self, lane: usize) -> Underway {
        if let Some(why) = &self.failed[lane] {
            let ran = Err(why.clone());
            return Underway { ran, waits: None };
        }
        let told = Told {
            figures: self.planned.figures.lane(lane),
            ready: self.ready(lane),
            evenings: self.quiet.evenings(lane),
        };
        Underway {
            ran: Ok((told, self.planned.days.lane(lane))),
            waits: self.twins.as_ref().map(|twins| self.waits(twins, lane)),
        }
    }

    /// When a lane is ready without animals.
    fn ready(&self, lane: usize) -> MemberReady {
        let held = self.quiet.held(lane);
        let mut ready = MemberReady::of(&held, None, self.last_day);
        ready.broken_after = ready.day.map(|day| self.quiet.broken_after(day, lane));
        ready
    }

    /// What a lane needs to be stocked.
    fn waits(&self, twins: &Twins, lane: usize) -> Waits {
        let held = self.quiet.held(lane);
        Waits {
            input: twins.inputs[lane].clone(),
            animals: twins.animals[lane].clone(),
            noons: (Arc::clone(&twins.noons), lane),
            search: Ok(Search::new(held.candidate(self.last_day), self.last_day)),
            held,
        }
    }
}

/// Four tanks without animals, to be stocked when ripe.
struct Twins {
    inputs: [ModelInput; ABREAST],
    animals: [Vec<Animals>; ABREAST],
    noons: Arc<Noons<Abreast>>,
}

const ALIKE: &str = "tanks of one group are alike";

/// The midnight up to which a tank as planned and its twin without animals are one.
fn parting(input: &ModelInput) -> u32 {
    let animals = input.events.iter().filter(|e| e.kind.is_about_animals());
    let first = animals.map(|event| event.minute).min();
    first.map_or(0, |minute| minute / DAY * DAY)
}
