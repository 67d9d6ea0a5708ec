//! Names of the layers of nitrogen: inside them where there is room, and beside them with amounts.

use super::figure::{Anchor, Area, Label, Panel, Shape, Span};
use super::fonts::Face;
use super::labels::spread;
use super::rect::{Point, Rect};
use super::sheet::{Sheet, bold, plain};
use super::signs::corners;
use super::stack::Layer;
use super::style::{CARE, CHANGE, Colour, DETRITUS, GAS, INK, MUTED, PLANTS, Pen, SENTENCE, WHITE};
use super::words::{number, signed};

/// Whether words on a layer of this colour are read better in white than in ink.
pub fn is_deep(colour: Colour) -> bool {
    [CHANGE, PLANTS, DETRITUS].contains(&colour)
}

/// The name of a layer inside it, where it is thick enough.
pub fn name_inside(sheet: &mut Sheet, at: usize, layer: &Layer) {
    let ink = if is_deep(layer.colour) { WHITE } else { INK };
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
        // what lies under it can only add to that
        if best.is_some_and(|(least, _)| least <= dislike) {
            continue;
        }
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
pub fn name_layers(sheet: &mut Sheet, at: usize, layers: &[&Layer], middles: &[f64]) {
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
