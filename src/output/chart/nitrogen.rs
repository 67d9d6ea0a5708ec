//! Where the nitrogen is and where it went, one layer per place.

use crate::base::units::N_PER_CL2;
use crate::engine::result::Reading;
use crate::model::component::{Flux, Quantity};

use super::Story;
use super::accounts::{Account, accounts};
use super::axis::from_zero;
use super::figure::{Anchor, Area, Figure, Label, Limit, Panel, Shape, Span};
use super::fonts::Face;
use super::labels::spread;
use super::rect::{Point, Rect};
use super::sheet::{Sheet, bold, corners, plain, small};
use super::stack::{Layer, stacked};
use super::style::{
    CARE, CHANGE, Colour, DETRITUS, GAS, INK, MUTED, PLANTS, Pen, SENTENCE, SOIL, WATER, WHITE,
};
use super::weekly::Weekly;
use super::words::{milligrams, number, signed};

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
        &sentences(story, &layers),
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

/// The ways by which nitrogen comes in after filling, with words.
const WAYS_IN: [(Flux, &str); 6] = [
    (Flux::SuppliedByRefills, "refills"),
    (Flux::TopUp, "top-up"),
    (Flux::Dosed, "doses"),
    (Flux::Seeded, "seed"),
    (Flux::Planted, "plants"),
    (Flux::AnimalsAndFeed, "feed"),
];

/// What came in after filling: the amount and the way, largest first.
fn brought_later<'a>(story: &Story<'_>) -> Vec<(f64, &'a str)> {
    let all = accounts(story.run);
    let filled = story.run.input.filled_at;
    let start = all.iter().rfind(|a| a.reading.minute == filled);
    let (Some(start), Some(end)) = (start, all.last()) else {
        return Vec::new();
    };
    let came =
        |flux| end.crossed(flux, Quantity::Nitrogen) - start.crossed(flux, Quantity::Nitrogen);
    let mut ways: Vec<(f64, &str)> = WAYS_IN
        .iter()
        .map(|&(flux, words)| (came(flux), words))
        .filter(|way| way.0 >= 0.5)
        .collect();
    ways.sort_by(|a, b| b.0.total_cmp(&a.0));
    ways
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
    let middle = sheet.figure.panels[at].across.high / 2.0;
    sheet.words_at(at, (middle, start), vec![small(&words, INK)]);
}

/// The name of a layer inside it, where it is thick enough.
fn name_inside(sheet: &mut Sheet, at: usize, layer: &Layer) {
    let ink = if [CHANGE, PLANTS, DETRITUS].contains(&layer.colour) {
        WHITE
    } else {
        INK
    };
    let spans = vec![Span::new(layer.name, Face::SemiBold, SENTENCE + 1.0, ink)];
    let this = &sheet.figure.panels[at];
    let Some(area) = this.areas.iter().find(|a| a.name == layer.name) else {
        return;
    };
    let (frame, taken) = (this.frame, sheet.taken(at));
    let mut best: Option<(f64, Point)> = None;
    for (thick, x, y) in middles(this, area) {
        let space = Label::new(spans.clone(), Anchor::Middle, x, y).space;
        let room = Rect::new(
            frame.left + 12.0,
            y - thick / 2.0,
            frame.right - 12.0,
            y + thick / 2.0,
        );
        if !room.holds(&space.grown(4.0)) {
            continue;
        }
        let off_middle = (x - (frame.left + frame.right) / 2.0).abs();
        let dislike = 0.05 * off_middle - 0.1 * thick;
        if let Some(cost) = taken.cost(&space).map(|c| c + dislike)
            && best.is_none_or(|(least, _)| cost < least)
        {
            best = Some((cost, (x, y)));
        }
    }
    if let Some((_, (x, y))) = best {
        sheet.say(spans, Anchor::Middle, x, y);
    }
}

/// Places for a name inside an area, in pixels: the room above and below (counted twice the
/// smaller), and the base line; at a few heights about the middle of the area.
fn middles(panel: &Panel, area: &Area) -> Vec<(f64, f64, f64)> {
    let pairs = area.upper.iter().zip(&area.lower).step_by(12);
    pairs
        .flat_map(|(upper, lower)| {
            let ((x, top), (_, bottom)) = (panel.at(*upper), panel.at(*lower));
            let middle = (top + bottom) / 2.0;
            [0.0, -10.0, 10.0]
                .map(|shift: f64| (bottom - top - 2.0 * shift.abs(), x, middle + shift + 5.0))
        })
        .collect()
}

/// Names beside the panel, two lines each, with a patch of the layer's colour.
fn name_layers(sheet: &mut Sheet, at: usize, layers: &[&Layer], middles: &[f64]) {
    let this = &sheet.figure.panels[at];
    let (right, top, bottom) = (this.frame.right, this.frame.top, this.frame.bottom);
    let wanted: Vec<f64> = middles.iter().map(|&m| this.y(m)).collect();
    let placed = spread(&wanted, 40.0, top + 12.0, bottom - 12.0);
    for (layer, (from, to)) in layers.iter().zip(wanted.into_iter().zip(placed)) {
        let leader = vec![
            (right + 3.0, from),
            (right + 9.0, from),
            (right + 17.0, to),
            (right + 24.0, to),
        ];
        sheet.shape(Shape::Path(leader, Pen::hair(INK)));
        let patch = Rect::new(right + 30.0, to - 11.0, right + 37.0, to + 11.0);
        sheet.shape(Shape::Fill(corners(&patch), layer.colour, layer.alpha));
        let x = right + 45.0;
        sheet.say(vec![bold(layer.name, INK)], Anchor::Start, x, to - 3.0);
        let words = amount(layer);
        sheet.say(vec![plain(&words, MUTED)], Anchor::Start, x, to + 13.0);
    }
}

/// `171 mg, +97 since filling`; what left has no start to compare with.
fn amount(layer: &Layer) -> String {
    let left: [Colour; 3] = [CHANGE, CARE, GAS];
    let end = layer.end();
    if left.contains(&layer.colour) {
        return match end < 9999.5 {
            true => format!("{} mg", number(end, 0)),
            false => format!("{} g", number(end / 1e3, 1)),
        };
    }
    let gained = end - layer.start();
    if end.abs() < 9999.5 {
        format!("{} mg, {} since filling", number(end, 0), signed(gained, 0))
    } else {
        format!(
            "{} g, {} since filling",
            number(end / 1e3, 1),
            signed(gained / 1e3, 1)
        )
    }
}

/// Where nitrogen can end, in words that follow "most of it", with the layers that make it up.
const SINKS: [(&str, &[usize]); 5] = [
    ("left in the buckets", &[0]),
    ("was trimmed and cleaned away", &[1]),
    ("is gone as gas", &[2]),
    ("is in plants, algae and what fell from them", &[3, 4]),
    ("is in the water", &[5]),
];

fn titles(layers: &[Layer], later: &[(f64, &str)]) -> Vec<String> {
    let gain = |layer: &Layer| layer.end() - layer.start();
    let refilled = later.iter().find(|w| w.1 == "refills").map_or(0.0, |w| w.0);
    let mut sinks: Vec<(f64, &str)> = SINKS
        .iter()
        .map(|(words, places)| {
            let amount: f64 = places.iter().map(|&n| gain(&layers[n])).sum();
            // buckets also carry back what the refills brought
            let back = if places.contains(&0) { refilled } else { 0.0 };
            ((amount - back).max(0.0), *words)
        })
        .collect();
    sinks.sort_by(|a, b| b.0.total_cmp(&a.0));
    let all: f64 = sinks.iter().map(|s| s.0).sum();
    let (largest, place) = sinks[0];
    let part = if largest > 0.5 * all {
        "most of it"
    } else {
        "the largest part"
    };
    let soil = &layers[6];
    let given = -gain(soil);
    if soil.start() < 0.5 {
        return vec![if largest < 0.5 {
            "Hardly any nitrogen came in, and it stayed where it was".to_string()
        } else {
            format!("No soil to feed the tank: of what came in, {part} {place}")
        }];
    }
    let percent = number(100.0 * given / soil.start(), 0);
    if given < 0.5 {
        return vec!["The soil kept its nitrogen".to_string()];
    }
    vec![
        format!("The soil gave up {percent} % of its nitrogen; {part} {place}"),
        format!("The soil gave up {percent} % of its nitrogen"),
    ]
}

fn sentences(story: &Story<'_>, layers: &[Layer]) -> Vec<String> {
    let soil = &layers[6];
    let days = story.run.input.last_day;
    let held = format!(
        "Soil {} at the start, {} after day {days}.",
        milligrams(soil.start()),
        milligrams(soil.end())
    );
    let came: Vec<String> = brought_later(story)
        .into_iter()
        .take(3)
        .map(|(amount, way)| format!("{way} {}", milligrams(amount)))
        .collect();
    let brought = if came.is_empty() {
        "Nothing was brought in later.".to_string()
    } else {
        format!("Brought in later: {}.", came.join(", "))
    };
    let plants = layers[3].end() - layers[3].start();
    let took = format!("Water changes took {}.", milligrams(layers[0].end()));
    let lives = format!(
        "Plants and algae {} {}.",
        if plants < 0.0 { "lost" } else { "gained" },
        milligrams(plants.abs())
    );
    vec![
        format!("{held} {took} {lives} {brought}"),
        format!("{held} {lives} {brought}"),
        format!("{held} {brought}"),
        held,
    ]
}
