//! `[water.NAME]`: what the waters hold.

use std::collections::BTreeMap;

use crate::analysis::uncertain::moves::Place as To;
use crate::analysis::uncertain::waters::{self as kitchen, Carbon, Matter, Recipe, Water};
use crate::base::units::{Kind, MEQ_PER_DKH, everyday};
use crate::chemistry::air::pressure_atm;
use crate::chemistry::solubility::oxygen_saturation_mg_per_l;
use crate::model::composition::Composition;
use crate::model::pool::Pool;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::reader::{Reader, Said};
use crate::scenario::words::closest;

use super::blend::Blend;
use super::carbon::{PURE_CO2_MG_PER_L, TAP, carbon_of, still};

/// All waters of a scenario by name; `tap` and `pure` are always there.
pub struct Waters {
    list: BTreeMap<String, Composition>,
    /// The same by number, with what their carbon follows from.
    numbered: Vec<(String, Water)>,
    room_c: f64,
}

/// Reads `[water]`.
pub fn waters(file: &Reader<'_>, room_c: f64, altitude_m: f64) -> Waters {
    let section = file.section("water");
    let air = Air { room_c, altitude_m };
    let tap = air.water(&section.section("tap"), TAP);
    let mut numbered = vec![("tap".to_string(), tap), ("pure".to_string(), air.pure())];
    for reader in section.named("NAME") {
        let name = reader.path.rsplit('.').next().unwrap_or("").to_string();
        let water = air.water(&reader, numbered.len());
        numbered.push((name, water));
    }
    let holds = |(name, water): &(String, Water)| (name.clone(), water.holds);
    Waters {
        list: numbered.iter().map(holds).collect(),
        numbered,
        room_c,
    }
}

impl Waters {
    /// The water of a name.
    pub fn get(&self, name: &str) -> Option<&Composition> {
        self.list.get(name)
    }
    /// The waters by number, and how those that go into the tank are made of them.
    pub fn recipes(&self, fill: &Blend, refill: &Blend, top_up: &str) -> kitchen::Waters {
        let number = |wanted: &str| self.numbered.iter().position(|(name, _)| name == wanted);
        let recipe = |blend: &Blend| {
            let parts = blend.parts.iter();
            Recipe {
                parts: parts
                    .filter_map(|(share, name)| Some((*share, number(name)?)))
                    .collect(),
                is_dechlorinated: blend.dechlorinated,
                temperature_c: blend.temperature_c,
            }
        };
        kitchen::Waters {
            list: self.numbered.iter().map(|(_, water)| *water).collect(),
            fill: recipe(fill),
            refill: recipe(refill),
            top_up: number(top_up),
        }
    }
    /// All names.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.list.keys().map(String::as_str)
    }
    /// Checks that a water is there.
    pub fn check(&self, reader: &Reader<'_>, what: &str, name: &str, place: &Place) -> bool {
        if self.list.contains_key(name) {
            return true;
        }
        let names: Vec<&str> = self.names().collect();
        let problem = Problem::at(
            place,
            format!("{what} names the water \"{name}\", which is not described"),
        )
        .label(format!("known waters: {}", names.join(", ")));
        reader
            .desk
            .problem(match closest(name, names.iter().copied()) {
                Some(near) => problem.help(format!("did you mean {near}?")),
                None => problem.help(format!("add a section [water.{name}]")),
            });
        false
    }
    /// The same water at the temperature of the room, for topping up.
    pub fn at_room(&self, name: &str) -> Option<Composition> {
        let mut water = *self.get(name)?;
        water.temperature_c = self.room_c;
        Some(water)
    }
}

/// What a water is in balance with where nothing is said.
struct Air {
    room_c: f64,
    altitude_m: f64,
}

impl Air {
    /// Water with nothing dissolved but what the air gives.
    fn pure(&self) -> Water {
        let holds = Composition {
            oxygen_mg_per_l: self.oxygen(self.room_c),
            inorganic_carbon_mmol_per_l: still(self.room_c, 0.0, 0.0)
                .carbon_at_co2(PURE_CO2_MG_PER_L),
            temperature_c: self.room_c,
            ..Composition::PURE
        };
        Water {
            holds,
            carbon: Carbon::Co2(PURE_CO2_MG_PER_L),
        }
    }
    fn oxygen(&self, t_c: f64) -> f64 {
        oxygen_saturation_mg_per_l(t_c, pressure_atm(self.altitude_m))
    }
    fn water(&self, section: &Reader<'_>, number: usize) -> Water {
        use everyday::{
            ALKALINITY, AMMONIA, CHLORIDE, HARDNESS, IRON, NITRATE, NITRITE, PHOSPHATE, POTASSIUM,
            RESIDUAL,
        };
        let read = |key, kind, most, pool| dissolved(section, key, kind, most, (number, pool));
        let mut water = Composition {
            alkalinity_meq_per_l: read("alkalinity", &ALKALINITY, 10.0, Pool::Alkalinity),
            hardness_meq_per_l: read("hardness", &HARDNESS, 20.0, Pool::Hardness),
            tan_mg_n_per_l: read("ammonia", &AMMONIA, 20.0, Pool::Tan),
            nitrite_mg_n_per_l: read("nitrite", &NITRITE, 20.0, Pool::Nitrite),
            nitrate_mg_n_per_l: read("nitrate", &NITRATE, 100.0, Pool::Nitrate),
            phosphate_mg_p_per_l: read("phosphate", &PHOSPHATE, 20.0, Pool::Phosphate),
            potassium_mg_per_l: read("potassium", &POTASSIUM, 200.0, Pool::Potassium),
            iron_mg_per_l: read("iron", &IRON, 5.0, Pool::Iron),
            chloride_mg_per_l: read("chloride", &CHLORIDE, 1000.0, Pool::Chloride),
            chlorine_mg_cl2_per_l: read("chlorine", &RESIDUAL, 10.0, Pool::Chlorine),
            chloramine_mg_cl2_per_l: read("chloramine", &RESIDUAL, 10.0, Pool::Chloramine),
            ..Composition::PURE
        };
        let to = To::Water(number, Matter::Temperature);
        let temperature = section.said_for("temperature", &everyday::TEMPERATURE, (0.0, 45.0), to);
        if temperature.is_absent() {
            let room = everyday::TEMPERATURE.print(self.room_c);
            section.assumed("temperature", room, "as the room");
        }
        water.temperature_c = temperature.or(self.room_c);
        water.oxygen_mg_per_l = self.oxygen_of(section, number, water.temperature_c);
        let (inorganic_carbon_mmol_per_l, carbon) = carbon_of(section, number, &water);
        water.inorganic_carbon_mmol_per_l = inorganic_carbon_mmol_per_l;
        section.close();
        Water {
            holds: water,
            carbon,
        }
    }
    fn oxygen_of(&self, section: &Reader<'_>, number: usize, t_c: f64) -> f64 {
        if number == TAP {
            return dissolved(
                section,
                "oxygen",
                &everyday::OXYGEN,
                30.0,
                (TAP, Pool::Oxygen),
            );
        }
        let saturation = self.oxygen(t_c);
        let to = To::Water(number, Matter::Dissolved(Pool::Oxygen));
        let oxygen = section.said_for("oxygen", &everyday::OXYGEN, (0.0, 30.0), to);
        if oxygen.is_absent() {
            section.assumed(
                "oxygen",
                everyday::OXYGEN.print(saturation),
                "at saturation",
            );
        }
        oxygen.or(saturation)
    }
}

/// A dissolved matter; defaults are noted for the tap only.
fn dissolved(
    section: &Reader<'_>,
    key: &'static str,
    kind: &'static Kind,
    most: f64,
    (number, pool): (usize, Pool),
) -> f64 {
    let said = if number == TAP {
        section.said_or_default(key, kind, (0.0, most))
    } else {
        let said = section.said(key, kind, (0.0, most));
        said.or(Said::known(0.0))
    };
    let to = To::Water(number, Matter::Dissolved(pool));
    said.moves(section.desk, to);
    said.value
}

/// What a water is like, for the opening of a report.
pub fn in_words(water: &Composition) -> String {
    let (t_c, hardness) = (water.temperature_c, water.hardness_meq_per_l);
    let still = still(t_c, hardness, water.alkalinity_meq_per_l);
    let (ph, _) = still.ph_and_co2(water.inorganic_carbon_mmol_per_l);
    let (dkh, dgh) = (
        water.alkalinity_meq_per_l / MEQ_PER_DKH,
        hardness / MEQ_PER_DKH,
    );
    let ammonia = if water.tan_mg_n_per_l > 0.0 {
        format!(", total ammonia {:.2} mg N/L", water.tan_mg_n_per_l)
    } else {
        String::new()
    };
    format!(
        "{dkh:.1} dKH, {dgh:.1} dGH, pH {ph:.1}, nitrate {:.1} mg N/L{ammonia}, {t_c:.0} °C",
        water.nitrate_mg_n_per_l
    )
}
