//! From the merged tree to a checked case: the sections in the order of the documentation.

use crate::analysis::calendar::wish::CalendarWish;
use crate::analysis::case::Case;
use crate::analysis::limits::Limits;
use crate::analysis::uncertain;
use crate::base::clock::DAY;
use crate::base::units::digits;
use crate::engine::event::EventKind;
use crate::engine::input::{GasPlan, Heating, ModelInput, PowerCut, Room, TimerLine, TopUp};
use crate::model::composition::Composition;
use crate::model::setup::{StandPlan, Tank};

use super::beside::Beside;
use super::calendar::LOOKAHEAD_DAYS;
use super::desk::Desk;
use super::draft::Draft;
use super::keys;
use super::problem::Problem;
use super::reader::{Read, Reader};
use super::sections::blend::Blend;
use super::sections::water::Waters;
use super::sections::{
    air, animals, calendar, care, changes, doses, filter, gas, light, limits, parameters, plants,
    power, room, seed, soil, start, surface, tank, water,
};
use super::tree::Table;

/// The step of the engine, minutes.
const STEP_MINUTES: u32 = 60;

/// Reads a whole scenario, its filling put off by some days; none when something is wrong (the desk knows what).
pub fn case(desk: &Desk, table: &Table, stem: &str, put_off_days: u32) -> Option<Case> {
    let file = Reader::of_file(desk, table);
    let name = file.text("name").or(stem.to_string());
    file.entry("based_on");
    let mut draft = Draft::new(desk, start::calendar(&file, put_off_days));
    parameters::read(&file, &mut draft);
    let start_up = start::start_up(&file, &mut draft);
    let limits = limits::read(&file);
    let surroundings = Surroundings::read(&file, &mut draft);
    let waters = surroundings.waters(&file);
    let (filled, refilled) = blends(&file, &mut draft, &waters);
    let top_up = surroundings.top_up(&file, &waters);
    let kitchen = surroundings.kitchen(&waters, &filled, &refilled);
    let plan = Plan::read(&file, &mut draft, &limits);
    let bag_l = surroundings.soil_bag_l;
    let blends = (filled.blend, refilled.blend);
    let wish = surroundings.calendar(&file, &draft);
    let beside = Beside::read(&file, &waters, blends, limits, bag_l, kitchen);
    file.close();
    let tank = surroundings.tank?;
    if desk.has_problems() {
        return None;
    }
    let input = ModelInput {
        filled_at: draft.calendar.filled_at,
        last_day: draft.calendar.last_day,
        lookahead_days: LOOKAHEAD_DAYS,
        step_minutes: STEP_MINUTES,
        tank,
        room: surroundings.room,
        heating: surroundings.heating,
        fill: filled.water,
        refill: refilled.water,
        top_up,
        parameters: draft.parameters.clone(),
        seed_level: plan.seed_level,
        dry_days: start_up.dry_days,
        stands: plan.stands,
        light: plan.light,
        gas: plan.gas,
        air: plan.air,
        power_cuts: plan.power_cuts,
        unfed: draft.away.clone(),
        events: std::mem::take(&mut draft.events),
    };
    say_what_harms(desk, &input);
    say_what_lowers_nitrite(desk, &input, &beside.limits);
    Some(finish(draft, name, input, (beside, wish)))
}

/// What happens in the tank, and when; events go into the draft.
struct Plan {
    light: Vec<TimerLine>,
    gas: GasPlan,
    air: Vec<TimerLine>,
    stands: Vec<StandPlan>,
    seed_level: f64,
    power_cuts: Vec<PowerCut>,
}

impl Plan {
    fn read(file: &Reader<'_>, draft: &mut Draft<'_>, limits: &Limits) -> Plan {
        changes::read(file, draft);
        let light = light::read(file, draft);
        let is_dark = file.wanted("light").is_none();
        let gas = gas::read(file, draft, limits.co2.value, is_dark);
        let air = air::read(file, draft);
        surface::read(file, draft);
        let stands = plants::read(file, draft);
        if is_dark && !stands.is_empty() {
            draft
                .desk
                .notice("there are plants, but no [light]: they will only lose weight");
        }
        care::read(file, draft, &stands);
        let seed_level = seed::read(file, draft);
        doses::read(file, draft);
        animals::read(file, draft);
        let power_cuts = power::read(file, draft, air.flow_l_per_min);
        changes::tell_left_out(draft);
        Plan {
            light,
            gas,
            air: air.lines,
            stands,
            seed_level,
            power_cuts,
        }
    }
}

/// Tank and room, read together because each needs the other.
struct Surroundings {
    room: Room,
    altitude_m: f64,
    heating: Heating,
    tank: Option<Tank>,
    soil_bag_l: f64,
    top_up: Read<String>,
}

impl Surroundings {
    fn read(file: &Reader<'_>, draft: &mut Draft<'_>) -> Surroundings {
        let (room, altitude_m) = room::room(file, draft);
        let section = tank::read(file, draft, room.temperature_c);
        let soil = soil::soil(file, draft);
        let filter = filter::read(file);
        let tank = section.dimensions(draft, &soil, altitude_m, filter.film_m2);
        if let Some(tank) = &tank {
            filter.tell(draft, tank.volume_l);
        }
        Surroundings {
            room,
            altitude_m,
            heating: section.heating,
            tank,
            soil_bag_l: soil.bag_l,
            top_up: section.top_up,
        }
    }
    /// What a calendar may be, if the file says so.
    fn calendar(&self, file: &Reader<'_>, draft: &Draft<'_>) -> Option<CalendarWish> {
        let volume_l = self.tank.as_ref().map_or(1.0, |tank| tank.volume_l);
        calendar::read(file, draft, volume_l)
    }
    /// The waters, and how those that go into the tank are made of them.
    fn kitchen(
        &self,
        waters: &Waters,
        filled: &Prepared,
        refilled: &Prepared,
    ) -> uncertain::waters::Waters {
        let topped_up_with = self.top_up.seen().map_or("pure", String::as_str);
        waters.recipes(&filled.blend, &refilled.blend, topped_up_with)
    }
    fn waters(&self, file: &Reader<'_>) -> Waters {
        water::waters(file, self.room.temperature_c, self.altitude_m)
    }
    fn top_up(&self, file: &Reader<'_>, waters: &Waters) -> TopUp {
        let Read::Given(name, place) = &self.top_up else {
            return waters.at_room("pure").map_or(TopUp::None, TopUp::Automatic);
        };
        if name == "none" {
            return TopUp::None;
        }
        if !waters.check(file, "tank.top_up", name, place) {
            return TopUp::None;
        }
        waters.at_room(name).map_or(TopUp::None, TopUp::Automatic)
    }
}

/// The waters of the first filling and of the changes, ready to use.
fn blends(file: &Reader<'_>, draft: &mut Draft<'_>, waters: &Waters) -> (Prepared, Prepared) {
    let refill = waters.blend(&file.section("refill"), &Blend::tap());
    let fill = waters.blend(&file.section("fill"), &refill);
    let (filled, refilled) = (waters.prepare(&fill), waters.prepare(&refill));
    draft.fact(
        "Refill",
        format!("{}: {}", refill.words(), water::in_words(&refilled)),
    );
    if filled != refilled {
        draft.fact(
            "First filling",
            format!("{}: {}", fill.words(), water::in_words(&filled)),
        );
    }
    let made = |blend, water| Prepared { blend, water };
    (made(fill, filled), made(refill, refilled))
}

/// A water ready to use, with what it is blended of.
struct Prepared {
    blend: Blend,
    water: Composition,
}

fn finish(
    mut draft: Draft<'_>,
    name: String,
    mut input: ModelInput,
    (beside, calendar): (Beside, Option<CalendarWish>),
) -> Case {
    input.events.sort_by(|a, b| {
        (a.minute, a.kind.rank(), &a.name).cmp(&(b.minute, b.kind.rank(), &b.name))
    });
    draft
        .switches
        .sort_by(|a, b| (a.day, &a.name).cmp(&(b.day, &b.name)));
    let mut resolved = draft.desk.take_resolved();
    resolved.sort_by_cached_key(|value| keys::section_rank(&value.path));
    Case {
        name,
        filled_on: draft.calendar.filled_on,
        input,
        limits: beside.limits,
        away: draft.away,
        left_out: draft.left_out,
        switches: draft.switches,
        facts: draft.facts,
        resolved,
        notices: draft.desk.take_notices(),
        prices: beside.prices,
        kit: beside.kit,
        calendar,
        soil_bag_l: beside.soil_bag_l,
        unsure: draft.desk.take_unsure(),
        waters: beside.waters,
    }
}

/// Plans that a keeper would want to be asked about: a residual left in, animals left unfed.
fn say_what_harms(desk: &Desk, input: &ModelInput) {
    let residual =
        |water: &Composition| water.chlorine_mg_cl2_per_l + water.chloramine_mg_cl2_per_l;
    let most = residual(&input.fill).max(residual(&input.refill));
    if most > 0.0 {
        desk.notice(format!(
            "the water goes in with {} mg Cl2/L of chlorine or chloramine: it kills fish, shrimp and nitrifiers; set dechlorinator = true under [refill]",
            digits(most)
        ));
    }
    let stocked = input
        .events
        .iter()
        .filter(|e| matches!(e.kind, EventKind::Stock(_)))
        .map(|e| e.minute / DAY);
    if let Some(first) = stocked.min() {
        for (from, until) in input.unfed.iter().filter(|(_, until)| *until >= first) {
            desk.notice(format!(
                "nobody feeds the animals on days {} to {until} (away)",
                first.max(*from)
            ));
        }
    }
}

/// Nitrite is held against chloride: where little comes in its limit sinks, and at nothing no day is ready.
fn say_what_lowers_nitrite(desk: &Desk, input: &ModelInput, limits: &Limits) {
    let is_dosed =
        |kind: &EventKind| matches!(kind, EventKind::Dose(dose) if dose.chloride_mg_per_l > 0.0);
    let has_changes = !input.changes().is_empty();
    let water = if has_changes {
        &input.refill
    } else {
        &input.fill
    };
    let needed = limits.nitrite.value * limits.chloride_per_nitrite.value;
    let brought = water.chloride_mg_per_l;
    if brought < needed && !input.events.iter().any(|event| is_dosed(&event.kind)) {
        desk.notice(format!(
            "the water that goes in brings {} mg/L of chloride: with less than {} mg/L the limit of nitrite sinks (limits.chloride_per_nitrite), and with none no tank is ever called ready; blend in water that has some, or dose it (doses.NAME.chloride)",
            digits(brought),
            digits(needed)
        ));
    }
}

/// Said when a file holds nothing at all.
pub fn empty(name: &str) -> Problem {
    Problem::of_file(name, format!("{name} is empty"))
        .help("a scenario needs at least [tank]; copy one from scenarios/ and change it")
}
