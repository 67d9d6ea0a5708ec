//! `[room]`: the air around the tank.

use crate::analysis::uncertain::moves::Place as To;
use crate::base::units::everyday;
use crate::engine::input::Room;
use crate::scenario::draft::Draft;
use crate::scenario::reader::{Read, Reader};

/// Reads `[room]`: the air, and the height above the sea in metres.
pub fn room(file: &Reader<'_>, draft: &mut Draft<'_>) -> (Room, f64) {
    let section = file.section("room");
    let temperature = section.said_or_default("temperature", &everyday::TEMPERATURE, (0.0, 45.0));
    temperature.moves(section.desk, To::RoomTemperature);
    let humidity = section.said_or_default("humidity", &everyday::SHARE, (0.0, 1.0));
    humidity.moves(section.desk, To::Humidity);
    match section.said("co2", &everyday::AIR_CO2, (100.0, 10_000.0)) {
        Read::Given(ppm, _) => draft.set_said("co2_room", ppm, "room.co2"),
        Read::Absent => {
            let usual = everyday::AIR_CO2.print(draft.parameter("co2_room"));
            section.assumed("co2", usual, "parameter co2_room");
        }
        Read::Bad(_) => {}
    }
    let altitude_m = section.quantity_or_default("altitude", &everyday::LENGTH, (-430.0, 5500.0));
    section.close();
    let room = Room {
        temperature_c: temperature.value,
        humidity_frac: humidity.value,
    };
    (room, altitude_m)
}
