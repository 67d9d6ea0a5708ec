//! Runs members side by side: as planned, without animals, and stocked when ripe.
//!
//! Up to the day on which the first animals go in, a tank as planned and its twin without animals are one;
//! they part at the midnight before. What comes of a member hangs on its input alone.

use crate::analysis::branch::{Branches, Noons, Searched, planned_animals};
use crate::analysis::feed;
use crate::analysis::figures::FigureWatch;
use crate::analysis::limits::Limits;
use crate::analysis::ready;
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

/// How members are judged, and which days are drawn.
#[derive(Debug, Clone, Copy)]
pub(super) struct Group<'a> {
    pub(super) limits: &'a Limits,
    pub(super) drawn: &'a [u32],
}

/// What a member tells, and what bands are made of.
pub(super) type Ran = Result<(Told, Vec<f32>), RunError>;

type Four<'a> = [&'a ModelInput; ABREAST];

impl Group<'_> {
    /// Runs up to four members.
    pub(super) fn run(&self, inputs: &[ModelInput]) -> Vec<Ran> {
        fours(inputs)
            .iter()
            .flat_map(|(four, count)| {
                let mut course = Course::new(self, four);
                if four[0].has_animals() {
                    course.run_with_twin(four, *count);
                } else {
                    course.run_alone(four);
                }
                let lanes = 0..*count;
                lanes.map(move |lane| course.told(lane)).collect::<Vec<_>>()
            })
            .collect()
    }
}

/// Four members on their way.
struct Course<'a> {
    limits: &'a Limits,
    last_day: u32,
    planned: PlannedWatch<Abreast>,
    quiet: QuietWatch<Abreast>,
    failed: [Option<RunError>; ABREAST],
    /// The search for the ready day of each lane, where animals are planned.
    searches: Option<Vec<Searched>>,
}

impl<'a> Course<'a> {
    fn new(group: &Group<'a>, four: &Four<'_>) -> Self {
        let input = four[0];
        let all = |number: fn(&ModelInput) -> f64| Abreast::gather(|lane| number(four[lane]));
        let shrimp_from = all(|input| first_shrimp(input).map_or(f64::INFINITY, f64::from));
        let needed = all(|input| feed::planned(input).mg_n_per_day);
        Course {
            limits: group.limits,
            last_day: input.last_day,
            planned: PlannedWatch {
                figures: FigureWatch::new(input.end_minute(), group.limits, shrimp_from),
                days: DayWatch::new(input.last_day, group.drawn),
            },
            quiet: QuietWatch::new(group.limits, input.filled_at, needed),
            failed: [const { None }; ABREAST],
            searches: None,
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

    fn run_with_twin(&mut self, four: &Four<'_>, count: usize) {
        let as_planned = Plan::abreast(four).expect(ALIKE);
        let without = four.map(ModelInput::without_animals);
        let alone = Plan::abreast(&without.each_ref()).expect(ALIKE);
        let mut noons = Noons::default();
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
        self.search(&alone, &noons, &four.map(planned_animals), count);
    }

    /// Stocks the tanks on the days that would do.
    fn search(
        &mut self,
        plan: &Plan<Abreast>,
        noons: &Noons<Abreast>,
        animals: &[Vec<Animals>],
        count: usize,
    ) {
        if animals[0].is_empty() {
            return;
        }
        let mut searches: Vec<Searched> = (0..ABREAST)
            .map(|lane| {
                let counts = lane < count && self.failed[lane].is_none();
                let candidate = self.quiet.held(lane).candidate(self.last_day);
                Ok(Search::new(candidate.filter(|_| counts), self.last_day))
            })
            .collect();
        let branches = Branches {
            plan,
            noons,
            limits: self.limits,
            animals,
        };
        branches.search(&mut searches);
        self.searches = Some(searches);
    }

    fn note_failures(&mut self, tanks: &Simulation<'_, Abreast>, ended: Result<(), RunError>) {
        let all = ended.err();
        for (noted, failed) in self.failed.iter_mut().zip(&tanks.failed) {
            if noted.is_none() {
                *noted = failed.clone().or_else(|| all.clone());
            }
        }
    }

    /// What one lane tells.
    fn told(&self, lane: usize) -> Ran {
        if let Some(why) = &self.failed[lane] {
            return Err(why.clone());
        }
        let search = match self.searches.as_ref().map(|searches| &searches[lane]) {
            Some(Err(why)) => return Err(why.clone()),
            Some(Ok(search)) => Some(search),
            None => None,
        };
        let told = Told {
            figures: self.planned.figures.lane(lane),
            ready: self.ready(lane, search),
            evenings: self.quiet.evenings(lane),
        };
        Ok((told, self.planned.days.lane(lane)))
    }

    fn ready(&self, lane: usize, search: Option<&Search>) -> MemberReady {
        let (held, last_day) = (self.quiet.held(lane), self.last_day);
        let day = ready::ready_day(&held, search, last_day);
        let broken_after = match search {
            Some(search) => search.found().map(|(_, broken)| broken),
            None => day.map(|day| self.quiet.broken_after(day, lane)),
        };
        MemberReady {
            day,
            candidate: held.candidate(last_day),
            quiet_from: Some(held.quiet_from().0).filter(|&day| day <= last_day),
            waited_for: ready::waited_for(&held, search, last_day),
            broken_after,
        }
    }
}

const ALIKE: &str = "tanks of one group are alike";

/// The midnight up to which a tank as planned and its twin without animals are one.
fn parting(input: &ModelInput) -> u32 {
    let animals = input.events.iter().filter(|e| e.kind.is_about_animals());
    let first = animals.map(|event| event.minute).min();
    first.map_or(0, |minute| minute / DAY * DAY)
}
