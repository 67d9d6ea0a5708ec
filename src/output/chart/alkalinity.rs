//! Whether alkalinity lasts: KH and pH over the weeks, and what supplied and took it.

use crate::analysis::charted::KH;
use crate::base::clock::days;
use crate::base::units::MEQ_PER_DKH;

use super::Story;
use super::accounts::{Account, accounts, added_by_hand};
use super::alkalinity_words::{sentences, titles};
use super::axis::{around, from_zero};
use super::bands::heights;
use super::ends::{EndName, name_ends};
use super::figure::{Figure, Form, Limit, Line};
use super::key::Key;
use super::ph_bars::ph_bars;
use super::series::{last, over_weeks};
use super::sheet::{Sheet, bold, plain};
use super::stack::{Layer, stacked};
use super::style::{AMMONIA, BASE, CARE, CHANGE, INK, MUTED, PLANTS, Pen, SOIL};
use super::weekly::Weekly;
use super::words::{number, signed};

/// Processes of the soil that touch alkalinity.
const SOIL_PROCESSES: [&str; 6] = [
    "soil_exchange",
    "phosphorus_exchange",
    "soil_mineralisation",
    "soil_respiration",
    "acid_exchange",
    "denitrification",
];
/// Processes by which nitrifiers grow.
const NITRIFIER_PROCESSES: [&str; 3] = [
    "ammonia_oxidation",
    "nitrite_oxidation",
    "complete_oxidation",
];

/// The chart.
pub fn figure(story: &Story<'_>) -> Figure {
    let weekly = Weekly::usual(story);
    let layers = layers(story);
    let mut sheet = Sheet::new("alkalinity", &titles(story), &sentences(story, &layers));
    let mut keys = story.curve_keys();
    keys.extend([
        Key::Line(Pen::reference(CHANGE), "refill water"),
        Key::Bar("lowest to highest of the day"),
    ]);
    if !weekly.changes().is_empty() {
        keys.push(Key::Change);
    }
    sheet.key(&keys);
    hardness(story, &weekly, &mut sheet);
    let title = ("pH", "lowest to highest of the day");
    ph_bars(story, &weekly, &mut sheet, (386.0, 496.0), title);
    balance(&weekly, &mut sheet, &layers);
    sheet.figure
}

fn hardness(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let points = over_weeks(story.run, |r| r.alkalinity_meq_per_l / MEQ_PER_DKH);
    let refill = story.run.input.refill.alkalinity_meq_per_l / MEQ_PER_DKH;
    let bands = story.bands_all_day(KH, "KH", MUTED);
    let all = points.iter().map(|p| p.1).chain([refill]);
    let all = all.chain(heights(&bands));
    let mut panel = weekly.panel_with_changes(166.0, 332.0, from_zero(all, 1.0, 4));
    panel.areas = bands;
    let (pen, end) = (Pen::curve(INK), last(&points));
    let refill_pen = Pen::reference(CHANGE);
    panel.lines = vec![Line::new("KH", points, pen)];
    panel.limits = vec![Limit::new(
        "refill water",
        refill,
        weekly.across(),
        refill_pen,
    )];
    let at = sheet.panel(panel, "KH", "dKH", 16.0);
    weekly.mark_changes(sheet, at);
    let low = story.milestones.kh_low;
    let place = (days(low.minute), low.value);
    sheet.mark(at, place, Form::Disc, INK);
    let words = format!(
        "lowest {}, day {}",
        number(low.value, 1),
        story.day_of(low.minute)
    );
    sheet.words_at(at, place, vec![bold(&words, INK)]);
    weekly.name_absences(sheet, at);
    let names = [
        EndName::curve("KH", number(end, 1), end, pen),
        EndName::limit("refill water", number(refill, 1), refill, refill_pen),
    ];
    name_ends(sheet, at, &names);
}

/// What supplied and took alkalinity since filling, in dKH of the whole tank.
fn layers(story: &Story<'_>) -> Vec<Layer> {
    let run = story.run;
    let all = accounts(run);
    let by_hand = added_by_hand(run, &all);
    let start = all.first().map_or(0.0, Account::alkalinity);
    let per_dkh = MEQ_PER_DKH * run.input.tank.volume_l;
    let mut layers = vec![
        Layer::new("refills", CHANGE, 0.78),
        Layer::new("doses", CARE, 0.8),
        Layer::new("nitrifiers", AMMONIA, 0.8),
        Layer::new("soil", SOIL, 0.85),
        Layer::new("plants, decay", PLANTS, 0.8),
    ];
    for (account, &(refills, doses)) in all.iter().zip(&by_hand) {
        let nitrifiers = account.alkalinity_by(run, &NITRIFIER_PROCESSES);
        let soil = account.alkalinity_by(run, &SOIL_PROCESSES);
        let total = account.alkalinity() - start;
        let left_over = total - refills - doses - nitrifiers - soil;
        let terms = [refills, doses, nitrifiers, soil, left_over];
        for (layer, meq) in layers.iter_mut().zip(terms) {
            layer.points.push((account.at(), meq / per_dkh));
        }
    }
    layers
}

/// Supplied above zero, taken below.
fn balance(weekly: &Weekly<'_>, sheet: &mut Sheet, layers: &[Layer]) {
    let shown: Vec<&Layer> = layers.iter().filter(|l| l.reaches(0.02)).collect();
    let (areas, middles) = stacked(&shown);
    let all = areas
        .iter()
        .flat_map(|a| a.upper.iter().chain(&a.lower))
        .map(|p| p.1);
    let (low, high) = all.fold((0.0_f64, 0.5_f64), |(l, h), v| (l.min(v), h.max(v)));
    let mut up = around(low, high, 10);
    for tick in &mut up.ticks {
        tick.words = tick.words.trim_start_matches('−').to_string();
    }
    let mut panel = weekly.panel_with_changes(556.0, 826.0, up);
    panel.areas = areas;
    panel.limits = vec![Limit::new("zero", 0.0, weekly.across(), Pen::hair(BASE))];
    let unit =
        "dKH of the whole tank; supplied above zero, taken below; plants, decay: what is left over";
    let title = "Where KH came from and went since filling";
    let at = sheet.panel(panel, title, unit, 14.0);
    let names: Vec<EndName> = shown
        .iter()
        .zip(middles)
        .map(|(layer, middle)| {
            let pen = Pen::curve(layer.colour).wide(3.0);
            EndName::curve(layer.name, signed(layer.end(), 1), middle, pen)
        })
        .collect();
    name_ends(sheet, at, &names);
    if shown.is_empty() {
        let frame = sheet.figure.panels[at].frame;
        let (x, y) = (
            frame.left + frame.width() / 2.0,
            frame.top + frame.height() / 2.0,
        );
        let words = vec![plain("nothing supplied or taken", MUTED)];
        sheet.say_if_free(at, words, x, y);
    }
    weekly.foot(sheet, at);
}
