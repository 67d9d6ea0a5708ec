//! Draws a figure on any page of the drawing library that counts in tenths of a pixel.

use plotters::coord::Shift;
use plotters::prelude::{
    Circle, Color, DrawingArea, DrawingBackend, FontFamily, FontStyle, PathElement, Polygon,
    RGBColor, ShapeStyle, Text, TextStyle,
};
use plotters::style::RGBAColor;

use super::axis::Axis;
use super::backend::{BASELINE, FINE};
use super::figure::{Figure, Form, Label, Mark, Panel, Shape};
use super::fonts::{FAMILY, Face};
use super::rect::Point;
use super::style::{BASE, Colour, Dash, GRID, Pen, WHITE};
use super::thin::thinned;

/// What drawing can come back with.
pub type Drawn<DB> =
    Result<(), plotters::drawing::DrawingAreaErrorKind<<DB as DrawingBackend>::ErrorType>>;

/// A page to draw on.
pub struct Page<DB: DrawingBackend> {
    area: DrawingArea<DB, Shift>,
}

/// Draws the whole figure: panels, then what lies on the page, then words.
pub fn draw<DB: DrawingBackend>(area: DrawingArea<DB, Shift>, figure: &Figure) -> Drawn<DB> {
    let page = Page { area };
    page.area.fill(&rgba(WHITE, 1.0))?;
    for panel in &figure.panels {
        page.panel(panel)?;
    }
    for shape in &figure.shapes {
        page.shape(shape)?;
    }
    for label in &figure.labels {
        page.label(label)?;
    }
    page.area.present()
}

impl<DB: DrawingBackend> Page<DB> {
    fn panel(&self, panel: &Panel) -> Drawn<DB> {
        self.fields(panel)?;
        self.areas(panel)?;
        self.grid(panel)?;
        for upright in &panel.uprights {
            let x = crisp(panel.x(upright.at));
            let ends = [(x, panel.frame.top), (x, panel.frame.bottom)];
            self.path(&ends, upright.pen)?;
        }
        for limit in &panel.limits {
            let y = crisp(panel.y(limit.value));
            let (from, to) = limit.across;
            self.path(&[(panel.x(from), y), (panel.x(to), y)], limit.pen)?;
        }
        self.bars(panel)?;
        for line in &panel.lines {
            self.path(&panel.path(&line.points), line.pen)?;
        }
        for mark in &panel.marks {
            self.mark(panel.at(mark.at), mark)?;
        }
        Ok(())
    }
    fn fields(&self, panel: &Panel) -> Drawn<DB> {
        for field in &panel.fields {
            let (left, right) = (panel.x(field.across.0), panel.x(field.across.1));
            let (bottom, top) = (panel.y(field.up.0), panel.y(field.up.1));
            let corners = [(left, top), (right, top), (right, bottom), (left, bottom)];
            self.fill(&corners, field.colour, field.alpha)?;
        }
        Ok(())
    }
    fn areas(&self, panel: &Panel) -> Drawn<DB> {
        for area in &panel.areas {
            // each edge for itself, so that neighbours thin the edge they share alike
            let mut corners = thinned(&panel.path(&area.upper));
            corners.extend(thinned(&panel.path(&area.lower)).into_iter().rev());
            self.fill(&corners, area.colour, area.alpha)?;
        }
        for area in &panel.areas {
            if let Some(pen) = area.edge {
                self.path(&panel.path(&area.upper), pen)?;
            }
        }
        Ok(())
    }
    fn grid(&self, panel: &Panel) -> Drawn<DB> {
        let frame = &panel.frame;
        for value in named(&panel.up) {
            let y = crisp(panel.y(value));
            self.path(&[(frame.left, y), (frame.right, y)], Pen::hair(GRID))?;
        }
        for value in named(&panel.across).chain([panel.across.low, panel.across.high]) {
            let x = crisp(panel.x(value));
            self.path(&[(x, frame.top), (x, frame.bottom)], Pen::hair(GRID))?;
        }
        let base = crisp(frame.bottom);
        self.path(&[(frame.left, base), (frame.right, base)], Pen::hair(BASE))
    }
    fn bars(&self, panel: &Panel) -> Drawn<DB> {
        for bar in &panel.bars {
            let (x, half) = (panel.x(bar.at), bar.width / 2.0);
            let (top, bottom) = (panel.y(bar.high), panel.y(bar.low));
            let pen = Pen::hair(bar.colour).wide(bar.width);
            self.path(&[(x, top), (x, bottom)], pen)?;
            self.disc((x, top), half, bar.colour)?;
            self.disc((x, bottom), half, bar.colour)?;
        }
        Ok(())
    }
    fn mark(&self, at: Point, mark: &Mark) -> Drawn<DB> {
        match mark.form {
            Form::Disc => {
                self.disc(at, 5.4, WHITE)?;
                self.disc(at, 4.0, mark.colour)
            }
            Form::Dot => self.disc(at, 2.8, mark.colour),
            Form::Peak => {
                let (x, y) = at;
                let corners = [(x - 4.2, y + 3.4), (x + 4.2, y + 3.4), (x, y - 4.2)];
                self.fill(&corners, mark.colour, 1.0)
            }
        }
    }
    fn shape(&self, shape: &Shape) -> Drawn<DB> {
        match shape {
            Shape::Path(points, pen) => self.path(points, *pen),
            Shape::Fill(corners, colour, alpha) => self.fill(corners, *colour, *alpha),
            Shape::Disc(centre, radius, colour) => self.disc(*centre, *radius, *colour),
        }
    }
    fn label(&self, label: &Label) -> Drawn<DB> {
        for (left, span) in label.placed() {
            let style = match span.face {
                Face::Regular => FontStyle::Normal,
                Face::SemiBold => FontStyle::Bold,
            };
            let font = (FontFamily::Name(FAMILY), span.size * FINE, style);
            let colour = rgba(span.colour, 1.0);
            let style = TextStyle::from(font).color(&colour).pos(BASELINE);
            let at = fine((left, label.baseline));
            self.area.draw(&Text::new(span.text.as_str(), at, style))?;
        }
        Ok(())
    }
    fn path(&self, points: &[Point], pen: Pen) -> Drawn<DB> {
        let style = ShapeStyle {
            color: rgba(pen.colour, pen.alpha),
            filled: false,
            stroke_width: (pen.width * FINE).round() as u32,
        };
        let pieces = match pen.dash {
            Dash::Solid => vec![points.to_vec()],
            Dash::Every(on, off) => dashes(points, on, off),
        };
        for piece in pieces.iter().filter(|piece| piece.len() > 1) {
            // after breaking it, or the pattern would shift
            let path: Vec<(i32, i32)> = thinned(piece).into_iter().map(fine).collect();
            self.area.draw(&PathElement::new(path, style))?;
        }
        Ok(())
    }
    fn fill(&self, corners: &[Point], colour: Colour, alpha: f64) -> Drawn<DB> {
        let corners: Vec<(i32, i32)> = corners.iter().map(|&p| fine(p)).collect();
        self.area
            .draw(&Polygon::new(corners, rgba(colour, alpha).filled()))
    }
    fn disc(&self, centre: Point, radius: f64, colour: Colour) -> Drawn<DB> {
        let style = rgba(colour, 1.0).filled();
        self.area
            .draw(&Circle::new(fine(centre), (radius * FINE) as i32, style))
    }
}

/// The values that have a name on an axis.
fn named(axis: &Axis) -> impl Iterator<Item = f64> {
    let named = axis.ticks.iter().filter(|t| !t.words.is_empty());
    named.map(|t| t.value)
}

/// A line one pixel wide is sharp on half pixels.
fn crisp(place: f64) -> f64 {
    place.floor() + 0.5
}

fn fine((x, y): Point) -> (i32, i32) {
    ((x * FINE).round() as i32, (y * FINE).round() as i32)
}

fn rgba(Colour(r, g, b): Colour, alpha: f64) -> RGBAColor {
    RGBColor(r, g, b).mix(alpha)
}

/// The drawn pieces of a broken line: the path is walked once, so that the pattern runs on
/// through its corners.
fn dashes(points: &[Point], on: f64, off: f64) -> Vec<Vec<Point>> {
    let Some(&first) = points.first() else {
        return Vec::new();
    };
    let (mut pieces, mut piece) = (Vec::new(), vec![first]);
    let (mut drawing, mut left) = (true, on);
    for two in points.windows(2) {
        let (mut a, b) = (two[0], two[1]);
        loop {
            let length = ((b.0 - a.0) * (b.0 - a.0) + (b.1 - a.1) * (b.1 - a.1)).sqrt();
            if length <= left {
                left -= length;
                if drawing {
                    piece.push(b);
                }
                break;
            }
            let share = left / length;
            a = (a.0 + share * (b.0 - a.0), a.1 + share * (b.1 - a.1));
            if drawing {
                piece.push(a);
                pieces.push(std::mem::take(&mut piece));
            } else {
                piece = vec![a];
            }
            drawing = !drawing;
            left = if drawing { on } else { off };
        }
    }
    pieces.push(piece);
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_broken_line_runs_its_pattern_round_corners() {
        let corner = [(0.0, 0.0), (4.0, 0.0), (4.0, 10.0)];
        let pieces = dashes(&corner, 6.0, 4.0);
        assert_eq!(pieces[0], [(0.0, 0.0), (4.0, 0.0), (4.0, 2.0)]);
        assert_eq!(pieces[1], [(4.0, 6.0), (4.0, 10.0)]);
    }
}
