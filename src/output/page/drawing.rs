//! A chart inside a page: its title is words of the page, its colours follow those of the page, and it is written short.
//!
//! ```text
//! colours   classes, whose colours a rule per element and hue sets, one for light and one for dark
//! places    relative to the point before, in tenths of a pixel, as the file has them
//! ```

use std::fmt::Write as _;

use crate::output::chart::Figure;
use crate::output::chart::figure::PAGE;
use crate::output::chart::rect::Rect;
use crate::output::chart::svg;

use super::hues;

/// Labels that a page says itself: title and sentence, which come first on every sheet.
const SAID_BY_PAGE: usize = 2;
/// Room over what is drawn, pixels.
const OVER: f64 = 10.0;
/// What holds of the whole drawing: size and weight of words, width of lines.
const COMMON: [(&str, &str); 3] = [
    ("font-size", "13"),
    ("font-weight", "400"),
    ("stroke-width", "1"),
];
/// Units of a place per pixel.
const TENTHS: f64 = 10.0;

/// The rules that give every hue of the charts its colour, by light and by dark.
pub fn rules() -> String {
    let mut rules = String::new();
    let list = |dark: bool| -> String {
        let own = hues::HUES.iter().enumerate();
        own.map(|(at, hue)| {
            let (line, area) = match dark {
                false => (hue.light(), hue.light()),
                true => (hue.dark_line.into(), hue.dark_area.into()),
            };
            format!("--l{at}:{line};--a{at}:{area};")
        })
        .collect()
    };
    // writing to a text cannot fail
    let _ = write!(rules, ":root{{{}}}", list(false));
    let _ = write!(
        rules,
        "@media screen and (prefers-color-scheme:dark){{:root{{{}}}}}",
        list(true)
    );
    for at in 0..hues::HUES.len() {
        let _ = write!(
            rules,
            ".chart .l{at}{{fill:none;stroke:var(--l{at})}}.chart .a{at}{{fill:var(--a{at});stroke:none}}.chart .t{at}{{fill:var(--l{at});stroke:none}}"
        );
    }
    // words on white stay as bright as the paper of a light page
    let _ = write!(rules, ".chart .t{}{{fill:#fff}}", hues::paper());
    rules
}

/// The chart as SVG for a page.
pub fn inline(figure: &Figure) -> String {
    let mut bare = figure.clone();
    bare.labels.drain(..SAID_BY_PAGE.min(bare.labels.len()));
    let top = top_of(&bare).floor();
    let (wide, high) = PAGE;
    let whole = svg(&bare);
    let whole = match (whole.split_once("<style>"), whole.split_once("</style>")) {
        (Some((before, _)), Some((_, after))) => format!("{before}{after}"),
        _ => whole,
    };
    let whole = whole
        .replacen(
            &format!("viewBox=\"0 0 {wide} {high}\""),
            &format!("viewBox=\"0 {top} {wide} {}\"", high - top),
            1,
        )
        .replacen(
            &format!(" height=\"{high}\""),
            &format!(" height=\"{}\" font-size=\"13\"", high - top),
            1,
        );
    let mut fixed = Vec::new();
    let lines = whole.lines().map(|line| element(line, &mut fixed));
    lines.collect::<Vec<_>>().join("\n")
}

/// Where what is left begins.
fn top_of(figure: &Figure) -> f64 {
    let words = figure.labels.iter().map(|label| label.space.top);
    let panels = figure.panels.iter().map(|panel| panel.frame.top);
    words.chain(panels).fold(PAGE.1, f64::min) - OVER
}

/// One element, shortened; what is none stays. `fixed` holds the fields whose colour is no hue of the charts.
fn element(line: &str, fixed: &mut Vec<Rect>) -> String {
    let found = line.strip_prefix('<').and_then(|rest| rest.split_once(' '));
    let Some((name, rest)) = found.filter(|(name, _)| DRAWN.contains(name)) else {
        return line.to_string();
    };
    let (attributes, after) = rest.split_once('>').unwrap_or((rest, ""));
    let pairs = pairs_of(attributes);
    let value = |wanted: &str| {
        let found = pairs.iter().find(|(key, _)| *key == wanted);
        found.map(|(_, value)| *value)
    };
    let on_fixed = name == "text" && is_on(fixed, value("x"), value("y"));
    let class = class(name, value("fill"), value("stroke")).filter(|_| !on_fixed);
    let is_field = class.is_none() && name == "path" && value("fill") != Some("none");
    if let Some(d) = value("d").filter(|_| is_field) {
        fixed.extend(space_of(d));
    }
    let end = if attributes.ends_with('/') { "/>" } else { ">" };
    format!("{}{end}{after}", opened(name, &pairs, class.as_deref()))
}

/// What is drawn, by name.
const DRAWN: [&str; 4] = ["path", "circle", "text", "rect"];

/// Names and values of attributes.
fn pairs_of(attributes: &str) -> Vec<(&str, &str)> {
    let attributes = attributes.trim_end_matches('/').trim_end_matches('"');
    let pairs = attributes.split("\" ");
    pairs.filter_map(|pair| pair.split_once("=\"")).collect()
}

/// An element up to its end, without what its class or the whole drawing says.
fn opened(name: &str, pairs: &[(&str, &str)], class: Option<&str>) -> String {
    let mut short = format!("<{name}");
    if let Some(class) = class {
        short += &format!(" class=\"{class}\"");
    }
    for &(key, value) in pairs {
        let is_in_class = class.is_some() && ["fill", "stroke"].contains(&key);
        if is_in_class || COMMON.contains(&(key, value)) {
            continue;
        }
        let value = match key {
            "d" => relative(value),
            _ => value.to_string(),
        };
        short += &format!(" {key}=\"{value}\"");
    }
    short
}

/// The class of an element: what it is, and its hue; none where its colour is no hue of the charts.
fn class(name: &str, fill: Option<&str>, stroke: Option<&str>) -> Option<String> {
    let (letter, colour) = match (name, fill, stroke) {
        ("text", Some(fill), _) => ('t', fill),
        (_, Some("none"), Some(stroke)) => ('l', stroke),
        ("circle", Some(fill), _) => ('t', fill),
        (_, Some(fill), _) => ('a', fill),
        _ => return None,
    };
    let at = hues::HUES.iter().position(|hue| hue.light() == colour)?;
    // a disc of the colour of paper is paper
    let letter = if name == "circle" && at == hues::paper() {
        'a'
    } else {
        letter
    };
    Some(format!("{letter}{at}"))
}

fn is_on(fields: &[Rect], x: Option<&str>, y: Option<&str>) -> bool {
    let number = |text: Option<&str>| text.and_then(|text| text.parse::<f64>().ok());
    let (Some(x), Some(y)) = (number(x), number(y)) else {
        return false;
    };
    fields
        .iter()
        .any(|field| field.holds(&Rect::new(x, y, x, y)))
}

/// The points of a path of straight lines, in tenths.
fn points(d: &str) -> Vec<(i64, i64)> {
    let tenths = |text: &str| {
        text.parse::<f64>()
            .ok()
            .map(|at| (at * TENTHS).round() as i64)
    };
    let pairs = d
        .trim_end_matches('Z')
        .split(['M', 'L'])
        .filter(|pair| !pair.is_empty());
    let point = |pair: &str| {
        let (x, y) = pair.split_once(' ')?;
        Some((tenths(x)?, tenths(y)?))
    };
    pairs.filter_map(point).collect()
}

fn space_of(d: &str) -> Option<Rect> {
    let points = points(d);
    let pixels = |at: i64| at as f64 / TENTHS;
    let (left, right) = (
        points.iter().map(|p| p.0).min()?,
        points.iter().map(|p| p.0).max()?,
    );
    let (top, bottom) = (
        points.iter().map(|p| p.1).min()?,
        points.iter().map(|p| p.1).max()?,
    );
    Some(Rect::new(
        pixels(left),
        pixels(top),
        pixels(right),
        pixels(bottom),
    ))
}

/// The same path, each point told from the one before; a path in pieces or of curves stays.
fn relative(d: &str) -> String {
    let is_straight = d
        .chars()
        .all(|c| matches!(c, '0'..='9' | '.' | '-' | ' ' | 'M' | 'L' | 'Z'));
    if !is_straight || d.matches('M').count() != 1 {
        return d.to_string();
    }
    let points = points(d);
    let mut short = String::new();
    let mut last = None;
    for (x, y) in points {
        match last {
            None => short += &format!("M{}{}", tenths(x), joined(y)),
            Some((a, b)) if y == b => short += &format!("h{}", tenths(x - a)),
            Some((a, b)) if x == a => short += &format!("v{}", tenths(y - b)),
            Some((a, b)) => short += &format!("l{}{}", tenths(x - a), joined(y - b)),
        }
        last = Some((x, y));
    }
    if d.ends_with('Z') {
        short.push('Z');
    }
    short
}

/// A length in pixels without idle zeros.
fn tenths(at: i64) -> String {
    let (sign, size) = (if at < 0 { "-" } else { "" }, at.unsigned_abs());
    match (size / 10, size % 10) {
        (whole, 0) => format!("{sign}{whole}"),
        (0, tenth) => format!("{sign}.{tenth}"),
        (whole, tenth) => format!("{sign}{whole}.{tenth}"),
    }
}

/// The same behind another: a minus parts them, else a blank.
fn joined(at: i64) -> String {
    let own = tenths(at);
    if at < 0 { own } else { format!(" {own}") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_is_told_from_point_to_point() {
        assert_eq!(
            relative("M10 20.5L10.4 20L15 20L15 3Z"),
            "M10 20.5l.4-.5h4.6v-17Z"
        );
        assert_eq!(relative("M1 2M3 4"), "M1 2M3 4");
    }

    #[test]
    fn colours_become_classes_and_others_stay_with_the_words_on_them() {
        let mut fixed = Vec::new();
        let mut of = |line: &str| element(line, &mut fixed);
        assert_eq!(
            of(r##"<path d="M1 1L2 1" fill="none" stroke="#1F242B" stroke-width="1"/>"##),
            format!(r#"<path class="l{}" d="M1 1h1"/>"#, hue("#1F242B"))
        );
        assert_eq!(
            of(r##"<path d="M0 0L9 0L9 9L0 9Z" fill="#123456"/>"##),
            r##"<path d="M0 0h9v9h-9Z" fill="#123456"/>"##
        );
        let words =
            r##"<text x="3" y="3" font-size="13" font-weight="600" fill="#1F242B">a > b</text>"##;
        assert_eq!(
            of(words),
            r##"<text x="3" y="3" font-weight="600" fill="#1F242B">a > b</text>"##
        );
        let beside = words.replace("x=\"3\"", "x=\"30\"");
        assert!(of(&beside).starts_with(&format!("<text class=\"t{}\"", hue("#1F242B"))));
    }

    fn hue(light: &str) -> usize {
        hues::HUES
            .iter()
            .position(|hue| hue.light() == light)
            .unwrap()
    }
}
