//! `[tank]`: how big, how full, how warm.

use crate::analysis::case::SetBy;
use crate::analysis::uncertain::moves::Place as To;
use crate::base::units::{LITRES_PER_CUBIC_METRE, digits, everyday};
use crate::engine::input::Heating;
use crate::model::setup::Tank;
use crate::scenario::draft::Draft;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::reader::{Read, Reader, Said};

use super::soil::Soil;
use super::volume::{self, Inside};

/// What `[tank]` says.
pub struct TankSection {
    /// Inside measures.
    inside: Read<Inside>,
    water_line_m: Read<f64>,
    net_volume_l: Read<f64>,
    surface_m2: Read<f64>,
    hardscape_l: f64,
    /// Heater and temperature at filling.
    pub heating: Heating,
    /// What replaces evaporated water: the word, and where it stands.
    pub top_up: Read<String>,
    place: Option<Place>,
}

/// Reads `[tank]`.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>, room_c: f64) -> TankSection {
    let section = file.section("tank");
    let litres = (0.5, 100_000.0);
    let tank = TankSection {
        inside: volume::inside(&section),
        water_line_m: section.quantity("water_line", &everyday::LENGTH, (0.03, 10.0)),
        net_volume_l: section.quantity("net_volume", &everyday::VOLUME, litres),
        surface_m2: section.quantity("surface", &everyday::AREA, (0.0025, 100.0)),
        hardscape_l: section.quantity_or_default("hardscape", &everyday::VOLUME, (0.0, 10_000.0)),
        heating: heating(&section, room_c),
        top_up: top_up(&section),
        place: section.place.clone().filter(|_| section.is_there()),
    };
    lid(&section, draft);
    section.close();
    if !section.is_there() && section.place.is_none() {
        file.missing("tank");
    }
    tank
}

fn heating(section: &Reader<'_>, room_c: f64) -> Heating {
    let water = (4.0, 40.0);
    let has_heater = section.choice_or_default("heater", &["on", "none"]) == 0;
    let key = ("start_temperature", &everyday::TEMPERATURE);
    let start = section.said_for(key.0, key.1, water, To::StartTemperature);
    if !has_heater {
        let given = section.said("temperature", &everyday::TEMPERATURE, water);
        let given = given.map(|said| also_at_filling(section, said, &start));
        let start_c = start.value().or(given.value()).unwrap_or(room_c);
        return Heating {
            set_c: None,
            start_c,
        };
    }
    let set = section.said_or_default("temperature", &everyday::TEMPERATURE, water);
    set.moves(section.desk, To::HeaterSet);
    let set_c = also_at_filling(section, set, &start);
    if start.is_absent() {
        let value = everyday::TEMPERATURE.print(set_c);
        section.assumed("start_temperature", value, "as tank.temperature");
    }
    Heating {
        set_c: Some(set_c),
        start_c: start.or(set_c),
    }
}

/// The temperature, which is that of filling too where nothing else is said.
fn also_at_filling(section: &Reader<'_>, temperature: Said, start: &Read<f64>) -> f64 {
    if start.is_absent() {
        temperature.moves(section.desk, To::StartTemperature);
    }
    temperature.value
}

fn top_up(section: &Reader<'_>) -> Read<String> {
    let word = section.text("top_up");
    if word.is_absent() {
        section.note_default("top_up");
    }
    word
}

fn lid(section: &Reader<'_>, draft: &mut Draft<'_>) {
    if section.truth_or_default("lid") {
        draft.set_by_word("lid", "lid_closed", "tank.lid = true");
    }
}

impl TankSection {
    /// Volumes and areas, once the soil is known. None when something was wrong.
    pub fn dimensions(
        &self,
        draft: &mut Draft<'_>,
        soil: &Soil,
        altitude_m: f64,
        film_m2: Option<f64>,
    ) -> Option<Tank> {
        let bulk_l = soil.bulk_l?;
        let (inside, volume_l) = self.inside_and_volume(draft, bulk_l)?;
        let base_m2 = inside.base_m2();
        self.tell(draft, &inside, volume_l, bulk_l);
        soil.tell_moves(draft.desk, self.net_volume_l.is_absent());
        Some(Tank {
            volume_l,
            surface_m2: base_m2,
            bed_m2: base_m2,
            wall_m2: inside.walls_m2(),
            soil_l: if soil.is_active { bulk_l } else { 0.0 },
            film_m2,
            altitude_m,
        })
    }

    fn inside_and_volume(&self, draft: &Draft<'_>, soil_l: f64) -> Option<(Inside, f64)> {
        match (&self.inside, &self.net_volume_l) {
            (Read::Bad(_), _) | (_, Read::Bad(_)) => None,
            (Read::Given(inside, _), Read::Absent) => {
                let volume_l = self.volume_below_line(draft, inside, soil_l)?;
                Some((*inside, volume_l))
            }
            (Read::Given(inside, _), Read::Given(volume_l, place)) => self
                .fits(draft, inside, *volume_l, soil_l, place)
                .then_some((*inside, *volume_l)),
            (Read::Absent, Read::Given(volume_l, _)) => {
                let inside = self.assumed(draft, *volume_l, soil_l)?;
                Some((inside, *volume_l))
            }
            (Read::Absent, Read::Absent) => {
                if let Some(place) = &self.place {
                    draft.desk.problem(
                        Problem::at(place, "[tank] does not say how big the tank is")
                            .help("add inside = \"60 x 30 x 36 cm\" and water_line = \"33 cm\"")
                            .help("or net_volume = \"47 L\" and surface = \"0.18 m²\""),
                    );
                }
                None
            }
        }
    }

    /// V = length · width · line − soil bulk − hardscape.
    fn volume_below_line(&self, draft: &Draft<'_>, inside: &Inside, soil_l: f64) -> Option<f64> {
        if let Read::Absent = self.water_line_m
            && let Some(place) = &self.place
        {
            draft.desk.problem(
                Problem::at(place, "[tank] does not say how high the water stands").help(
                    "add water_line = \"33 cm\" (above the bottom), or net_volume = \"47 L\"",
                ),
            );
        }
        let Read::Given(line_m, place) = &self.water_line_m else {
            return None;
        };
        let is_above = *line_m > inside.height_m;
        if is_above {
            draft.desk.problem(
                Problem::at(place, "the water line is above the rim of the tank").label(format!(
                    "the tank is {} cm high",
                    digits(100.0 * inside.height_m)
                )),
            );
        }
        // what is in it must fit below the rim, wherever the line stands
        let (line_m, line) = match is_above {
            true => (inside.height_m, "rim"),
            false => (*line_m, "water line"),
        };
        let gross_l = inside.base_m2() * line_m * LITRES_PER_CUBIC_METRE;
        let volume_l = self.left_for_water(draft, (gross_l, line, place), soil_l)?;
        (!is_above).then_some(volume_l)
    }

    /// What soil and hardscape leave for water up to a line; none where that is next to nothing.
    fn left_for_water(
        &self,
        draft: &Draft<'_>,
        (gross_l, line, place): (f64, &str, &Place),
        soil_l: f64,
    ) -> Option<f64> {
        let volume_l = gross_l - soil_l - self.hardscape_l;
        if volume_l >= 0.1 * gross_l {
            return Some(volume_l);
        }
        draft.desk.problem(
            Problem::at(place, "soil, hardscape and water do not fit in the tank")
                .label(format!(
                    "{:.1} L up to the {line}; soil takes {} L, hardscape {} L",
                    gross_l,
                    digits(soil_l),
                    digits(self.hardscape_l)
                ))
                .help(
                    "at least a tenth must be left for water; check soil.amount and tank.hardscape",
                ),
        );
        None
    }

    fn fits(
        &self,
        draft: &Draft<'_>,
        inside: &Inside,
        volume_l: f64,
        soil_l: f64,
        place: &Place,
    ) -> bool {
        if let Some(line) = self.water_line_m.place() {
            draft.desk.problem(
                Problem::at(place, "net_volume and water_line say the same thing twice")
                    .label("one of the two")
                    .also(line, "and here"),
            );
            return false;
        }
        let holds_l = inside.base_m2() * inside.height_m * LITRES_PER_CUBIC_METRE;
        let needed_l = volume_l + soil_l + self.hardscape_l;
        if needed_l > holds_l {
            draft.desk.problem(
                Problem::at(place, "soil, hardscape and water do not fit in the tank").label(
                    format!(
                        "with soil and hardscape {needed_l:.1} L; the tank holds {holds_l:.1} L"
                    ),
                ),
            );
        }
        needed_l <= holds_l
    }

    /// The shape assumed when only volume and surface are known.
    fn assumed(&self, draft: &Draft<'_>, volume_l: f64, soil_l: f64) -> Option<Inside> {
        if let Read::Absent = self.surface_m2
            && let Some(place) = &self.place
        {
            draft.desk.problem(
                Problem::at(place, "[tank] has a net volume, but no surface")
                    .help("add surface = \"0.18 m²\" (length times width), or inside = \"60 x 30 x 36 cm\""),
            );
        }
        let surface_m2 = *self.surface_m2.seen()?;
        let inside = Inside::assumed(surface_m2, volume_l + soil_l + self.hardscape_l);
        draft.desk.resolve(
            "tank.inside",
            inside.words(),
            SetBy::WorkedOut(
                "assumed: twice as long as wide, water 3 cm below the rim".to_string(),
            ),
        );
        draft.desk.notice(format!(
            "only net volume and surface are given: a tank of {} is assumed for the loss of heat",
            inside.words()
        ));
        Some(inside)
    }

    fn tell(&self, draft: &mut Draft<'_>, inside: &Inside, volume_l: f64, soil_l: f64) {
        let line = self.water_line_m.seen().map_or(String::new(), |line_m| {
            format!(", water {} cm above the bottom", digits(100.0 * line_m))
        });
        draft
            .facts
            .insert(0, ("Tank".to_string(), format!("{}{line}", inside.words())));
        draft.facts.insert(
            1,
            (
                "Net volume".to_string(),
                format!("{volume_l:.1} L above the soil"),
            ),
        );
        if soil_l > 0.0 {
            let depth_cm = 100.0 * soil_l / LITRES_PER_CUBIC_METRE / inside.base_m2();
            draft.fact("Soil depth", format!("{depth_cm:.1} cm on average"));
        }
        if self.net_volume_l.is_absent() {
            draft.desk.resolve(
                "tank.net_volume",
                format!("{} L", digits(volume_l)),
                SetBy::WorkedOut("length · width · water line − soil − hardscape".to_string()),
            );
        }
    }
}
