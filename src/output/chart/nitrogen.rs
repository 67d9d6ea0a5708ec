//! Where the nitrogen is and where it went, one layer per place.

use crate::base::units::N_PER_CL2;
use crate::engine::result::Reading;
use crate::model::conserved::{Flux, Quantity};

use super::Story;
use super::accounts::{Account, accounts};
use super::axis::from_zero;
use super::figure::{Figure, Limit, Panel};
use super::nitrogen_names::{is_deep, name_inside, name_layers};
use super::nitrogen_words::{brought_later, sentences, titles};
use super::rect::Point;
use super::sheet::{Sheet, small};
use super::stack::{Layer, stacked};
use super::style::{CARE, CHANGE, DETRITUS, GAS, INK, PLANTS, Pen, SOIL, WATER, WHITE};
use super::weekly::Weekly;
use super::words::number;

/// Right edge of the data: the names need more room than usual.
const RIGHT: f64 = 960.0;
/// Nitrogen of nitrifier cells where no parameter says so, mg N per mg COD.
const CELL_NITROGEN: f64 = 0.086;

/// The chart.
pub fn figure(story: &Story<'_>) -> Figure {
    let weekly = Weekly::new(story, RIGHT);
    let layers = layers(story);
    let later = brought_later(story);
    let mut sheet = Sheet::new(
        "nitrogen",
        &titles(&layers, &later),
        &story.said_of_central(sentences(story, &layers)),
    );
    let shown: Vec<&Layer> = layers.iter().filter(|l| l.reaches(0.5)).collect();
    let (mut areas, middles) = stacked(&shown);
    if let Some(top) = areas.last_mut() {
        top.edge = Some(Pen::hair(INK).wide(1.3));
    }
    let total = |n: fn(&Layer) -> f64| layers.iter().map(n).sum::<f64>();
    let start = total(Layer::start);
    let highest = areas.iter().flat_map(|a| &a.upper).map(|p| p.1);
    let up = from_zero(highest.chain([start]), 10.0, 7);
    let mut panel = weekly.panel(148.0, 826.0, up);
    // layers let colour through: an absence behind them would look like a layer of its own
    panel.fields.clear();
    panel.areas = areas;
    panel.limits = vec![Limit::new(
        "at filling",
        start,
        weekly.across(),
        Pen::reference(INK),
    )];
    let at = sheet.panel(
        panel,
        "Where the nitrogen is and where it went",
        "mg N",
        26.0,
    );
    weekly.mark_changes(&mut sheet, at);
    name_start(&mut sheet, at, start, &later);
    for layer in &shown {
        name_inside(&mut sheet, at, layer);
    }
    name_layers(&mut sheet, at, &shown, &middles);
    weekly.foot(&mut sheet, at);
    sheet.figure
}

/// The layers, from the bottom up: what left, what lives, what is dissolved, the soil.
fn layers(story: &Story<'_>) -> Vec<Layer> {
    let mut layers = vec![
        Layer::new("removed by changes", CHANGE, 0.85),
        Layer::new("trimmed and cleaned away", CARE, 0.85),
        Layer::new("gone as gas", GAS, 1.0),
        Layer::new("plants and algae", PLANTS, 0.72),
        Layer::new("detritus and microbes", DETRITUS, 0.8),
        Layer::new("water", WATER, 1.0),
        Layer::new("soil", SOIL, 0.62),
    ];
    let mut all = accounts(story.run);
    // what is put in at the minute of filling was there from the start
    let at_filling = all.partition_point(|a| a.reading.minute == story.run.input.filled_at);
    all.drain(..at_filling.saturating_sub(1));
    let cells = cell_nitrogen(story);
    for account in &all {
        for (layer, mg_n) in layers.iter_mut().zip(places(account, cells)) {
            layer.points.push((account.at(), mg_n));
        }
    }
    layers
}

fn cell_nitrogen(story: &Story<'_>) -> f64 {
    let mut all = story.run.input.parameters.iter();
    all.find(|(spec, _, _)| spec.id == "i_N")
        .map_or(CELL_NITROGEN, |(_, value, _)| value)
}

/// Nitrogen in each layer, mg.
fn places(account: &Account<'_>, cell_nitrogen: f64) -> [f64; 7] {
    let gone = |flux| -account.crossed(flux, Quantity::Nitrogen);
    let r: &Reading = account.reading;
    let microbes =
        r.ammonia_oxidisers_mg_cod + r.nitrite_oxidisers_mg_cod + r.complete_oxidisers_mg_cod;
    let dissolved = r.tan_mg_n_per_l
        + r.nitrite_mg_n_per_l
        + r.nitrate_mg_n_per_l
        + N_PER_CL2 * r.chloramine_mg_cl2_per_l;
    [
        gone(Flux::RemovedByChanges),
        gone(Flux::RemovedByCare),
        gone(Flux::NitrogenGas),
        r.plants_mg_n + r.algae_mg_n,
        r.detritus_mg_n + cell_nitrogen * microbes,
        dissolved * r.volume_l,
        r.soil_ammonium_mg_n + r.soil_organic_n_mg,
    ]
}

/// Words beside the dotted line of the start.
fn name_start(sheet: &mut Sheet, at: usize, start: f64, later: &[(f64, &str)]) {
    let amount = format!("{} mg on the day of filling", number(start, 0));
    let words = match later {
        [] => amount,
        [(_, way)] => format!("{amount}; what rises above came with {way}"),
        [(_, one), (_, two), ..] => {
            format!("{amount}; what rises above came with {one} and {two}")
        }
    };
    let this = &sheet.figure.panels[at];
    let end = this.across.high;
    // ink reads badly on the deep colours: look for a pale stretch of the line
    let places = [0.5, 0.3, 0.7, 0.15, 0.85].map(|share| share * end);
    let pale = places.into_iter().find(|&x| !is_deep_at(this, (x, start)));
    let (x, ink) = pale.map_or((places[0], WHITE), |x| (x, INK));
    sheet.words_at(at, (x, start), vec![small(&words, ink)]);
}

/// Whether a point of the panel, or what lies a little above or below it, is of a deep colour.
fn is_deep_at(panel: &Panel, (x, y): Point) -> bool {
    let about = 0.03 * (panel.up.high - panel.up.low);
    [y - about, y, y + about].into_iter().any(|y| {
        panel.areas.iter().any(|area| {
            let after = area.upper.partition_point(|p| p.0 < x);
            let between = area.lower.get(after).zip(area.upper.get(after));
            let here = between.is_some_and(|(low, high)| low.1 <= y && y <= high.1);
            here && is_deep(area.colour)
        })
    })
}
