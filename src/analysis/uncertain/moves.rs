//! Where a drawn value goes in the input of a run.

use crate::engine::event::EventKind;
use crate::engine::input::{GasPlan, ModelInput, TimerLine, TopUp};
use crate::model::setup::StandPlan;

use super::waters::Matter;

/// Least share of the water that soil may leave.
const LEAST_WATER: f64 = 0.1;

/// A place in the input, and what the drawn value is multiplied with on its way there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Move {
    /// Where it goes.
    pub place: Place,
    /// From the unit of the drawn value to that of the place.
    pub factor: f64,
}

/// A place in the input of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Place {
    /// A parameter, by its number.
    Parameter(usize),
    /// Pore water of the soil at filling, from which `Kd` follows once all else is drawn.
    PoreWater,
    /// First films as a multiple of level 1.
    SeedLevel,
    /// Films of one guild in all media brought in, as a multiple of those planned.
    Medium(usize),
    /// A line of the light.
    Light(usize),
    /// A line of the gas.
    Gas(usize),
    /// A line of the gas that is counted in bubbles, which hold more the wider they are.
    Bubbles {
        /// The line.
        line: usize,
        /// Diameter of the central run, mm.
        central_mm: f64,
    },
    /// The target of a tuned valve.
    GasTarget,
    /// The concentration at which a controller closes the valve.
    GasCutOff,
    /// A line of the air.
    Air(usize),
    /// Cover of a stand.
    Cover(usize),
    /// Dry weight of a stand at planting.
    Density(usize),
    /// Share of a stand that is shed.
    Melt(usize),
    /// Litres of soil.
    Soil {
        /// Litres of the central run.
        central_l: f64,
        /// Whether it gives and takes.
        is_active: bool,
        /// Whether more soil is less water.
        displaces: bool,
    },
    /// Temperature of the room.
    RoomTemperature,
    /// Humidity of the room.
    Humidity,
    /// Set point of the heater.
    HeaterSet,
    /// Temperature of the water at filling.
    StartTemperature,
    /// Something in one of the waters; see [`super::waters`].
    Water(usize, Matter),
}

impl Move {
    /// A place that takes the drawn value as it is.
    pub fn to(place: Place) -> Move {
        Move { place, factor: 1.0 }
    }
    /// Puts a drawn value where it goes; pore water and waters are seen to by others, when all is drawn.
    pub fn apply(&self, input: &mut ModelInput, drawn: f64) {
        let value = drawn * self.factor;
        match self.place {
            Place::Parameter(number) => input.parameters.put(number, value),
            Place::SeedLevel => input.seed_level = value,
            Place::Medium(guild) => media(input, guild, value),
            Place::Light(line) => set_line(&mut input.light, line, value),
            Place::Air(line) => set_line(&mut input.air, line, value),
            Place::Gas(_) | Place::Bubbles { .. } | Place::GasTarget | Place::GasCutOff => {
                gas(&mut input.gas, self.place, value);
            }
            Place::Cover(stand) => set_stand(input, stand, |stand| stand.cover_frac = value),
            Place::Density(at) => set_stand(input, at, |stand| stand.density_g_per_m2 = value),
            Place::Melt(stand) => set_stand(input, stand, |stand| stand.melt_frac = value),
            Place::Soil { .. } => soil(input, self.place, value),
            Place::RoomTemperature => room_temperature(input, value),
            Place::Humidity => input.room.humidity_frac = value,
            Place::HeaterSet => input.heating.set_c = input.heating.set_c.map(|_| value),
            Place::StartTemperature => input.heating.start_c = value,
            Place::PoreWater | Place::Water(..) => {}
        }
    }
}

fn set_line(lines: &mut [TimerLine], line: usize, value: f64) {
    if let Some(line) = lines.get_mut(line) {
        line.value = value;
    }
}

fn set_stand(input: &mut ModelInput, stand: usize, set: impl FnOnce(&mut StandPlan)) {
    if let Some(stand) = input.stands.get_mut(stand) {
        set(stand);
    }
}

fn media(input: &mut ModelInput, guild: usize, multiple: f64) {
    for event in &mut input.events {
        if let EventKind::Seed { mg_cod } = &mut event.kind {
            mg_cod[guild] *= multiple;
        }
    }
}

fn gas(plan: &mut GasPlan, place: Place, value: f64) {
    match (plan, place) {
        (GasPlan::Rate { lines, .. }, Place::Gas(line)) => set_line(lines, line, value),
        (GasPlan::Rate { lines, .. }, Place::Bubbles { line, central_mm }) => {
            let wider = value / central_mm;
            let before = lines.get(line).map_or(0.0, |line| line.value);
            set_line(lines, line, before * wider * wider * wider);
        }
        (
            GasPlan::Rate {
                cut_off_mg_per_l, ..
            },
            Place::GasCutOff,
        ) => *cut_off_mg_per_l = Some(value),
        (
            GasPlan::Hold {
                target_mg_per_l, ..
            },
            Place::GasTarget,
        ) => *target_mg_per_l = value,
        _ => {}
    }
}

fn soil(input: &mut ModelInput, place: Place, litres: f64) {
    let Place::Soil {
        central_l,
        is_active,
        displaces,
    } = place
    else {
        return;
    };
    let tank = &mut input.tank;
    if displaces {
        let left_l = tank.volume_l - (litres - central_l);
        tank.volume_l = left_l.max(LEAST_WATER * tank.volume_l);
    }
    if is_active {
        tank.soil_l = litres;
    }
}

fn room_temperature(input: &mut ModelInput, t_c: f64) {
    input.room.temperature_c = t_c;
    if let TopUp::Automatic(water) = &mut input.top_up {
        water.temperature_c = t_c;
    }
}

/// Draws covers together that came to more than the whole bed, each by the same share.
pub fn covers_fit(input: &mut ModelInput) {
    let sum: f64 = input.stands.iter().map(|stand| stand.cover_frac).sum();
    if sum > 1.0 {
        for stand in &mut input.stands {
            stand.cover_frac /= sum;
        }
    }
}
