//! A drawing backend that writes SVG text in tenths of a pixel.
//!
//! The drawing library counts in whole pixels, which turns a saw-tooth into stairs. So the page is
//! reported [`FINE`] times too large, every length comes in that much larger, and is divided when
//! it is written.

use std::convert::Infallible;
use std::fmt::Write as _;

use plotters_backend::text_anchor::{HPos, Pos, VPos};
use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind,
    FontStyle,
};

use super::fonts::{CAP_HEIGHT, Face};

/// Units of the drawing library per pixel.
pub const FINE: f64 = 10.0;

/// How the place of a text is meant: left end, base line.
pub const BASELINE: Pos = Pos {
    h_pos: HPos::Left,
    v_pos: VPos::Bottom,
};

type Drawn = Result<(), DrawingErrorKind<Infallible>>;

/// A page of SVG under way.
#[derive(Debug)]
pub struct SvgPage<'a> {
    size: (u32, u32),
    out: &'a mut String,
}

impl<'a> SvgPage<'a> {
    /// A page of so many pixels that appends its elements to a text.
    pub fn new(size: (f64, f64), out: &'a mut String) -> SvgPage<'a> {
        SvgPage {
            size: ((size.0 * FINE) as u32, (size.1 * FINE) as u32),
            out,
        }
    }
    fn element(&mut self, text: std::fmt::Arguments<'_>) -> Drawn {
        // writing to a String cannot fail
        let _ = self.out.write_fmt(text);
        self.out.push('\n');
        Ok(())
    }
}

/// A length of the drawing library in pixels, as short as can be.
fn pixels(fine: i32) -> String {
    let (sign, size) = (if fine < 0 { "-" } else { "" }, fine.unsigned_abs());
    match (size / 10, size % 10) {
        (whole, 0) => format!("{sign}{whole}"),
        (whole, tenth) => format!("{sign}{whole}.{tenth}"),
    }
}

fn rgb(colour: BackendColor) -> String {
    let (r, g, b) = colour.rgb;
    format!("#{r:02X}{g:02X}{b:02X}")
}

/// A colour as attributes, `fill="#1F242B"` or with its cover.
fn paint(property: &str, colour: BackendColor) -> String {
    if colour.alpha >= 1.0 {
        format!(r#"{property}="{}""#, rgb(colour))
    } else {
        let (rgb, alpha) = (rgb(colour), colour.alpha);
        format!(r#"{property}="{rgb}" {property}-opacity="{alpha:.2}""#)
    }
}

/// The commands of a path; equal neighbours are dropped.
fn commands(path: impl IntoIterator<Item = BackendCoord>) -> String {
    let mut text = String::new();
    let mut last = None;
    for (x, y) in path {
        if last == Some((x, y)) {
            continue;
        }
        text.push(if last.is_none() { 'M' } else { 'L' });
        text += &format!("{} {}", pixels(x), pixels(y));
        last = Some((x, y));
    }
    text
}

/// A text with the signs of markup made harmless.
pub fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe += "&amp;",
            '<' => safe += "&lt;",
            '>' => safe += "&gt;",
            '"' => safe += "&quot;",
            other => safe.push(other),
        }
    }
    safe
}

impl DrawingBackend for SvgPage<'_> {
    type ErrorType = Infallible;

    fn get_size(&self) -> (u32, u32) {
        self.size
    }
    fn ensure_prepared(&mut self) -> Drawn {
        Ok(())
    }
    fn present(&mut self) -> Drawn {
        Ok(())
    }
    fn draw_pixel(&mut self, (x, y): BackendCoord, colour: BackendColor) -> Drawn {
        let (x, y, fill) = (pixels(x), pixels(y), paint("fill", colour));
        self.element(format_args!(
            r#"<rect x="{x}" y="{y}" width=".1" height=".1" {fill}/>"#
        ))
    }
    fn draw_line<S: BackendStyle>(&mut self, a: BackendCoord, b: BackendCoord, s: &S) -> Drawn {
        self.draw_path([a, b], s)
    }
    fn draw_rect<S: BackendStyle>(
        &mut self,
        a: BackendCoord,
        b: BackendCoord,
        style: &S,
        fill: bool,
    ) -> Drawn {
        let corners = [a, (b.0, a.1), b, (a.0, b.1)];
        if fill {
            self.fill_polygon(corners, style)
        } else {
            self.draw_path(corners.into_iter().chain([a]), style)
        }
    }
    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        path: I,
        style: &S,
    ) -> Drawn {
        let (d, stroke) = (commands(path), paint("stroke", style.color()));
        let width = pixels(style.stroke_width() as i32);
        self.element(format_args!(
            r#"<path d="{d}" fill="none" {stroke} stroke-width="{width}"/>"#
        ))
    }
    fn draw_circle<S: BackendStyle>(
        &mut self,
        (x, y): BackendCoord,
        radius: u32,
        style: &S,
        fill: bool,
    ) -> Drawn {
        let (x, y, r) = (pixels(x), pixels(y), pixels(radius as i32));
        let colour = if fill {
            paint("fill", style.color())
        } else {
            format!(r#"fill="none" {}"#, paint("stroke", style.color()))
        };
        self.element(format_args!(
            r#"<circle cx="{x}" cy="{y}" r="{r}" {colour}/>"#
        ))
    }
    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        corners: I,
        style: &S,
    ) -> Drawn {
        let (d, fill) = (commands(corners), paint("fill", style.color()));
        self.element(format_args!(r#"<path d="{d}Z" {fill}/>"#))
    }
    /// Text by its left end and base line, whatever the anchor of the style.
    fn draw_text<T: BackendTextStyle>(
        &mut self,
        text: &str,
        style: &T,
        (x, y): BackendCoord,
    ) -> Drawn {
        let (x, y, words) = (pixels(x), pixels(y), escaped(text));
        let size = pixels(style.size().round() as i32);
        let fill = paint("fill", style.color());
        let weight = face_of(style).weight();
        self.element(format_args!(
            r#"<text x="{x}" y="{y}" font-size="{size}" font-weight="{weight}" {fill}>{words}</text>"#
        ))
    }
    fn estimate_text_size<T: BackendTextStyle>(
        &self,
        text: &str,
        style: &T,
    ) -> Result<(u32, u32), DrawingErrorKind<Infallible>> {
        let width = face_of(style).width(text, style.size());
        Ok((
            width.ceil() as u32,
            (CAP_HEIGHT * style.size()).ceil() as u32,
        ))
    }
}

fn face_of<T: BackendTextStyle>(style: &T) -> Face {
    match style.style() {
        FontStyle::Bold => Face::SemiBold,
        _ => Face::Regular,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_written_in_tenths_without_idle_zeros() {
        assert_eq!(
            [pixels(105), pixels(100), pixels(-3)],
            ["10.5", "10", "-0.3"]
        );
    }

    #[test]
    fn a_path_drops_points_it_stands_on_already() {
        assert_eq!(commands([(0, 0), (0, 0), (5, 10)]), "M0 0L0.5 1");
    }

    #[test]
    fn markup_in_a_name_is_harmless() {
        assert_eq!(escaped("a<b & \"c\">"), "a&lt;b &amp; &quot;c&quot;&gt;");
    }
}
