//! What is done at an event, in words for whoever does it.

use crate::engine::event::{Dose, EventKind};
use crate::engine::input::ModelInput;
use crate::engine::result::EventRecord;

use super::number::six_digits;

/// The event in words, with the amounts for this tank.
pub fn words(input: &ModelInput, record: &EventRecord) -> String {
    let mut of_this_record = input
        .events
        .iter()
        .filter(|event| event.minute == record.minute && event.name == record.name);
    match (of_this_record.next(), of_this_record.next()) {
        (Some(event), None) => of_kind(input, record, &event.kind),
        // two happenings of one entry at one minute: the record tells them apart
        _ => record.what.clone(),
    }
}

fn of_kind(input: &ModelInput, record: &EventRecord, kind: &EventKind) -> String {
    let percent = |share: f64| number(100.0 * share);
    match kind {
        EventKind::Trim { stand, share } => {
            let what = stand.map_or("all plants", |at| stand_name(input, at));
            format!("trim {} % of {what}", percent(*share))
        }
        EventKind::Siphon { share } => format!("siphon {} % of the detritus", percent(*share)),
        EventKind::Wipe { share } => format!("wipe {} % of the algae off", percent(*share)),
        EventKind::CleanFilter { share } => {
            format!(
                "clean the filter ({} % of its films are lost)",
                percent(*share)
            )
        }
        EventKind::Change { share } => {
            format!(
                "change {} % of the water ({:.1} L)",
                percent(*share),
                record.litres
            )
        }
        EventKind::Dose(dose) => format!("dose {}", doses(dose, record.before.volume_l)),
        EventKind::Seed { .. } => format!("bring in mature films ({})", record.name),
        EventKind::Plant { stand } => format!("plant {}", stand_name(input, *stand)),
        EventKind::Stock(animals) => {
            let kind = if animals.shrimp { "shrimp" } else { "fish" };
            format!(
                "put in {} g of {kind} ({}), feed {} g a day",
                number(animals.mass_g),
                record.name,
                number(animals.feed_g_per_day)
            )
        }
        EventKind::Uneaten { feed_g, .. } => format!("{} g of feed left uneaten", number(*feed_g)),
    }
}

fn stand_name(input: &ModelInput, at: usize) -> &str {
    input.stands.get(at).map_or("plants", |stand| &stand.name)
}

/// Each part of a dose per litre and for the whole tank.
fn doses(dose: &Dose, volume_l: f64) -> String {
    let parts = [
        ("mg N", "ammonium", dose.ammonium_mg_n_per_l),
        ("mg N", "ammonia solution", dose.ammonia_mg_n_per_l),
        ("mg N", "nitrate", dose.nitrate_mg_n_per_l),
        ("mg P", "phosphate", dose.phosphate_mg_p_per_l),
        ("mg", "potassium", dose.potassium_mg_per_l),
        ("mg", "iron", dose.iron_mg_per_l),
        ("meq", "bicarbonate", dose.bicarbonate_meq_per_l),
        ("meq", "calcium and magnesium", dose.hardness_meq_per_l),
        ("mg", "chloride", dose.chloride_mg_per_l),
    ];
    let given: Vec<String> = parts
        .iter()
        .filter(|(_, _, per_litre)| *per_litre != 0.0)
        .map(|(unit, what, per_litre)| {
            format!(
                "{} {unit}/L {what} ({} {unit} in all)",
                number(*per_litre),
                number(per_litre * volume_l)
            )
        })
        .collect();
    given.join(", ")
}

fn number(value: f64) -> String {
    let three_figures: f64 = format!("{value:.2e}").parse().unwrap_or(value);
    six_digits(three_figures)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use crate::engine::event::Event;

    fn said(kind: EventKind) -> String {
        let example = Example::default();
        let mut input = example.input();
        input.events = vec![Event {
            minute: 600,
            name: "entry".into(),
            kind,
        }];
        let record = EventRecord {
            minute: 600,
            name: "entry".into(),
            ..example.run().events[0].clone()
        };
        words(&input, &record)
    }

    #[test]
    fn whoever_does_it_reads_amounts_for_this_tank() {
        assert_eq!(
            said(EventKind::Change { share: 0.5 }),
            "change 50 % of the water (25.0 L)"
        );
        assert_eq!(said(EventKind::Plant { stand: 1 }), "plant front");
        let dose = Dose {
            potassium_mg_per_l: 3.0,
            iron_mg_per_l: 0.05,
            ..Dose::default()
        };
        assert_eq!(
            said(EventKind::Dose(dose)),
            "dose 3 mg/L potassium (150 mg in all), 0.05 mg/L iron (2.5 mg in all)"
        );
    }
}
