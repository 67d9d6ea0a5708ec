//! Whether tanks can be run side by side: they may differ in numbers, not in times and switches.

use super::event::{Event, EventKind};
use super::input::{GasHours, GasPlan, ModelInput, TimerLine, TopUp};

/// Tanks that cannot be run side by side.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("tank {tank} differs from the first in its {what}, so they cannot be run side by side")]
pub struct Unlike {
    /// Which of the tanks, counted from 0.
    pub tank: usize,
    /// In what.
    pub what: &'static str,
}

/// One thing that tanks side by side must share: its name and how it is compared.
type Shared = (&'static str, fn(&ModelInput, &ModelInput) -> bool);

const SHARED: [Shared; 8] = [
    ("length, step or hour of filling", |a, b| {
        times(a) == times(b)
    }),
    ("stands", stands),
    ("hours of light", |a, b| lines(&a.light, &b.light)),
    ("hours of air", |a, b| lines(&a.air, &b.air)),
    ("way of giving gas", |a, b| gas(&a.gas, &b.gas)),
    ("power cuts", |a, b| cuts(a) == cuts(b)),
    ("events", |a, b| events(&a.events, &b.events)),
    ("kind of soil, films or top-up", |a, b| kinds(a) == kinds(b)),
];

/// Checks that tanks share their times and switches.
///
/// # Errors
/// The first tank that differs from the first in one of them, and in what.
pub fn alike(inputs: &[&ModelInput]) -> Result<(), Unlike> {
    for (tank, input) in inputs.iter().enumerate() {
        for (what, same) in SHARED {
            if !same(inputs[0], input) {
                return Err(Unlike { tank, what });
            }
        }
    }
    Ok(())
}

fn times(input: &ModelInput) -> [u32; 4] {
    [
        input.filled_at,
        input.last_day,
        input.lookahead_days,
        input.step_minutes,
    ]
}

fn stands(a: &ModelInput, b: &ModelInput) -> bool {
    a.stands.len() == b.stands.len()
        && a.stands.iter().zip(&b.stands).all(|(a, b)| {
            (a.group, a.acclimates, a.uses_bicarbonate, a.planted_at)
                == (b.group, b.acclimates, b.uses_bicarbonate, b.planted_at)
        })
}

/// Same hours, and on or off alike.
fn lines(a: &[TimerLine], b: &[TimerLine]) -> bool {
    let hours = |line: &TimerLine| (line.from_day, line.window, line.value > 0.0);
    a.iter().map(hours).eq(b.iter().map(hours))
}

fn gas(a: &GasPlan, b: &GasPlan) -> bool {
    match (a, b) {
        (GasPlan::None, GasPlan::None) => true,
        (
            GasPlan::Rate {
                lines: a,
                cut_off_mg_per_l: stop,
            },
            GasPlan::Rate {
                lines: b,
                cut_off_mg_per_l: other_stop,
            },
        ) => lines(a, b) && stop.is_some() == other_stop.is_some(),
        (
            GasPlan::Hold {
                tuned_on: a,
                hours: from,
                ..
            },
            GasPlan::Hold {
                tuned_on: b,
                hours: other,
                ..
            },
        ) => {
            a == b
                && match (from, other) {
                    (GasHours::Given(a), GasHours::Given(b)) => lines(a, b),
                    (GasHours::Found { from_day: a }, GasHours::Found { from_day: b }) => a == b,
                    _ => false,
                }
        }
        _ => false,
    }
}

/// First and last minute of each power cut, and whether a battery runs the air.
type Cuts = Vec<(u32, u32, bool)>;

/// Power cuts, and days without feed.
fn cuts(input: &ModelInput) -> (Cuts, &[(u32, u32)]) {
    let cuts = input.power_cuts.iter();
    let minutes = cuts.map(|cut| (cut.from, cut.until, cut.battery_air_l_per_min > 0.0));
    (minutes.collect(), &input.unfed)
}

fn events(a: &[Event], b: &[Event]) -> bool {
    fn kind(event: &Event) -> (u32, u8, Option<usize>, &str) {
        let stand = match event.kind {
            EventKind::Plant { stand } => Some(stand),
            EventKind::Trim { stand, .. } => stand,
            _ => None,
        };
        (event.minute, event.kind.rank(), stand, &event.name)
    }
    a.iter().map(kind).eq(b.iter().map(kind))
}

fn kinds(input: &ModelInput) -> [bool; 3] {
    [
        input.tank.soil_l > 0.0,
        input.tank.film_m2.is_some(),
        matches!(input.top_up, TopUp::Automatic(_)),
    ]
}
